#include "canvas/picture_widget.h"

#include <QEvent>
#include <QFontInfo>
#include <QPainter>

namespace scye {

PictureWidget::PictureWidget(Make make, QWidget* parent) : QWidget(parent), make_(std::move(make)) {
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
}

void PictureWidget::setShape(double heightToWidth) {
  shape_ = heightToWidth;
  updateGeometry();
}

void PictureWidget::refresh() {
  if (width() < 2 || height() < 2) return;
  const double letters = 0.9 * QFontInfo(font()).pixelSize();
  fitted_ = fitPicture(make_, letters, QRectF(rect()).adjusted(1, 1, -1, -1));
  update();
}

QSize PictureWidget::sizeHint() const {
  const int width = 36 * fontMetrics().averageCharWidth();
  return {width, heightForWidth(width)};
}
QSize PictureWidget::minimumSizeHint() const { return sizeHint() / 2; }

void PictureWidget::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  PictureColours colours = screenColours(palette());
  paintPicture(painter, fitted_.picture, colours, fitted_.view);
}

void PictureWidget::resizeEvent(QResizeEvent*) { refresh(); }

void PictureWidget::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) refresh();
}

} // namespace scye
