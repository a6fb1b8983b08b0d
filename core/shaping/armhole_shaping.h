// The armhole (and the neck, which is an armhole seen from the other side) in whole stitches and
// rows.
//
// Of the schedules a knitter would accept -- bind-offs of 2 and more first, then decreases every
// 2nd, 4th, 6th ... row, the steps never growing, the first on the second row after the underarm
// bind-off -- the one of least cost: lines, and deviation from the curve as edgeDeviation()
// measures it (see ShapingStyle::fidelity; leaving the curve by more than 1 stitch costs more than
// any line). Where even the nearest of these leaves the curve by more than 1.5 stitches (a curve so
// flat at first that it outruns the steps), stepped bind-offs may be twice as wide and as many, and
// the result says `beyondStyle`. The search is exact over these sets: tests compare it with plain
// enumeration. Cost of processor time: 10 us at 22/30.
#pragma once

#include "curve/path.h"
#include "model/units.h"
#include "shaping/runs.h"

namespace scye {

struct ArmholeRequest {
  Path curve{}; // cm, from the end of the underarm bind-off upward, x toward the centre
                // falling; where it slopes back out to the tip the upper part may grow again
  StitchSize size{};
  Stitches underarm{0}; // bound off at each side first
  Stitches taken{0};    // then taken away by the shaping, down to the narrowest place
  Stitches grown{0};    // then added again up to the tip (narrow cross width); RS, >= 4 rows apart
  Rows rows{0};         // from the underarm bind-off to the first shoulder bind-off; even
  ShapingStyle style{};
};

enum class ShapingStatus {
  Fitted,
  Rough,      // worked out, but it leaves the curve by more than 1 stitch
  TooFewRows, // the stitches cannot be taken away in the rows there are
};

struct ArmholeShaping {
  ShapingStatus status = ShapingStatus::TooFewRows;
  Schedule schedule;
  double right = 0, left = 0; // cm, knitted length of the edge from the side seam to the shoulder
  double deviation = 0;       // stitches
  bool beyondStyle = false;   // wider or more stepped bind-offs than the style allows
  double cost = 0;
};

[[nodiscard]] ArmholeShaping shapeArmhole(const ArmholeRequest& request);

// One side of a round neck. `curve` runs from the end of the centre bind-off, height 0, up to the
// neck point with x growing outward. The schedule's start is the row of the centre bind-off (RS,
// where the left section binds off the centre and the right section stops short of it); `underarm`
// stays 0. Use neckEdge() for its events.
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
[[nodiscard]] KnittedEdge neckEdge(const Schedule& schedule, EdgeSide section, int firstRow);

} // namespace scye
