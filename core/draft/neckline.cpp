#include "draft/neckline.h"

namespace scye {
namespace {

constexpr double kQuarter = 0.5523; // Bezier arm of a quarter ellipse

// From (flatTo, low) leaving horizontally to (halfWidth, top) arriving vertically, then up;
// reversed.
Path curved(const NeckHalf& n, double flatTo, double top) {
  Path path(Vec2(n.from, n.low));
  path.lineTo(Vec2(flatTo, n.low));
  path.cubicTo(Vec2(flatTo + kQuarter * (n.halfWidth - flatTo), n.low),
               Vec2(n.halfWidth, top - kQuarter * (top - n.low)), Vec2(n.halfWidth, top));
  return path.lineTo(Vec2(n.halfWidth, n.high)).reversed();
}

Path straight(const NeckHalf& n) {
  return Path(Vec2(n.halfWidth, n.high)).lineTo(Vec2(n.from, n.low));
}

} // namespace

Path frontNeck(Neckline shape, const NeckHalf& n) {
  const double width = n.halfWidth - n.from, drop = n.high - n.low;
  if (width <= 0 || drop <= 0) return straight(n);
  switch (shape) {
  case Neckline::Vee:
    return straight(n);
  case Neckline::Square:
    return Path(Vec2(n.halfWidth, n.high))
        .lineTo(Vec2(n.halfWidth, n.low))
        .lineTo(Vec2(n.from, n.low));
  case Neckline::Boat: {
    Path path(Vec2(n.from, n.low));
    path.cubicTo(Vec2(n.from + 0.6 * width, n.low),
                 Vec2(n.halfWidth - 0.15 * width, n.high - 0.3 * drop), Vec2(n.halfWidth, n.high));
    return path.reversed();
  }
  case Neckline::Round:
  case Neckline::High:
    break;
  }
  return curved(n, n.from + 0.35 * width, n.low + 0.75 * drop);
}

Path backNeck(const NeckHalf& n) {
  const double width = n.halfWidth - n.from;
  if (width <= 0 || n.high - n.low <= 0) return straight(n);
  return curved(n, n.from + 0.65 * width, n.high);
}

} // namespace scye
