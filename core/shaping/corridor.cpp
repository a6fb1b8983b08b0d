#include "shaping/corridor.h"

#include "curve/roots.h"

#include <cmath>

namespace scye {

namespace {

// x of a segment at a height it passes.
double acrossAt(const Cubic& c, double y) {
  if (c.isStraight()) {
    const Vec2 run = c.end() - c.start();
    return run.y() > 0 ? c.start().x() + run.x() * (y - c.start().y()) / run.y() : c.end().x();
  }
  const RootSummary root =
      bracketedNewton([&](double t) { return std::pair(c.at(t).y() - y, c.derivative(t).y()); },
                      0.0, 1.0, {.xTolerance = 1e-12});
  return c.at(root.x).x();
}

} // namespace

std::vector<StepBand> stepBands(const Path& curve, const StitchSize& size, int steps) {
  std::vector<StepBand> bands(std::max(steps, 1));
  const double left = curve.start().x(), bottom = curve.start().y();
  const std::vector<Cubic>& segments = curve.segments();
  std::size_t segment = 0;
  double x = left; // where the curve is at the step's bottom
  for (std::size_t j = 0; j < bands.size(); ++j) {
    double least = x, most = x;
    const double top = bottom + 2 * double(j + 1) * size.height;
    for (; segment < segments.size() && segments[segment].end().y() <= top; ++segment) {
      x = segments[segment].end().x();
      least = std::min(least, x), most = std::max(most, x);
    }
    if (segment < segments.size()) x = acrossAt(segments[segment], top);
    least = std::min(least, x), most = std::max(most, x);
    bands[j] = {(left - most) / size.width, (left - least) / size.width};
  }
  return bands;
}

int Corridor::low(int step) const {
  return std::max(0, int(std::ceil(std::max(-1.0, band(step).low - limit_) - 1e-9)));
}

int Corridor::high(int step) const {
  return int(std::floor(std::min(double(most_), band(step).high + limit_) + 1e-9));
}

} // namespace scye
