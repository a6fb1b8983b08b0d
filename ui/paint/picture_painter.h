// The one painter of pictures: canvas, PNG, PDF and print all come through here.
#pragma once

#include "paint/picture_colours.h"

#include <QImage>
#include <QPainterPath>
#include <QRectF>

class QPainter;

namespace scye {

// How picture centimetres (y up) lie on the painter's device (y down).
struct PictureView {
  double scale = 1; // painter units to a cm
  QPointF origin;   // where the picture's (0, 0) lies
  double pen = 1;   // painter units to a pen

  [[nodiscard]] QPointF map(const Vec2& p) const {
    return {origin.x() + p.x() * scale, origin.y() - p.y() * scale};
  }
  void centre(const Box& box, const QRectF& room) {
    const Vec2 middle = 0.5 * (box.low + box.high);
    origin = {room.center().x() - middle.x() * scale, room.center().y() + middle.y() * scale};
  }
  [[nodiscard]] Vec2 unmap(const QPointF& p) const {
    return {(p.x() - origin.x()) / scale, (origin.y() - p.y()) / scale};
  }
};

[[nodiscard]] QImage toImage(const Image& picture);
[[nodiscard]] QPainterPath mapped(const Path& path, const PictureView& view);
void paintPicture(QPainter& painter, const Picture& picture, const PictureColours& colours,
                  const PictureView& view);

} // namespace scye
