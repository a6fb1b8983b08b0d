#include "curve/quadrature.h"

#include <numbers>

namespace scye {

const GaussRule& gauss16() {
  static const GaussRule rule = [] {
    constexpr int n = GaussRule::kPoints;
    GaussRule r{};
    for (int i = 0; i < n; ++i) {
      double x = -std::cos(std::numbers::pi * (i + 0.75) / (n + 0.5)), slope = 1;
      for (int step = 0; step < 8; ++step) {
        double p0 = 1, p1 = x;
        for (int k = 2; k <= n; ++k) {
          const double p2 = ((2 * k - 1) * x * p1 - (k - 1) * p0) / k;
          p0 = p1, p1 = p2;
        }
        slope = n * (x * p1 - p0) / (x * x - 1);
        x -= p1 / slope;
      }
      r.node[i] = x;
      r.weight[i] = 2 / ((1 - x * x) * slope * slope);
    }
    return r;
  }();
  return rule;
}

} // namespace scye
