#include "canvas/picture_fit.h"

#include <cmath>

namespace scye {
namespace {

constexpr double kLeastScale = 0.3, kMostScale = 60; // painter units to a cm
constexpr int kHalvings = 11;                        // within 0.3 per cent

} // namespace

FittedPicture fitPicture(const std::function<Picture(double)>& make, double letters,
                         const QRectF& room) {
  FittedPicture fitted;
  const auto fits = [&](double scale) {
    fitted.picture = make(letters / scale);
    const Vec2 size = fitted.picture.box().size() * scale;
    return size.x() <= room.width() && size.y() <= room.height();
  };
  double low = kLeastScale, high = kMostScale;
  for (int i = 0; i < kHalvings; ++i) {
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
