// The armhole (and the neck, which is an armhole seen from the other side) in whole stitches and
// rows.
//
// After the underarm bind-off an armhole has at most one stepped bind-off (two where it takes away
// over 8 cm), then 1 stitch on every right-side row n times, then if need be on every 4th row m
// times: as patterns are printed (common practice). All of these are tried, which is some tens, and
// priced by cost.h. Where one of n alone, the printed way, stays within 1 stitch of the curve,
// there is no other. Where none comes within 1.5 stitches (a curve so flat at first that it outruns
// the steps) more and wider bind-offs and sparser rows are searched, run_search.h, and the result
// says `beyondStyle`. Cost of processor time: 20 us at 22/30.
#pragma once

#include "curve/path.h"
#include "model/units.h"
#include "shaping/runs.h"

namespace scye {

inline constexpr double kMuchTaken = 8; // cm that an armhole takes away: two stepped bind-offs

struct ArmholeRequest {
  // cm, from the end of the underarm bind-off upward, x toward the centre falling; where it slopes
  // back out to the tip the upper part may grow again. Two where front and back share a schedule:
  // it is held to both.
  std::vector<Path> curves{};
  StitchSize size{};
  Stitches underarm{0}; // bound off at each side first
  Stitches taken{0};    // then taken away by the shaping, down to the narrowest place
  Stitches grown{0};    // then added again up to the tip (narrow cross width); RS, >= 4 rows apart
  Rows rows{0};         // from the underarm bind-off to the first shoulder bind-off
  ShapingStyle style{};
  // Where 1 stitch on every right-side row stays within a stitch, that alone is looked at.
  bool printedAlone = true;
};

enum class ShapingStatus {
  Fitted,
  Rough,      // worked out, but it leaves the curve by more than 1 stitch
  TooFewRows, // the stitches cannot be taken away in the rows there are
};

struct ArmholeShaping {
  ShapingStatus status = ShapingStatus::TooFewRows;
  Schedule schedule;
  EdgeLength right, left;   // cm, knitted, from the side seam to the shoulder
  double deviation = 0;     // stitches
  bool printedWay = false;  // 1 on every right-side row, and nothing else
  bool beyondStyle = false; // more or wider bind-offs than the style allows
  double cost = 0;          // by cost.h
};

// The cheapest, at most `most`; at least one.
[[nodiscard]] std::vector<ArmholeShaping> shapeArmholes(const ArmholeRequest& request, int most);

// One side of a round neck. `curve` runs from the end of the centre bind-off, height 0, up to the
// neck point with x growing outward. The schedule's start is the row of the centre bind-off (RS,
// where the left section binds off the centre and the right section stops short of it); `underarm`
// stays 0. Use neckEdge() for its events. Bind-offs of 2 and more, then decreases every 2nd, 4th
// ... row, the steps never growing.
struct NeckRequest {
  Path curve;
  StitchSize size{};
  Stitches taken{0}; // from the end of the centre bind-off to the neck point
  Rows rows{0};      // from the centre bind-off to the end of the neck edge; even
  ShapingStyle style{};
};
[[nodiscard]] ArmholeShaping shapeNeck(const NeckRequest& request);

// The neck edge of one section of a split piece. The left section (whose right edge is the neck)
// binds off on right-side rows; the right section (whose left edge is the neck) on the wrong-side
// row before.
[[nodiscard]] KnittedEdge neckEdge(const Schedule& schedule, EdgeSide section, Rows firstRow);

} // namespace scye
