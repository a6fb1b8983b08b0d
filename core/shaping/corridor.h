// A reference curve as shaping sees it: step by step of two rows, the interval of stitches taken
// away that the curve covers between the step's bottom and its top; and how far an edge may leave
// it.
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

// The bands with a limit. Step j holds the rows 2j and 2j + 1 after the start; the edge is looked
// at as it stands in the second of them. Steps above the last band are as the last.
class Corridor {
public:
  Corridor(std::vector<StepBand> bands, double limit, int most)
      : bands_(std::move(bands)), limit_(limit), most_(most) {}

  [[nodiscard]] double limit() const { return limit_; }
  [[nodiscard]] double outside(int step, int taken) const { return band(step).outside(taken); }
  // The stitches taken away that are within the limit; low > high where none are.
  [[nodiscard]] int low(int step) const;
  [[nodiscard]] int high(int step) const;

private:
  [[nodiscard]] const StepBand& band(int step) const {
    return bands_[std::size_t(std::min(step, int(bands_.size()) - 1))];
  }
  std::vector<StepBand> bands_;
  double limit_;
  int most_;
};

} // namespace scye
