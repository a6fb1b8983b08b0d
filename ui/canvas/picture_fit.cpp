#include "canvas/picture_fit.h"

#include <cmath>

namespace scye {
namespace {

constexpr double kLeastScale = 0.3; // painter units to a cm
constexpr double kStep = 0.97;

Vec2 sizeAt(const MakePicture& make, double textHeight) {
  return make(textHeight).box().size().cwiseMax(1e-3);
}

} // namespace

Vec2 bareSize(const MakePicture& make) {
  return sizeAt(make, 1e-3);
}

double mostScale(const Vec2& bare, const QRectF& room) {
  return std::min(room.width() / bare.x(), room.height() / bare.y());
}

FittedPicture fitPicture(const MakePicture& make, const Vec2& bare, double letters,
                         const QRectF& room) {
  // The picture's size on the device is nearly bare size x scale + what its letters take, so two
  // looks tell about where it fits; from there it is lowered until it does.
  const Vec2 space(room.width(), room.height());
  double scale = std::max(kLeastScale, space.cwiseQuotient(bare).minCoeff());
  for (int look = 0; look < 2; ++look) {
    const Vec2 taken = sizeAt(make, letters / scale) * scale - bare * scale;
    scale = std::clamp((space - taken).cwiseQuotient(bare).minCoeff(), 0.5 * scale, scale);
  }
  FittedPicture fitted;
  Box box;
  while (true) {
    fitted.picture = make(letters / scale);
    box = fitted.picture.box();
    const Vec2 size = box.size() * scale;
    if (scale <= kLeastScale || (size.x() <= room.width() && size.y() <= room.height())) break;
    // Half of the way to where it would fit, were its letters to take what they take here: at a
    // lower scale fewer labels may find room.
    const double fits = (space - size + bare * scale).cwiseQuotient(bare).minCoeff();
    scale = std::max(kLeastScale, std::min(kStep * scale, 0.5 * (scale + fits)));
  }
  fitted.view.scale = scale;
  if (!box.empty()) fitted.view.centre(box, room);
  return fitted;
}

} // namespace scye
