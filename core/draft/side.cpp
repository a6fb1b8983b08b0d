#include "draft/side.h"

#include <algorithm>
#include <array>

namespace scye {
namespace {

double between(double x, double x0, double y0, double x1, double y1) {
  if (x1 == x0) return y0;
  return y0 + std::clamp((x - x0) / (x1 - x0), 0.0, 1.0) * (y1 - y0);
}

// The part of a line through points of rising y that lies above y = `fold`; a facing below it is as
// wide.
Path fromFold(const std::vector<Vec2>& points, double fold) {
  std::size_t i = 0;
  while (i + 1 < points.size() && points[i + 1].y() <= fold)
    ++i;
  const Vec2 &a = points[i], &b = points[std::min(i + 1, points.size() - 1)];
  const double x = between(fold, a.y(), a.x(), b.y(), b.x());
  Path path(Vec2(x, 0));
  if (fold > 0) path.lineTo(Vec2(x, fold));
  for (std::size_t k = i; k < points.size(); ++k)
    if (points[k].y() > fold) path.lineTo(points[k]);
  return path;
}

} // namespace

double hipBelowWaist(Figure figure) {
  constexpr std::array<double, 4> kDrop{20, 20, 12, 8};
  return kDrop[std::size_t(figure)];
}

Path sideSeam(const Sizes& s, const BodiceHeights& at, double share) {
  const auto half = [&](Field girth) { return 0.5 * share * s.finished(girth); };
  const double bust = half(Field::Bust), waist = half(Field::Waist), hip = half(Field::Hip);
  const double even = std::max(at.underarm - kUnderarmEven, 0.5 * at.underarm);
  // A hip said to lie above the underarm is drawn below it, so that the seam rises.
  const double hipY = std::min(at.hip, even - 2 * kUnderarmEven);
  std::vector<Vec2> points{{hip, std::min(hipY, -1.0)}, {hip, hipY}};
  const bool waistInside = at.waist + kWaistEven < even;
  const bool shaped = s.style.waisted() && waistInside;
  if (shaped && at.fold <= at.waist && at.waist < at.hem) {
    // Nothing is shaped in a rib: one that lies about the waist has the waist's width.
    points = {{waist, -1}, {waist, std::max(at.hem, at.waist + kWaistEven / 2)}};
  } else if (shaped) {
    points.push_back({waist, std::max(at.waist - kWaistEven / 2, hipY)});
    points.push_back({waist, at.waist + kWaistEven / 2});
  }
  points.push_back({bust, even});
  points.push_back({bust, at.underarm});
  return fromFold(points, at.fold);
}

SleeveBody sleeveBody(const Sizes& s, double capHeight) {
  SleeveBody out;
  out.halfWidth = 0.5 * s.finished(Field::UpperArm);
  const bool fromShoulder =
      s.style.sleeveFrom == SleeveFrom::Shoulder && s.origin(Field::SleeveLength) != Origin::Set;
  out.length = std::max(fromShoulder ? s.finished(Field::SleeveToShoulder) - capHeight
                                     : s[Field::SleeveLength],
                        info(Field::SleeveLength).low);
  out.cuff = std::min(s[Field::CuffDepth], 0.5 * out.length);
  const double wrist = 0.5 * s.finished(Field::Wrist), elbow = 0.5 * s.finished(Field::Elbow);
  const double arm = s.finished(Field::SleeveToUnderarm);
  switch (s.style.sleeveLine) {
  case SleeveLine::Straight:
    out.halfCuff = out.halfWidth;
    break;
  case SleeveLine::Flared:
  case SleeveLine::Full:
    out.halfCuff = 0.5 * s[Field::CuffGirth];
    break;
  case SleeveLine::Tapered: // a shorter sleeve ends where the long one would be that wide
    out.halfCuff = between(out.length, 0, out.halfWidth, arm, wrist);
    break;
  case SleeveLine::Fitted:
    out.halfCuff = out.length < 0.5 * arm ? between(out.length, 0, out.halfWidth, 0.5 * arm, elbow)
                                          : between(out.length, 0.5 * arm, elbow, arm, wrist);
    break;
  }
  out.halfFull =
      s.style.sleeve().gathered ? std::max(out.halfCuff, 0.5 * s[Field::FullGirth]) : out.halfCuff;
  return out;
}

Path sleeveSeam(const Sizes& s, const SleeveBody& sleeve) {
  Path path(Vec2(sleeve.halfCuff, 0));
  const double even = std::max(sleeve.length - kUnderarmEven, 0.75 * sleeve.length);
  const SleeveTraits& line = s.style.sleeve();
  if (!line.flares) path.lineTo(Vec2(sleeve.halfCuff, sleeve.cuff));
  if (line.gathered) path.lineTo(Vec2(sleeve.halfFull, sleeve.cuff));
  // Where a flare begins the sleeve is as wide as a tapered one would be.
  const double from = s.origin(Field::FlareFrom) == Origin::Set ? s[Field::FlareFrom] : even;
  if (line.flares && from < even) {
    const double arm = s.finished(Field::SleeveToUnderarm), wrist = 0.5 * s.finished(Field::Wrist);
    path.lineTo(Vec2(between(sleeve.length - from, 0, sleeve.halfWidth, arm, wrist), from));
  }
  const double elbowY = sleeve.length - 0.5 * s.finished(Field::SleeveToUnderarm);
  if (line.atElbow && elbowY > sleeve.cuff && elbowY < even)
    path.lineTo(Vec2(0.5 * s.finished(Field::Elbow), elbowY));
  path.lineTo(Vec2(sleeve.halfWidth, even));
  return path.lineTo(Vec2(sleeve.halfWidth, sleeve.length));
}

} // namespace scye
