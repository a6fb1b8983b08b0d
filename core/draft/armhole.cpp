#include "draft/armhole.h"

#include <algorithm>
#include <cmath>

namespace scye {

double ArmholeShape::curveStart() const {
  return std::max(halfBust - underarm, halfCross + kLeastCurve);
}

Path underarmFlat(const ArmholeShape& a) {
  return Path(Vec2(a.halfBust, 0)).lineTo(Vec2(a.curveStart(), 0));
}

Path armholeCurve(const ArmholeShape& a) {
  const double from = a.curveStart(), p = from - a.halfCross, top = a.rise * a.depth;
  Path path(Vec2(from, 0));
  path.cubicTo(Vec2(from - a.scoop * p, 0), Vec2(a.halfCross, top * (1 - a.scoop)),
               Vec2(a.halfCross, top));
  if (std::abs(a.halfCross - a.halfShoulder) > 1e-9)
    path.lineTo(Vec2(a.halfCross, std::max(a.rise, 0.5) * a.depth));
  return path.lineTo(Vec2(a.halfShoulder, a.depth));
}

double armholeEdge(const ArmholeShape& a) {
  return underarmFlat(a).length() + armholeCurve(a).length();
}

} // namespace scye
