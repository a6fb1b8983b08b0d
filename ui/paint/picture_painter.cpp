#include "paint/picture_painter.h"

#include <QFontMetricsF>
#include <QPainter>

#include <cmath>

namespace scye {
namespace {

void paintStroke(QPainter& painter, const Stroke& stroke, const PictureColours& colours,
                 const PictureView& view) {
  const QColor& colour = colours[stroke.role];
  if (stroke.filled) {
    painter.fillPath(mapped(stroke.path, view), colour);
    return;
  }
  const Pen pen = penOf(stroke.role);
  QPen line(colour, pen.width * view.pen, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
  if (!pen.dashes.empty()) {
    // Qt counts dashes in line widths.
    QList<qreal> dashes;
    for (const double d : pen.dashes)
      dashes.append(d / pen.width);
    line.setDashPattern(dashes);
  }
  painter.strokePath(mapped(stroke.path, view), line);
}

void paintLabel(QPainter& painter, const Label& label, const PictureColours& colours,
                const PictureView& view) {
  QFont font = painter.font();
  font.setPixelSize(std::max(1, int(std::lround(label.height * view.scale))));
  font.setBold(isBold(label.role));
  const QString text = QString::fromStdString(label.text);
  const double width = QFontMetricsF(font, painter.device()).horizontalAdvance(text);
  const double shift = label.anchor == Anchor::Start    ? 0
                       : label.anchor == Anchor::Middle ? -width / 2
                                                        : -width;
  painter.save();
  painter.setFont(font);
  painter.setPen(colours[label.role]);
  painter.translate(view.map(label.at));
  painter.rotate(-label.angle);
  painter.drawText(QPointF(shift, 0), text);
  painter.restore();
}

} // namespace

QPainterPath mapped(const Path& path, const PictureView& view) {
  QPainterPath out(view.map(path.start()));
  for (const Cubic& c : path.segments()) {
    if (c.isStraight())
      out.lineTo(view.map(c.end()));
    else
      out.cubicTo(view.map(c.p[1]), view.map(c.p[2]), view.map(c.end()));
  }
  if ((path.end() - path.start()).norm() < 1e-9 && !path.empty()) out.closeSubpath();
  return out;
}

QImage toImage(const Image& picture) {
  const QImage seen(picture.rgb.data(), picture.width, picture.height, 3 * picture.width,
                    QImage::Format_RGB888);
  if (picture.opacity.empty()) return seen.convertToFormat(QImage::Format_RGB32); // owns its pixels
  QImage clear = seen.convertToFormat(QImage::Format_ARGB32);
  clear.setAlphaChannel(QImage(picture.opacity.data(), picture.width, picture.height, picture.width,
                               QImage::Format_Alpha8));
  return clear;
}

void paintPicture(QPainter& painter, const Picture& picture, const PictureColours& colours,
                  const PictureView& view) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  for (const Group& group : picture.groups) {
    for (const PlacedImage& placed : group.images)
      painter.drawImage(QRectF(view.map({placed.box.low.x(), placed.box.high.y()}),
                               view.map({placed.box.high.x(), placed.box.low.y()})),
                        toImage(*placed.image));
    for (const Stroke& stroke : group.strokes)
      paintStroke(painter, stroke, colours, view);
    for (const Label& label : group.labels)
      paintLabel(painter, label, colours, view);
  }
  painter.restore();
}

} // namespace scye
