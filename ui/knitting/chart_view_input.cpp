// Mouse and keyboard of the chart.
#include "knitting/chart_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QWheelEvent>

#include <cmath>

namespace scye {

void ChartView::resizeEvent(QResizeEvent*) {
  if (piece_.rows.empty()) return;
  layLegend();
  stand();
  if (stand_ == Stand::Chosen) fillRoom();
}

void ChartView::wheelEvent(QWheelEvent* event) {
  if (event->angleDelta().y() == 0) return;
  zoomBy(std::pow(1.0015, event->angleDelta().y()), event->position());
  pointAt(event->position());
}

void ChartView::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton && event->button() != Qt::MiddleButton) return;
  grabbed_ = event->position();
  setCursor(Qt::ClosedHandCursor);
}

void ChartView::mouseMoveEvent(QMouseEvent* event) {
  if (!grabbed_) {
    pointAt(event->position());
    return;
  }
  stand_ = Stand::Chosen;
  view_.origin += event->position() - *grabbed_;
  grabbed_ = event->position();
  update();
}

void ChartView::mouseReleaseEvent(QMouseEvent* event) {
  grabbed_.reset();
  setCursor(Qt::CrossCursor);
  pointAt(event->position());
}

void ChartView::leaveEvent(QEvent*) {
  if (!byKey_) place(std::nullopt, false);
}

void ChartView::keyPressEvent(QKeyEvent* event) {
  const QPointF middle = room().center();
  switch (event->key()) {
  case Qt::Key_Up:
    return step(1);
  case Qt::Key_Down:
    return step(-1);
  case Qt::Key_PageUp:
    return step(10);
  case Qt::Key_PageDown:
    return step(-10);
  case Qt::Key_Left:
  case Qt::Key_Right:
    if (event->modifiers() & Qt::ShiftModifier) return otherSide();
    stand_ = Stand::Chosen;
    view_.origin.rx() += (event->key() == Qt::Key_Left ? 4 : -4) * fontMetrics().height();
    return update();
  case Qt::Key_Plus:
  case Qt::Key_Equal:
    return zoomBy(1.25, middle);
  case Qt::Key_Minus:
    return zoomBy(0.8, middle);
  case Qt::Key_F:
    return fit();
  case Qt::Key_Home:
    return begin();
  case Qt::Key_Escape:
    if (place_) return place(std::nullopt, false);
    [[fallthrough]];
  default:
    QWidget::keyPressEvent(event);
  }
}

void ChartView::focusInEvent(QFocusEvent* event) {
  ringed_ = event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason;
  update();
}

void ChartView::focusOutEvent(QFocusEvent*) {
  ringed_ = false;
  update();
}

void ChartView::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::FontChange || piece_.rows.empty()) return;
  layLegend();
  stand();
}

} // namespace scye
