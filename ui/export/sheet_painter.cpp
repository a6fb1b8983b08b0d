#include "export/sheet_painter.h"

#include "paint/picture_painter.h"

#include <QPainter>

namespace scye {

void paintSheet(QPainter& painter, const Sheet& sheet, double unitsPerMm) {
  const PictureColours colours = paperColours();
  PictureView view;
  view.scale = 10 * unitsPerMm / sheet.oneTo;
  view.pen = kPenMm * unitsPerMm;
  if (!sheet.seen.empty())
    view.origin = {sheet.corner.x() * unitsPerMm - sheet.seen.low.x() * view.scale,
                   sheet.corner.y() * unitsPerMm + sheet.seen.high.y() * view.scale};
  painter.save();
  if (sheet.clipped)
    painter.setClipRect(QRectF(view.map(sheet.seen.low), view.map(sheet.seen.high)).normalized(),
                        Qt::IntersectClip);
  paintPicture(painter, sheet.picture, colours, view);
  painter.restore();
  PictureView paper;
  paper.scale = 10 * unitsPerMm;
  paper.pen = view.pen;
  paper.origin = {0, sheet.size.y() * unitsPerMm};
  paintPicture(painter, sheet.marks, colours, paper);
}

} // namespace scye
