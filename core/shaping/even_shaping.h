// Even distribution: changes spread over rows as evenly as whole numbers allow (side seams,
// sleeves, waists, V necks, armholes that slope back out), and shoulders bound off in steps.
#pragma once

#include "model/units.h"
#include "shaping/runs.h"

#include <vector>

namespace scye {

struct EvenRequest {
  ShapingKind kind = ShapingKind::Increase; // or Decrease
  int changes = 0;                          // at each edge, one stitch a time
  int firstRow = 1;         // rows of the piece that may hold a change, both included;
  int lastRow = 0;          //   rows even before and after are left out by the caller
  bool oddRightSide = true; // right-side rows are the odd ones
  Rows atLeast{2};          // apart; even
};

struct EvenShaping {
  // One run where that stays within a stitch of an even spread; the rows left over are then worked
  // even at the far end. Else two, the greater first, that fill the range to its last right-side
  // row.
  std::vector<Run> runs{};
  int start = 0; // right-side row the first spacing counts from: knittedEdge(schedule, side, start)
  bool fits = true; // false: closer than `atLeast`; the runs then are as close as every 2nd row and
                    // hold only as many changes as there is room for
};
[[nodiscard]] EvenShaping shapeEvenly(const EvenRequest& request);

// The right-side rows of all changes.
[[nodiscard]] std::vector<int> changeRows(const EvenShaping& shaping);

enum class LargerSteps { First, Last };
// `stitches` bound off in `steps` steps as evenly as can be: 20 in 3 is 7 7 6. Fewer stitches than
// steps gives fewer steps.
[[nodiscard]] std::vector<Run> shoulderSteps(Stitches stitches, int steps,
                                             LargerSteps larger = LargerSteps::First);

} // namespace scye
