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

// `make(textHeight in cm)`; `letters`: their height in painter units. The letters take part in the size
// of the picture, so the scale is found by halving, within 0.3 per cent. Cost: a dozen pictures.
[[nodiscard]] FittedPicture fitPicture(const std::function<Picture(double)>& make, double letters,
                                       const QRectF& room);

} // namespace scye
