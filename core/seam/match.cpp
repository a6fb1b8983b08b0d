#include "seam/match.h"

#include <Eigen/LU>

#include <algorithm>
#include <array>
#include <cmath>

namespace scye {
namespace {

double capTotal(const Sizes& s, double height) {
  return capEdge(capHalf(s, Field::UnderarmBack), height).first +
         capEdge(capHalf(s, Field::UnderarmFront), height).first;
}

double armholeTotal(const Sizes& s) {
  return armholeEdge(backArmhole(s)) + armholeEdge(frontArmhole(s));
}

void put(Sizes& s, Field f, double value) {
  s.values[std::size_t(f)] = value;
}

struct Unknown {
  Field field;
  double low, high;
};

// An unknown finished measure, written to its ease: what was typed stays.
Unknown unknownFinished(const Sizes& s, Field measurement, double low, double high) {
  const double now = s.finished(measurement);
  const Field ease = *easeOf(measurement);
  return {ease, s[ease] + low - now, s[ease] + high - now};
}

// The field that is worked out and what it may be while the cap keeps a curve at all.
Unknown unknownOf(WorkedOut what, const Sizes& s, double target) {
  const double flats =
      2 * std::max(s[Field::UnderarmBack], s[Field::UnderarmFront]) + s[Field::CrownWidth];
  const double width = s.finished(Field::UpperArm);
  constexpr double kSliver = 0.2; // cm of curve that always stays, each half
  switch (what) {
  case WorkedOut::UpperArmEase:
    return unknownFinished(s, Field::UpperArm, flats + 2 * kSliver, target);
  case WorkedOut::CrownWidth:
    return {Field::CrownWidth, kSliver, s[Field::CrownWidth] + width - flats - 2 * kSliver};
  case WorkedOut::ArmholeDepth:
    return unknownFinished(s, Field::ArmholeDepth, 3, info(Field::ArmholeDepth).high);
  case WorkedOut::CapHeight:
  case WorkedOut::CapEase: // follows from the rest without a search
    break;
  }
  return {Field::CapHeight, 0, target};
}

Unknown withinItsField(const Unknown& u) {
  return {u.field, std::max(u.low, info(u.field).low), std::min(u.high, info(u.field).high)};
}

void measureHalves(CapMatch& m) {
  m.capBack = capEdge(m.back, m.height).first;
  m.capFront = capEdge(m.front, m.height).first;
  if (m.lean != 0) return;
  // The mark alone moves: each half then has its armhole plus its share of the ease.
  const double share = m.armhole() > 0 ? m.armholeBack / m.armhole() : 0.5;
  const double mark = m.armholeBack + share * m.ease() - m.capBack;
  m.crownMark = std::clamp(mark, -m.back.crownHalf, m.back.crownHalf);
  m.capBack += m.crownMark;
  m.capFront -= m.crownMark;
}

// Newton in (H, c). The curve's length is homogeneous in (span, H), so by Euler's relation
// dL/dspan = (L - H dL/dH) / span: no second quadrature is needed.
bool solveLeaning(CapMatch& m) {
  const double share = m.armholeBack / m.armhole(), ease = m.easeWanted;
  const double wantBack = m.armholeBack + share * ease;
  const double wantFront = m.armholeFront + (1 - share) * ease;
  const double limit = 0.8 * std::min(m.back.span(), m.front.span());
  CapShape back = m.back, front = m.front;
  double height = m.height, lean = 0;
  for (int i = 0; i < 40; ++i) {
    back.lean = lean, front.lean = -lean;
    const auto [lengthBack, slopeBack] = capEdge(back, height);
    const auto [lengthFront, slopeFront] = capEdge(front, height);
    const auto bySpan = [&](const CapShape& shape, double length, double slope) {
      const double curve = length - shape.underarm - shape.crownHalf;
      return (curve - height * slope) / shape.span();
    };
    const Eigen::Vector2d off(lengthBack - wantBack, lengthFront - wantFront);
    Eigen::Matrix2d jacobian;
    jacobian << slopeBack, bySpan(back, lengthBack, slopeBack), slopeFront,
        -bySpan(front, lengthFront, slopeFront);
    const Eigen::Vector2d step = jacobian.inverse() * off;
    if (!step.allFinite()) return false;
    // Half steps where a whole one would leave the domain.
    double scale = 1;
    while (scale > 1e-6 &&
           (height - scale * step[0] <= 0.2 * height || std::abs(lean - scale * step[1]) > limit))
      scale *= 0.5;
    if (scale <= 1e-6) return false;
    height -= scale * step[0], lean -= scale * step[1];
    m.summary.iterations++;
    if (scale == 1 && step.cwiseAbs().maxCoeff() <= 1e-11) {
      back.lean = lean, front.lean = -lean;
      m.back = back, m.front = front, m.height = height, m.lean = lean;
      m.crownMark = lean;
      if (m.unknown == WorkedOut::CapHeight) m.value = m.high = height;
      return true;
    }
  }
  return false;
}

// At either end of what the unknown may be there is a cap height that fits; the one nearer to what
// is held.
std::optional<CapMatch::Nearest> nearestMatch(Sizes trial, const Unknown& unknown,
                                              const CapMatch& m) {
  std::optional<CapMatch::Nearest> nearest;
  for (const double value : {unknown.low, unknown.high}) {
    put(trial, unknown.field, value);
    const std::array halves{capHalf(trial, Field::UnderarmBack),
                            capHalf(trial, Field::UnderarmFront)};
    if (halves[0].span() <= 0 || halves[1].span() <= 0) continue;
    const RootSummary at = solveCapHeight(halves, armholeTotal(trial) + m.easeWanted);
    if (!at.ok() || at.x <= kLeastCapHeight) continue;
    if (!nearest || std::abs(at.x - m.height) < std::abs(nearest->height - m.height))
      nearest = CapMatch::Nearest{at.x, value};
  }
  return nearest;
}

} // namespace

CapShape capHalf(const Sizes& s, Field underarm) {
  CapShape c;
  c.halfWidth = 0.5 * s.finished(Field::UpperArm);
  c.underarm = s[underarm];
  c.crownHalf = 0.5 * s[Field::CrownWidth];
  // Neither exceeds 1, so a + b <= 1 + sqrt(ab): x stays monotone.
  c.lowerFullness = s[Field::LowerFullness];
  c.upperFullness = s[Field::UpperFullness];
  return c;
}

Worked matchCap(const Sizes& given) {
  Worked out{given, {}};
  Sizes& s = out.sizes;
  CapMatch& m = out.match;
  m.unknown = s.style.workedOut;
  m.easeWanted = s[Field::CapEase];
  const double target = armholeTotal(s) + m.easeWanted;
  const Unknown unknown = withinItsField(unknownOf(m.unknown, s, target));
  m.low = unknown.low, m.high = unknown.high;

  if (m.unknown == WorkedOut::CapEase) {
    m.height = s[Field::CapHeight];
    m.value = m.easeWanted = capTotal(s, m.height) - armholeTotal(s);
    m.low = capTotal(s, 0) - armholeTotal(s), m.high = info(Field::CapEase).high;
    put(s, Field::CapEase, m.value);
    m.summary.status = RootStatus::Converged;
    m.found = true;
  } else if (m.unknown != WorkedOut::CapHeight) {
    m.height = s[Field::CapHeight];
    Sizes trial = s;
    const auto excess = [&](double value) {
      put(trial, unknown.field, value);
      return capTotal(trial, m.height) - armholeTotal(trial) - m.easeWanted;
    };
    if (unknown.low < unknown.high)
      m.summary = bracketedSecant(excess, unknown.low, unknown.high, {.xTolerance = 1e-10});
    m.found = m.summary.ok();
    if (!m.found && unknown.low < unknown.high) m.nearest = nearestMatch(trial, unknown, m);
    m.value = m.found ? m.summary.x : s[unknown.field];
    if (m.found) put(s, unknown.field, m.value);
  }

  m.back = capHalf(s, Field::UnderarmBack);
  m.front = capHalf(s, Field::UnderarmFront);
  m.armholeBack = armholeEdge(backArmhole(s));
  m.armholeFront = armholeEdge(frontArmhole(s));
  if (m.unknown == WorkedOut::CapHeight) {
    m.summary = solveCapHeight(std::array{m.back, m.front}, target);
    m.found =
        m.summary.ok() && m.summary.x > kLeastCapHeight && m.back.span() > 0 && m.front.span() > 0;
    m.value = m.height = m.found ? m.summary.x : kUnmatchedHeight * s.finished(Field::ArmholeDepth);
    m.low = kLeastCapHeight, m.high = m.height;
  }
  if (m.found && s.style.capLean == CapLean::Leaning && m.unknown == WorkedOut::CapHeight &&
      m.back.span() > 0 && m.front.span() > 0)
    solveLeaning(m);
  measureHalves(m);
  if (m.unknown != WorkedOut::CapHeight) return out;
  put(s, Field::CapHeight, m.height);
  return out;
}

} // namespace scye
