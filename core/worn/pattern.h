// The garment's pieces as knitted, laid out for sewing: seam lines in cm read from the row tables,
// selvedges and picked-up stitches taken off, chords from event to event as edges are measured
// (shaping/edge_length.h). A garment is mirrored about its middle, so half a back, half a front and
// one sleeve are all there is; the left edges' bind-offs, a row later, are taken as the right ones.
//
// x from the centre line, y up from the lower edge as worn (a facing is folded in, and only makes
// the cloth thicker); a sleeve's x goes forward from its middle.
#pragma once

#include "garment/derived.h"

#include <optional>
#include <vector>

namespace scye {

using Line = std::vector<Vec2>; // through these points, straight between

// Along the part of a piece that is worked differently; heights over the lower edge.
enum class Fabric : std::uint8_t { Plain, Rib, Facing, Band };

struct BodicePattern {
  Line castOn;          // from the centre or front edge to the side
  Line side;            // up to the underarm; with bust short rows, without their wedge
  Line armhole;         // from the underarm seam to the shoulder tip, the flat bind-off first
  Line shoulder;        // tip to neck point
  Line neck;            // neck point to the centre, or to the front edge
  Line closing;         // down to the cast-on: the centre line, or a jacket's front edge
  double slitFrom = -1; // y from which the back's closing edge is a slit; -1: none
  struct Wedge {
    double low = 0, depth = 0, reach = 0; // bust short rows; depth 0: none
  };
  Wedge wedge;
  double hem = 0; // height of rib or facing
  Fabric hemFabric = Fabric::Plain;
};

struct SleevePattern {
  Line castOn;     // from the back seam to the front seam, above the cuff of a full sleeve
  Line frontSeam;  // upward to the underarm
  Line cap;        // the whole cap's edge, from the front's underarm over the crown to the back's
  double cuff = 0; // height of the rib
  // Of a full sleeve: the cuff is a band of its own, to which the sleeve is gathered.
  double cuffBand = 0, cuffGirth = 0;
};

// How one side of the armhole is sewn to the cap: the seam walk, along the knitted edges.
struct Sewn {
  LetIn letIn;
  std::vector<double> notches; // along the armhole; numbered from 1
};

struct NeckPattern {
  double width = 0; // of the band
  bool standing = false;
  double innerShare = 1; // length of its free edge over that of the knitted neck edge
};

struct FrontPattern {
  bool open = false; // a jacket
  double bandWidth = 0;
  bool pickedUp = false; // the band is a strip of its own; else the front reaches over the centre
  bool rightOver = true; // whose front lies on top
  std::vector<double> buttons; // heights
  bool neckInOne = false;      // band and neck are one strip
};

struct WornPattern {
  BodicePattern back, front;
  SleevePattern sleeve;
  Sewn backSeam, frontSeam;
  NeckPattern neck;
  FrontPattern fronts;
  StitchSize stitch;
  double areaWeight = 0; // g/cm^2, washed swatch; or a usual weight where it was not weighed
  double size = 1;       // bust over 94 cm: meshes of small garments are finer
  double neckPointY = 0; // over the lower edge, of the back
};

// Of a plain weft-knit in a light yarn (common practice: 300 to 400 g/m^2).
inline constexpr double kUsualAreaWeight = 0.035;

// Nothing where a piece cannot be knitted.
[[nodiscard]] std::optional<WornPattern> wornPattern(const Derived& derived);

// Helpers of lines.
[[nodiscard]] double lengthOf(const Line& line);
[[nodiscard]] Vec2 pointAt(const Line& line, double s); // clamped to its ends
[[nodiscard]] Line reversed(Line line);

} // namespace scye
