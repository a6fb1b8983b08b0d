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

// `make(textHeight in cm)`.
using MakePicture = std::function<Picture(double)>;
// Width and height in cm of a picture whose letters take no room. Cost: one picture.
[[nodiscard]] Vec2 bareSize(const MakePicture& make);
// What the scale would be without letters: no letters make it larger.
[[nodiscard]] double mostScale(const Vec2& bare, const QRectF& room);
// `letters`: their height in painter units; `bare`: as bareSize() of the same pictures. Within 3
// per cent of the largest scale. Cost: three to nine pictures.
[[nodiscard]] FittedPicture fitPicture(const MakePicture& make, const Vec2& bare, double letters,
                                       const QRectF& room);

} // namespace scye
