#include "worn/view.h"

#include <numbers>

namespace scye {

Extent extentOf(const BodyForm& body, double hemY) {
  const BodyForm::Arm& arm = body.leftArm();
  const double low = std::min({hemY - 4, body.bottom(), arm.fingers.y() - 3});
  const double high = std::max(body.top(), arm.fingers.y() + 5);
  const double wide = std::abs(arm.fingers.x()) + 4;
  Extent e;
  e.middle = Vec3(0, 0.5 * (low + high), 0);
  constexpr double kShare = 1.15; // pictures are wider than high, so arms may reach further
  e.half = std::max(0.5 * (high - low), wide / kShare) * 1.06;
  return e;
}

View viewOf(NamedView named, const BodyForm& body, const Extent& extent) {
  View v;
  v.toward = extent.middle;
  switch (named) {
  case NamedView::Front:
    break;
  case NamedView::Side:
    v.turn = 90;
    break;
  case NamedView::Back:
    v.turn = 180;
    break;
  case NamedView::Armhole:
    v.turn = 38, v.lift = 8;
    v.toward = Vec3(0.9 * body.measures().halfShoulder,
                    0.45 * body.measures().tipY + 0.55 * body.measures().armpitY, 0);
    v.zoom = extent.half / (16 * std::sqrt(body.measures().scale()));
    break;
  }
  return v;
}

Eye::Eye(const View& view, const Extent& extent, int width, int height) {
  constexpr double kAngle = 22; // degrees, of half the extent both ways
  const double turn = view.turn * std::numbers::pi / 180, lift = view.lift * std::numbers::pi / 180;
  const Vec3 toEye(std::sin(turn) * std::cos(lift), std::sin(lift),
                   std::cos(turn) * std::cos(lift));
  const double far = extent.half / std::tan(0.5 * kAngle * std::numbers::pi / 180);
  const Vec3 eye = view.toward + far * toEye;
  at_ = eye.cast<float>();
  forward_ = (-toEye).cast<float>();
  right_ = Vec3(std::cos(turn), 0, -std::sin(turn)).cast<float>();
  up_ = right_.cross(forward_);
  half_ = Eigen::Vector2f(float(width), float(height)) / 2;
  distance_ = float(far);
  const double fits = std::min(0.5 * height, 0.5 * width / 1.15);
  scale_ = float(fits * view.zoom / extent.half * far);
}

} // namespace scye
