// Mouse and keyboard of the drawing table.
#include "canvas/drawing_table.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QWheelEvent>

#include <cmath>

namespace scye {

void DrawingTable::resizeEvent(QResizeEvent*) {
  if (fitted_) fit();
}

void DrawingTable::wheelEvent(QWheelEvent* event) {
  if (event->angleDelta().y() == 0) return;
  zoomBy(std::pow(1.0015, event->angleDelta().y()), event->position());
}

void DrawingTable::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton && event->button() != Qt::MiddleButton) return;
  pressedAt_ = event->position();
  if (event->button() == Qt::LeftButton && !hand_ &&
      handles_->press(event->position(), view_, reach())) {
    setCursor(Qt::ClosedHandCursor);
    return;
  }
  if (event->button() == Qt::LeftButton && !hand_ && hotSpotAt(event->position())) return;
  grabbed_ = event->position();
  setCursor(Qt::ClosedHandCursor);
}

void DrawingTable::mouseMoveEvent(QMouseEvent* event) {
  if (handles_->holds()) {
    handles_->drag(event->position(), view_, event->modifiers() & Qt::ShiftModifier);
    return;
  }
  if (!grabbed_) {
    hover(event->position());
    return;
  }
  panBy(event->position() - *grabbed_);
  grabbed_ = event->position();
}

void DrawingTable::mouseReleaseEvent(QMouseEvent* event) {
  if (handles_->holds() && event->button() == Qt::LeftButton) {
    handles_->release();
    hover(event->position());
    return;
  }
  const bool panned = std::exchange(grabbed_, std::nullopt).has_value();
  hover(event->position());
  if (panned || event->button() != Qt::LeftButton) return;
  const HotSpot* spot = hotSpotAt(event->position());
  if (spot && spot == hotSpotAt(pressedAt_)) {
    const Field field = spot->field;
    attention_.goTo(field, isMeasurement(field));
  }
}

void DrawingTable::hover(const QPointF& at) {
  if (!hand_) handles_->hover(at, view_, reach());
  const HotSpot* spot = hand_ || handles_->isHot() ? nullptr : hotSpotAt(at);
  setCursor(handles_->isHot() ? Qt::SizeAllCursor
            : spot            ? Qt::PointingHandCursor
                              : Qt::OpenHandCursor);
  const bool same =
      spot ? hot_ && hot_->field == spot->field && hot_->box.low == spot->box.low : !hot_;
  if (same) return;
  hot_ = spot ? std::optional(*spot) : std::nullopt;
  if (handles_->isHot()) return update();
  setToolTip(spot ? tr("%1: click to type it")
                        .arg(QString::fromStdString(
                            settings_.phrases().say("field." + std::string(info(spot->field).key))))
                  : QString());
  update();
}

void DrawingTable::enterEvent(QEnterEvent* event) {
  QWidget::enterEvent(event);
  handles_->setShown(true);
}

void DrawingTable::leaveEvent(QEvent*) {
  handles_->leave();
  handles_->setShown(false);
  hot_.reset();
  update();
}

void DrawingTable::keyPressEvent(QKeyEvent* event) {
  if (handles_->key(event)) return;
  const double step = 4 * fontMetrics().height();
  switch (event->key()) {
  case Qt::Key_Left:
    panBy({step, 0});
    return;
  case Qt::Key_Right:
    panBy({-step, 0});
    return;
  case Qt::Key_Up:
    panBy({0, step});
    return;
  case Qt::Key_Down:
    panBy({0, -step});
    return;
  case Qt::Key_Plus:
  case Qt::Key_Equal:
    zoomIn();
    return;
  case Qt::Key_Minus:
    zoomOut();
    return;
  case Qt::Key_F:
  case Qt::Key_Home:
    fit();
    return;
  case Qt::Key_Space:
    hand_ = true;
    hot_.reset();
    setCursor(Qt::OpenHandCursor);
    update();
    return;
  default:
    QWidget::keyPressEvent(event);
  }
}

void DrawingTable::keyReleaseEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space && !event->isAutoRepeat())
    hand_ = false;
  else
    QWidget::keyReleaseEvent(event);
}

void DrawingTable::focusInEvent(QFocusEvent* event) {
  ringed_ = event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason;
  update();
}
void DrawingTable::focusOutEvent(QFocusEvent*) {
  hand_ = false;
  ringed_ = false;
  update();
}

void DrawingTable::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) {
    if (fitted_)
      fit();
    else
      redraw();
  }
}

} // namespace scye
