#include "canvas/picture_fit.h"

#include <cmath>

namespace scye {
namespace {

constexpr double kLeastScale = 0.3; // painter units to a cm
constexpr double kStep = 0.9;
constexpr int kHalvings = 5; // of a step: within 0.4 per cent

} // namespace

FittedPicture fitPicture(const std::function<Picture(double)>& make, double letters,
                         const QRectF& room) {
  FittedPicture fitted;
  const auto fits = [&](double scale) {
    fitted.picture = make(letters / scale);
    const Vec2 size = fitted.picture.box().size() * scale;
    return size.x() <= room.width() && size.y() <= room.height();
  };
  // Without its letters the picture would fill the room at this scale.
  const Vec2 bare = make(1e-3).box().size();
  double high = std::min(room.width() / std::max(bare.x(), 1e-3), room.height() / std::max(bare.y(), 1e-3));
  double low = high;
  while (low > kLeastScale && !fits(low)) high = std::exchange(low, kStep * low);
  for (int i = 0; i < kHalvings && high > low; ++i) {
    const double middle = std::sqrt(low * high);
    (fits(middle) ? low : high) = middle;
  }
  (void)fits(low);
  fitted.view.scale = low;
  const Box box = fitted.picture.box();
  if (box.empty()) return fitted;
  const Vec2 middle = 0.5 * (box.low + box.high);
  fitted.view.origin = {room.center().x() - middle.x() * low, room.center().y() + middle.y() * low};
  return fitted;
}

} // namespace scye
