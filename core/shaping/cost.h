// What a schedule costs, in units of one line at the default fidelity. The oracle in the tests
// counts with the same prices.
#pragma once

#include "shaping/runs.h"

#include <cmath>

namespace scye {

struct ShapingPrices {
  double line = 1;      // a run that has to be told
  double deviation = 2; // a stitch off the curve

  // 0 .. 1 moves the weight from lines to nearness; 0.5 gives the figures above.
  [[nodiscard]] static ShapingPrices at(double fidelity) {
    return {.line = 0.1 + 1.8 * (1 - fidelity), .deviation = 0.1 + 3.8 * fidelity};
  }

  static constexpr double kNearEnough = 1;    // stitches; further out is dear
  static constexpr double kFar = 20;          // once, and again for every stitch further
  static constexpr double kMismatch = 0.5;    // a millimetre
  static constexpr double kOverOneMm = 16;    // once, and again for every millimetre
  static constexpr double kOverTwoMm = 1000;  // once, and again for every millimetre
  static constexpr double kCrown = 0.5;       // a centimetre wider or narrower than wanted
  static constexpr double kCrownSquare = 0.3; // and its square
  static constexpr double kWrongSideCrown = 0.3;
  static constexpr double kUnlikeArmhole =
      0.5; // the cap does not start with the armhole's bind-offs

  [[nodiscard]] double near(double stitches) const {
    const double over = stitches - kNearEnough;
    return deviation * stitches + (over > 1e-9 ? kFar * (1 + over) : 0);
  }
  // The largest deviation that costs less than `left`; negative where there is none.
  [[nodiscard]] double nearFor(double left) const {
    if (left < near(kNearEnough)) return left / deviation;
    return std::max(kNearEnough, left / (deviation + kFar));
  }
  [[nodiscard]] static double crownOff(double cm) {
    return std::abs(cm) * (kCrown + kCrownSquare * std::abs(cm));
  }
  [[nodiscard]] static double missed(double cm) {
    const double mm = 10 * std::abs(cm);
    return kMismatch * mm + (mm > 1 ? kOverOneMm * mm : 0) + (mm > 2 ? kOverTwoMm * mm : 0);
  }
};

} // namespace scye
