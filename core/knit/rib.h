// What edges and bands are knitted in, in whole stitches: which counts fit, and how a right-side
// row begins and ends.
//
// A rib of knit and purl columns meets itself across a seam: a knit column lies in the seam, half
// of it on either piece (of an odd column the larger half at a row's beginning), beside the
// stitches that the seam takes. So 2x2 rib with one selvedge stitch is k2, *p2, k2*, a multiple of
// 4 and 2 more, and back, front and sleeves line up (common practice). A free front edge begins or
// ends with a whole knit column; so does a band that is picked up and worked to and fro.
#pragma once

#include "model/sizes.h"
#include "model/units.h"

#include <string>

namespace scye {

struct RibStitch {
  RibKind kind = RibKind::TwoTwo;
  int knit = 2, purl = 2; // of a rib with columns
  int multiple = 4;
  std::string name; // as the knitter gives it, of an own stitch
  [[nodiscard]] bool columns() const {
    return kind == RibKind::TwoTwo || kind == RibKind::OneOne || kind == RibKind::ThreeOne;
  }
  // Of a band that is worked to and fro, beyond whole repeats, so that it begins and ends alike.
  [[nodiscard]] int flatRest() const { return columns() ? knit : kind == RibKind::Seed ? 1 : 0; }
  bool operator==(const RibStitch&) const = default;
};
[[nodiscard]] RibStitch ribStitch(RibKind kind, int ownMultiple = 1, std::string name = {});
[[nodiscard]] RibStitch ribOf(const Sizes& sizes, const Design& design);

// What lies at the edges of a piece.
enum class RibSides : std::uint8_t { BothSewn, LeftFree, RightFree };

// Stitches worked before the first repeat and after the last one of a right-side row.
struct RibEnds {
  Stitches start{0}, end{0};
  bool operator==(const RibEnds&) const = default;
};
[[nodiscard]] RibEnds ribEnds(const RibStitch& rib, RibSides sides, Stitches selvedge);

// The largest count up to `stitches` that fits; none where that is less than one repeat, or where
// a long repeat would lose more than a tenth of the stitches.
[[nodiscard]] Stitches ribCastOn(const RibStitch& rib, const RibEnds& ends, Stitches stitches);

// The ends with what a count has too many for whole repeats, so that the rest are whole; at sewn
// edges only.
[[nodiscard]] RibEnds fittedEnds(const RibStitch& rib, RibSides sides, Stitches selvedge,
                                 Stitches stitches);

// Whether a row of so many stitches can be written out: there is room for its ends, and whole
// repeats between them.
[[nodiscard]] bool canWriteOut(const RibStitch& rib, const RibEnds& ends, Stitches stitches);

// Of a row that can be written out: whether the stitch so many from its right edge, counted from 0,
// shows its purl face where the piece is seen from its right side.
[[nodiscard]] bool showsPurl(const RibStitch& rib, const RibEnds& ends, Stitches stitches,
                             Stitches fromRight, bool rightSide);

} // namespace scye
