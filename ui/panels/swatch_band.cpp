#include "panels/swatch_band.h"

#include "paint/picture_colours.h"

#include <QPainter>

#include <algorithm>

namespace scye {
namespace {

constexpr double kScaleReach = 2, kTolerance = 1; // cm

} // namespace

SwatchBand::SwatchBand(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
}

void SwatchBand::setReach(double cm) {
  reach_ = cm;
  update();
}

QSize SwatchBand::sizeHint() const {
  return {12 * fontMetrics().averageCharWidth(), fontMetrics().height()};
}

void SwatchBand::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const bool dark = isDark(palette());
  const QColor line =
      mixed(palette().color(QPalette::Window), palette().color(QPalette::WindowText), 0.4);
  const double thick = height() / 3.0, middle = height() / 2.0, centre = width() / 2.0;
  const double perCm = (width() / 2.0 - 1) / std::max(kScaleReach, reach_);
  const double half = std::max(1.0, reach_ * perCm);
  painter.setPen(Qt::NoPen);
  painter.setBrush(reach_ > kTolerance ? warningColour(dark) : accent(dark));
  painter.drawRect(QRectF(centre - half, middle - thick / 2, 2 * half, thick));
  painter.setPen(QPen(line, 1));
  painter.drawLine(QPointF(0.5, middle), QPointF(width() - 0.5, middle));
  for (const double at : {-kTolerance, kTolerance})
    painter.drawLine(QPointF(centre + at * perCm, 1), QPointF(centre + at * perCm, height() - 1));
}

} // namespace scye
