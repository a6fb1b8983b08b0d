// A reference curve as shaping sees it: step by step of two rows, the interval of stitches taken
// away that the curve covers between the step's bottom and its top.
#pragma once

#include "curve/path.h"
#include "model/units.h"

#include <algorithm>
#include <vector>

namespace scye {

struct StepBand {
  double low = 0, high = 0; // stitches inward from the curve's start
  [[nodiscard]] double outside(int taken) const {
    return std::max({0.0, low - taken, taken - high});
  }
};

// Band j belongs to the heights 2j to 2j + 2 rows above the curve's start. The curve must not fall
// and each of its segments must have monotone x; above its end it is taken to go straight up.
[[nodiscard]] std::vector<StepBand> stepBands(const Path& curve, const StitchSize& size, int steps);

// The bands with a limit: how far an edge that takes away at most `most` stitches may leave them.
class Corridor {
public:
  Corridor(const std::vector<StepBand>& bands, double limit, int most);

  // Whether an edge that has taken away `taken` stitches after row `from` and changes next in row
  // `to` stays within the limit; `deviation` grows to the largest distance met. Rows count from the
  // start; the edge is looked at in the second row of each step.
  [[nodiscard]] bool stands(int from, int to, int taken, double& deviation) const {
    for (int j = from / 2; 2 * j + 1 < to; ++j) {
      const double out = out_[std::size_t(std::min(j, last_)) * width_ + taken];
      if (out > limit_) return false;
      deviation = std::max(deviation, out);
    }
    return true;
  }

private:
  std::vector<double> out_; // by step and stitches taken away: the distance outside the band
  std::size_t width_;
  int last_;
  double limit_;
};

} // namespace scye
