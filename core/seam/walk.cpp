#include "seam/walk.h"

#include "draft/complete.h"
#include "model/enum_keys.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// From x measured from the centre line to x measured inward from the underarm seam at `seamX`.
Path inward(const Path& path, double seamX) {
  return path.mirroredX().moved(Vec2(seamX, 0));
}

Path armholePath(const ArmholeShape& a) {
  Path path = underarmFlat(a);
  return inward(path.append(armholeCurve(a)), a.halfBust);
}

Path capPath(const CapMatch& m, ArmholeHalf half) {
  const CapShape& shape = half == ArmholeHalf::Back ? m.back : m.front;
  const Cubic c = capCurve(shape, m.height);
  Path path(Vec2(shape.halfWidth, 0));
  path.lineTo(c.start()).cubicTo(c.p[1], c.p[2], c.p[3]);
  // To the shoulder mark: on an upright cap it has moved along the crown, on a leaning one the
  // crown has.
  const double mark = m.lean != 0                 ? -shape.lean
                      : half == ArmholeHalf::Back ? -m.crownMark
                                                  : m.crownMark;
  path.lineTo(Vec2(mark, m.height));
  return inward(path, shape.halfWidth);
}

} // namespace

// The integral of smoothstep, u^3 - u^4/2, scaled to end at 1.
double easeShare(double t) {
  const double u = std::clamp((t - 1.0 / 3) * 1.5, 0.0, 1.0);
  return 2 * u * u * u - u * u * u * u;
}

double LetIn::upTo(double s) const {
  const double t = to > from ? (s - from) / (to - from) : 0;
  const double gathered =
      to > gathersFrom ? std::clamp((s - gathersFrom) / (to - gathersFrom), 0.0, 1.0) : 0;
  return smooth * easeShare(t) + drawn * gathered;
}

double LetIn::onArmhole(double c) const {
  double low = 0, high = to;
  while (high - low > 1e-9) {
    const double middle = 0.5 * (low + high);
    (onCap(middle) < c ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

LetIn letIn(const GarmentDraft& draft, double underarm, double length, double ease,
            double capEase) {
  LetIn out{underarm, length, length, ease, 0};
  const double drawn = drawnInAtCrown(draft.sizes.style, capEase);
  if (drawn <= 0 || ease <= 0) return out;
  out.drawn = ease * drawn / capEase, out.smooth = ease - out.drawn;
  out.gathersFrom =
      length - std::min(0.5 * draft.sizes[Field::GatherWidth], kMostGathered * (length - underarm));
  return out;
}

std::string_view notchKey(NotchKind kind) {
  static constexpr EnumKeys<NotchKind, NotchKind::Shoulder> kKeys{{
      {NotchKind::Underarm, "underarm"},
      {NotchKind::Between, "between"},
      {NotchKind::CurveEnd, "curveEnd"},
      {NotchKind::GathersBegin, "gathersBegin"},
      {NotchKind::Shoulder, "shoulder"},
  }};
  return kKeys[kind];
}

SeamWalk::SeamWalk(const GarmentDraft& draft, ArmholeHalf half)
    : armhole_(armholePath(half == ArmholeHalf::Back ? draft.bodice.back : draft.bodice.front)),
      cap_(capPath(draft.cap, half)) {
  const ArmholeShape& a = half == ArmholeHalf::Back ? draft.bodice.back : draft.bodice.front;
  const double underarm = a.halfBust - a.curveStart();
  curveEnd_ = armhole_.endOf(underarm > 0 ? 1 : 0);
  letIn_ = scye::letIn(draft, underarm, armhole_.length(), ease(), draft.cap.ease());
}

double SeamWalk::onCap(double s) const {
  return std::clamp(letIn_.onCap(s), 0.0, cap_.length());
}

std::vector<Notch> SeamWalk::notches() const {
  constexpr double kApart = 5, kNear = 1.5; // cm
  std::vector<Notch> out;
  const auto upTo = [&](NotchKind kind, double to) {
    if (!out.empty()) {
      const double from = out.back().s;
      const int parts = std::max(1, int(std::lround((to - from) / kApart)));
      for (int i = 1; i < parts; ++i)
        out.push_back({NotchKind::Between, from + i * (to - from) / parts});
    }
    out.push_back({kind, to});
  };
  const bool gathers = letIn_.gathers();
  const double begin = letIn_.gathersFrom;
  const bool curve =
      armhole_.length() - curveEnd_ > 1e-9 && !(gathers && std::abs(begin - curveEnd_) < kNear);
  upTo(NotchKind::Underarm, letIn_.from);
  if (curve && !(gathers && begin < curveEnd_)) upTo(NotchKind::CurveEnd, curveEnd_);
  if (gathers) upTo(NotchKind::GathersBegin, begin);
  if (curve && gathers && begin < curveEnd_) upTo(NotchKind::CurveEnd, curveEnd_);
  upTo(NotchKind::Shoulder, armhole_.length());
  return out;
}

} // namespace scye
