#include "knitting/big_text.h"

#include <QPainter>

namespace scye {
namespace {

constexpr int kWrapped = Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap;
constexpr double kLargest = 5, kStep = 0.9; // times the font's own size

} // namespace

BigText::BigText(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void BigText::setText(const QString& text) {
  if (text == text_) return;
  text_ = text;
  setAccessibleName(text);
  update();
}

QSize BigText::sizeHint() const {
  return {20 * fontMetrics().averageCharWidth(), 6 * fontMetrics().height()};
}

QSize BigText::minimumSizeHint() const {
  return {10 * fontMetrics().averageCharWidth(), 3 * fontMetrics().height()};
}

void BigText::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  QFont large = font();
  for (double times = kLargest; times >= 1; times *= kStep) {
    large.setPointSizeF(times * font().pointSizeF());
    const QRect needed = QFontMetrics(large).boundingRect(rect(), kWrapped, text_);
    if (rect().contains(needed)) break;
  }
  painter.setFont(large);
  painter.setPen(palette().color(QPalette::WindowText));
  painter.drawText(rect(), kWrapped, text_);
}

} // namespace scye
