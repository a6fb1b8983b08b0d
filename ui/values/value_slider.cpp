#include "values/value_slider.h"

#include "paint/picture_colours.h"

#include <QMouseEvent>
#include <QPainter>
#include <QSignalBlocker>
#include <QStyle>
#include <QStyleOptionSlider>

#include <algorithm>
#include <cmath>

namespace scye {

ValueSlider::ValueSlider(QWidget* parent) : QSlider(Qt::Horizontal, parent) {
  setFocusPolicy(Qt::StrongFocus);
  connect(this, &QSlider::valueChanged, this,
          [this](int at) { Q_EMIT moved(ontoGrid(at * step_, step_)); });
}

void ValueSlider::setSpan(double low, double high, double step) {
  if (held_) return;
  const QSignalBlocker quiet(this);
  step_ = step;
  setRange(int(std::ceil(low / step - 1e-9)), int(std::floor(high / step + 1e-9)));
  setPageStep(std::max(1, (maximum() - minimum()) / 10));
}

void ValueSlider::showValue(double value) {
  if (held_) return;
  const QSignalBlocker quiet(this);
  QSlider::setValue(int(std::lround(value / step_)));
}

void ValueSlider::setLikely(std::optional<std::pair<double, double>> range) {
  if (likely_ == range) return;
  likely_ = range;
  update();
}

double ValueSlider::placeOf(double value) const {
  const int handle = style()->pixelMetric(QStyle::PM_SliderLength, nullptr, this);
  const double share = std::clamp((value - low()) / std::max(step_, high() - low()), 0.0, 1.0);
  return handle / 2.0 + share * (width() - handle);
}

void ValueSlider::paintEvent(QPaintEvent* event) {
  if (likely_) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double left = placeOf(likely_->first), right = placeOf(likely_->second);
    const double tick = height() / 4.0, below = height() - 1;
    painter.setPen(QPen(accent(isDark(palette())), 1.6));
    painter.drawLine(QPointF(left, below - tick / 2), QPointF(right, below - tick / 2));
    // No tick at an end that lies beyond the slider's.
    if (likely_->first >= low())
      painter.drawLine(QPointF(left, below - tick), QPointF(left, below));
    if (likely_->second <= high())
      painter.drawLine(QPointF(right, below - tick), QPointF(right, below));
  }
  QSlider::paintEvent(event);
}

void ValueSlider::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton) {
    event->ignore();
    return;
  }
  held_ = true;
  Q_EMIT taken();
  QStyleOptionSlider option;
  initStyleOption(&option);
  const QRect handle =
      style()->subControlRect(QStyle::CC_Slider, &option, QStyle::SC_SliderHandle, this);
  if (!handle.contains(event->position().toPoint())) {
    const int x = event->position().toPoint().x() - handle.width() / 2;
    setValue(QStyle::sliderValueFromPosition(minimum(), maximum(), x, width() - handle.width(),
                                             option.upsideDown));
  }
  QSlider::mousePressEvent(event);
  pressX_ = event->position().toPoint().x();
  pressValue_ = QSlider::value();
}

void ValueSlider::mouseMoveEvent(QMouseEvent* event) {
  if (!held_) return;
  // A pixel stands for several values; where it was taken hold of, it is the value from before.
  if (event->position().toPoint().x() == pressX_)
    setSliderPosition(pressValue_);
  else
    QSlider::mouseMoveEvent(event);
}

void ValueSlider::mouseReleaseEvent(QMouseEvent* event) {
  QSlider::mouseReleaseEvent(event);
  if (!std::exchange(held_, false)) return;
  Q_EMIT letGo();
}

void ValueSlider::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || !isEnabled()) return;
  Q_EMIT pressedTwice();
  Q_EMIT startWanted();
}

void ValueSlider::giveUp() {
  held_ = false;
  setSliderDown(false);
  Q_EMIT gaveUp();
}

void ValueSlider::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && held_)
    giveUp();
  else
    QSlider::keyPressEvent(event);
}

void ValueSlider::focusInEvent(QFocusEvent* event) {
  QSlider::focusInEvent(event);
  Q_EMIT focusChanged(true);
}

void ValueSlider::focusOutEvent(QFocusEvent* event) {
  QSlider::focusOutEvent(event);
  Q_EMIT focusChanged(false);
}

void ValueSlider::wheelEvent(QWheelEvent* event) {
  if (hasFocus())
    QSlider::wheelEvent(event);
  else
    event->ignore();
}

void ValueSlider::hideEvent(QHideEvent* event) {
  QSlider::hideEvent(event);
  if (held_) giveUp();
}

} // namespace scye
