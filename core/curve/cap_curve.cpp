#include "curve/cap_curve.h"

#include "curve/quadrature.h"

#include <cmath>

namespace scye {

namespace {

struct LengthSlope {
  double length = 0, slope = 0;
};

// Speed along the curve and its derivative by height. With x' = -3s q(t), y' = 6H t(1-t), the speed
// is hypot(x', y') and d/dH speed = y' (y'/H) / speed.
class CapSpeed {
public:
  CapSpeed(const CapShape& shape, double height)
      : start_(3 * shape.span() * shape.lowerFullness),
        middle_(6 * shape.span() * (1 - shape.lowerFullness - shape.upperFullness)),
        end_(3 * shape.span() * shape.upperFullness), height_(height) {}

  [[nodiscard]] LengthSlope over(double lo, double hi) const {
    const GaussRule& rule = gauss16();
    const double half = 0.5 * (hi - lo), mid = 0.5 * (lo + hi);
    LengthSlope sum;
    for (int i = 0; i < GaussRule::kPoints; ++i) {
      const double t = mid + half * rule.node[i], u = 1 - t;
      const double dx = u * (start_ * u + middle_ * t) + end_ * t * t;
      const double rise = 6 * t * u, dy = height_ * rise;
      const double speed = std::sqrt(dx * dx + dy * dy);
      sum.length += rule.weight[i] * speed;
      sum.slope += rule.weight[i] * (speed > 0 ? rise * dy / speed : rise);
    }
    return {half * sum.length, half * sum.slope};
  }

  // The parts are halved until whole and halves agree; where the speed nearly vanishes only there.
  [[nodiscard]] LengthSlope refined(double lo, double hi, const LengthSlope& whole, double allowed,
                                    int depth) const {
    const double mid = 0.5 * (lo + hi);
    const LengthSlope l = over(lo, mid), r = over(mid, hi);
    const LengthSlope both{l.length + r.length, l.slope + r.slope};
    const bool rough = std::abs(both.length - whole.length) > allowed ||
                       std::abs(both.slope - whole.slope) > kSlopeTolerance; // false of a NaN
    if (depth == 0 || !rough) return both;
    const LengthSlope lower = refined(lo, mid, l, allowed, depth - 1);
    const LengthSlope upper = refined(mid, hi, r, allowed, depth - 1);
    return {lower.length + upper.length, lower.slope + upper.slope};
  }

private:
  static constexpr double kSlopeTolerance = 1e-11;
  double start_, middle_, end_, height_;
};

} // namespace

Cubic capCurve(const CapShape& shape, double height) {
  const double s = shape.span(), top = shape.crownHalf - shape.lean;
  const double foot = shape.halfWidth - shape.underarm;
  return {{Vec2(foot, 0), Vec2(foot - shape.lowerFullness * s, 0),
           Vec2(top + shape.upperFullness * s, height), Vec2(top, height)}};
}

std::pair<double, double> capEdge(const CapShape& shape, double height) {
  const CapSpeed speed(shape, height);
  const LengthSlope whole = speed.over(0, 1);
  const LengthSlope curve = speed.refined(0, 1, whole, 1e-12 * whole.length, 40);
  return {shape.underarm + shape.crownHalf + curve.length, curve.slope};
}

RootSummary solveCapHeight(std::span<const CapShape> halves, double target) {
  double flats = 0;
  for (const CapShape& half : halves)
    flats += half.underarm + half.crownHalf;
  const double high = halves.empty() ? 0 : (target - flats) / double(halves.size());
  if (!(high > 0 && std::isfinite(high))) return {};
  return bracketedNewton(
      [&](double height) {
        std::pair<double, double> sum{-target, 0};
        for (const CapShape& half : halves) {
          const auto [length, slope] = capEdge(half, height);
          sum.first += length, sum.second += slope;
        }
        return sum;
      },
      0.0, high, {.xTolerance = 1e-11});
}

} // namespace scye
