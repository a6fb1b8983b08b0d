#include "knitting/big_text.h"

#include <QEvent>
#include <QPainter>

#include <algorithm>

namespace scye {
namespace {

constexpr int kWrapped = Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap;
constexpr double kLargest = 5, kStep = 0.9; // times the font's own size
constexpr double kFromAfar = 2.3;

} // namespace

BigText::BigText(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void BigText::setText(const QString& text) {
  if (text == text_) return;
  text_ = text;
  setAccessibleName(text);
  askForRoom();
  update();
}

QRect BigText::needed(double times, const QRect& in) const {
  QFont large = font();
  large.setPointSizeF(times * font().pointSizeF());
  return QFontMetrics(large).boundingRect(in, kWrapped, text_);
}

void BigText::askForRoom() {
  const int least = minimumSizeHint().height();
  setMinimumHeight(std::max(least, needed(kFromAfar, QRect(0, 0, width(), 1)).height()));
}

void BigText::resizeEvent(QResizeEvent*) {
  askForRoom();
}

void BigText::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) askForRoom();
}

QSize BigText::sizeHint() const {
  return {20 * fontMetrics().averageCharWidth(), 6 * fontMetrics().height()};
}

QSize BigText::minimumSizeHint() const {
  return {10 * fontMetrics().averageCharWidth(), 3 * fontMetrics().height()};
}

double BigText::times() const {
  for (double times = kLargest; times >= 1; times *= kStep)
    if (rect().contains(needed(times, rect()))) return times;
  return 0;
}

void BigText::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  QFont large = font();
  large.setPointSizeF(std::max(1.0, times()) * font().pointSizeF());
  painter.setFont(large);
  painter.setPen(palette().color(QPalette::WindowText));
  painter.drawText(rect(), kWrapped, text_);
}

} // namespace scye
