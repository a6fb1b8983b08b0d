// Finding the scale at which a picture with letters of a fixed size on the screen fills a room.
#pragma once

#include "paint/picture_painter.h"

#include <QRectF>

#include <functional>

namespace scye {

struct FittedPicture {
  Picture picture;
  PictureView view;
};

// `make(textHeight in cm)`; `letters`: their height in painter units. Within 3 per cent of the
// largest scale. Cost: four to ten pictures.
[[nodiscard]] FittedPicture fitPicture(const std::function<Picture(double)>& make, double letters,
                                       const QRectF& room);
// What the scale would be without letters: no letters make it larger. Cost: one picture.
[[nodiscard]] double mostScale(const std::function<Picture(double)>& make, const QRectF& room);

} // namespace scye
