// Where the stitches of an even increase go: "1 more after every 3 stitches, 2 times, then after
// every 2, 20 times". The row's stitches lie in one gap more than are added, as equal as whole
// stitches can be; the wider gaps are at both ends, so that the fullness lies in the middle. Exact.
#pragma once

#include "model/units.h"

#include <vector>

namespace scye {

struct SpreadRun {
  int after = 0; // stitches worked before each that is added
  int times = 0;
  bool operator==(const SpreadRun&) const = default;
};

// Of a row of `before` stitches in which `more` are added, in the order in which it is worked; what
// is left then is worked to the end. More than before - 1 cannot be added: the runs then ask for
// too much.
[[nodiscard]] std::vector<SpreadRun> spreadRuns(Stitches before, Stitches more);

} // namespace scye
