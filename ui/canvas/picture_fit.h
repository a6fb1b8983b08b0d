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
// of the picture, and not evenly (a figure that finds no room moves), so the scale is lowered until the
// picture fits. Within 0.4 per cent. Cost: some fifteen pictures.
[[nodiscard]] FittedPicture fitPicture(const std::function<Picture(double)>& make, double letters,
                                       const QRectF& room);

} // namespace scye
