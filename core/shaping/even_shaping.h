// Even distribution: changes spread over rows as evenly as whole numbers allow (side seams,
// sleeves, waists, V necks, armholes that slope back out), shoulders bound off in
// steps, and stitches increased evenly across a row.
#pragma once

#include "model/units.h"
#include "shaping/runs.h"

#include <vector>

namespace scye {

struct EvenRequest {
  ShapingKind kind = ShapingKind::Increase; // or Decrease
  int changes = 0;                          // at each edge, one stitch a time
  Rows firstRow{1};         // rows of the piece that may hold a change, both included;
  Rows lastRow{0};          //   rows even before and after are left out by the caller
  bool oddRightSide = true; // right-side rows are the odd ones
  Rows atLeast{2};          // apart; even
};

struct EvenShaping {
  // One run where that stays within a stitch of an even spread; the rows left over are then worked
  // even at the far end. Else two, the greater first, that fill the range to its last right-side
  // row.
  std::vector<Run> runs{};
  Rows start{0}; // right-side row the first spacing counts from: knittedEdge(schedule, side, start)
  bool fits = true; // false: closer than `atLeast`; the runs then are as close as every 2nd row and
                    // hold only as many changes as there is room for
};
[[nodiscard]] EvenShaping shapeEvenly(const EvenRequest& request);

// The right-side rows of all changes.
[[nodiscard]] std::vector<Rows> changeRows(const EvenShaping& shaping);

enum class LargerSteps { First, Last };
// `stitches` bound off in `steps` steps as evenly as can be: 20 in 3 is 7 7 6. Fewer stitches than
// steps gives fewer steps.
[[nodiscard]] std::vector<Run> shoulderSteps(Stitches stitches, int steps,
                                             LargerSteps larger = LargerSteps::First);

// Where the stitches of an even increase within one row go: "1 more after every 3 stitches, 2
// times, then after every 2, 20 times".
struct EvenIncrease {
  int after = 0; // stitches worked before each that is added
  int times = 0;
  bool operator==(const EvenIncrease&) const = default;
};
// Of a row of `before` stitches in which `more` are added, in the order in which it is worked; what
// is left then is worked to the end. The stitches lie in one gap more than are added, as equal as
// whole stitches can be; the wider gaps are at both ends, so that the fullness lies in the middle.
// Exact. More than before - 1 cannot be added: the increases then ask for too much.
[[nodiscard]] std::vector<EvenIncrease> evenIncreases(Stitches before, Stitches more);

} // namespace scye
