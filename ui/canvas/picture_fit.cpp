#include "canvas/picture_fit.h"

#include <cmath>

namespace scye {
namespace {

constexpr int kRounds = 8;
constexpr double kLeastScale = 0.05; // painter units to a cm

} // namespace

FittedPicture fitPicture(const std::function<Picture(double)>& make, double letters,
                         const QRectF& room) {
  FittedPicture fitted;
  double scale = 5;
  for (int i = 0; i < kRounds; ++i) {
    fitted.picture = make(letters / scale);
    const Vec2 size = fitted.picture.box().size();
    if (size.x() <= 0 || size.y() <= 0) break;
    const double next =
        std::max(kLeastScale, std::min(room.width() / size.x(), room.height() / size.y()));
    const bool settled = std::abs(next / scale - 1) < 0.005;
    scale = i < 3 ? next : std::min(scale, next); // the last rounds only shrink, so that it ends
    if (settled) break;
  }
  fitted.view.scale = scale;
  fitted.picture = make(letters / scale);
  const Box box = fitted.picture.box();
  if (box.empty()) return fitted;
  const Vec2 middle = 0.5 * (box.low + box.high);
  fitted.view.origin = {room.center().x() - middle.x() * scale, room.center().y() + middle.y() * scale};
  return fitted;
}

} // namespace scye
