#include "seam/walk.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// From x measured from the centre line to x measured inward from the underarm seam at `seamX`.
Path inward(const Path& path, double seamX) { return path.mirroredX().moved(Vec2(seamX, 0)); }

Path armholePath(const ArmholeShape& a) {
  Path path = underarmFlat(a);
  return inward(path.append(armholeCurve(a)), a.halfBust);
}

Path capPath(const CapMatch& m, BodySide side) {
  const CapShape& shape = side == BodySide::Back ? m.back : m.front;
  const Cubic c = capCurve(shape, m.height);
  Path path(Vec2(shape.halfWidth, 0));
  path.lineTo(c.start()).cubicTo(c.p[1], c.p[2], c.p[3]);
  // To the shoulder mark: on an upright cap it has moved along the crown, on a leaning one the crown has.
  const double mark = m.lean != 0 ? -shape.lean : side == BodySide::Back ? -m.crownMark : m.crownMark;
  path.lineTo(Vec2(mark, m.height));
  return inward(path, shape.halfWidth);
}

} // namespace

// The integral of smoothstep, u^3 - u^4/2, scaled to end at 1.
double easeShare(double t) {
  const double u = std::clamp((t - 1.0 / 3) * 1.5, 0.0, 1.0);
  return 2 * u * u * u - u * u * u * u;
}

SeamWalk::SeamWalk(const GarmentDraft& draft, BodySide side)
    : armhole_(armholePath(side == BodySide::Back ? draft.bodice.back : draft.bodice.front)),
      cap_(capPath(draft.cap, side)) {
  const ArmholeShape& a = side == BodySide::Back ? draft.bodice.back : draft.bodice.front;
  underarm_ = a.halfBust - a.curveStart();
  curveEnd_ = armhole_.endOf(underarm_ > 0 ? 1 : 0);
}

double SeamWalk::onCap(double s) const {
  const double length = armhole_.length() - underarm_;
  const double t = length > 0 ? (s - underarm_) / length : 0;
  return std::clamp(s + ease() * easeShare(t), 0.0, cap_.length());
}

std::vector<double> SeamWalk::notches() const {
  constexpr double kApart = 5; // cm
  const double total = armhole_.length();
  std::vector<double> out;
  const auto between = [&](double from, double to) {
    const int parts = std::max(1, int(std::lround((to - from) / kApart)));
    for (int i = 0; i < parts; ++i) out.push_back(from + i * (to - from) / parts);
  };
  between(underarm_, curveEnd_);
  between(curveEnd_, total);
  out.push_back(total);
  return out;
}

} // namespace scye
