#include "canvas/picture_widget.h"

#include <QEvent>
#include <QFontInfo>
#include <QPainter>

#include <utility>

namespace scye {

PictureWidget::PictureWidget(Make make, QList<int> layouts, QWidget* parent)
    : QWidget(parent), make_(std::move(make)), layouts_(std::move(layouts)) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

// As long as it fills the room about as well, the scale stays: a picture that breathes cannot be
// compared with what it was a moment ago.
bool PictureWidget::stays() {
  const QSizeF room(width() - 2, height() - 2);
  if (fitted_.picture.groups.empty() || room != room_) {
    room_ = room;
    return false;
  }
  Picture picture = make_(fitted_.picture.textHeight, perRow_);
  const Box box = picture.box();
  const Vec2 share =
      (box.size() * fitted_.view.scale).cwiseQuotient(Vec2(room.width(), room.height()));
  if (share.maxCoeff() > 1 || share.maxCoeff() < 0.85) return false;
  fitted_.picture = std::move(picture);
  fitted_.view.centre(box, QRectF(rect()));
  return true;
}

void PictureWidget::refresh() {
  waits_ = true;
  update();
}

void PictureWidget::settle() {
  if (!std::exchange(waits_, false)) return;
  if (width() < 2 || height() < 2 || stays()) return;
  const double letters = 0.82 * QFontInfo(font()).pixelSize();
  double best = 0;
  for (const int perRow : layouts_) {
    const auto picture = [&](double textHeight) { return make_(textHeight, perRow); };
    const QRectF room = QRectF(rect()).adjusted(1, 1, -1, -1);
    const Vec2 bare = bareSize(picture);
    if (best > 0 && mostScale(bare, room) <= best) continue;
    FittedPicture fitted = fitPicture(picture, bare, letters, room);
    if (fitted.view.scale <= best) continue;
    best = fitted.view.scale;
    fitted_ = std::move(fitted);
    perRow_ = perRow;
  }
}

QSize PictureWidget::sizeHint() const {
  const int width = 42 * fontMetrics().averageCharWidth();
  return {width, width};
}
QSize PictureWidget::minimumSizeHint() const {
  return sizeHint() / 2;
}

void PictureWidget::paintEvent(QPaintEvent*) {
  settle();
  QPainter painter(this);
  PictureColours colours = screenColours(palette());
  paintPicture(painter, fitted_.picture, colours, fitted_.view);
}

void PictureWidget::resizeEvent(QResizeEvent*) {
  refresh();
}

void PictureWidget::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::FontChange) return;
  room_ = {};
  refresh();
}

} // namespace scye
