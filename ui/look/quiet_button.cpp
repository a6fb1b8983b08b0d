#include "look/quiet_button.h"

#include "look/icons.h"
#include "paint/picture_colours.h"

#include <QPainter>

#include <algorithm>

namespace scye {

QuietButton::QuietButton(Looks looks, QWidget* parent) : QAbstractButton(parent), looks_(looks) {
  setFocusPolicy(Qt::StrongFocus);
  setCheckable(looks != Looks::Aside);
}

QFont QuietButton::textFont() const {
  QFont f = font();
  f.setBold(looks_ == Looks::Heading);
  return f;
}

int QuietButton::gap() const {
  return fontMetrics().averageCharWidth();
}
int QuietButton::signSize() const {
  return looks_ == Looks::Aside ? 0 : fontMetrics().height();
}

void QuietButton::setSign(const QString& sign) {
  if (sign_ == sign) return;
  sign_ = sign;
  updateGeometry();
  update();
}

QSize QuietButton::sizeHint() const {
  return sizeFor(text());
}
QSize QuietButton::minimumSizeHint() const {
  return sizeFor(sign_.isEmpty() ? text() : sign_);
}

QSize QuietButton::sizeFor(const QString& shown) const {
  const QFontMetrics metrics(textFont());
  const int sign = signSize() ? signSize() + gap() / 2 : 0;
  const int air = looks_ == Looks::Heading ? gap() : gap() / 2;
  return {metrics.horizontalAdvance(shown) + sign + gap(), metrics.height() + 2 * air};
}

void QuietButton::enterEvent(QEnterEvent* event) {
  QAbstractButton::enterEvent(event);
  update();
}

void QuietButton::leaveEvent(QEvent* event) {
  QAbstractButton::leaveEvent(event);
  update();
}

void QuietButton::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const QColor ground = palette().color(QPalette::Window),
               ink = palette().color(QPalette::WindowText);
  if (underMouse() || hasFocus()) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(hasFocus() ? QPen(palette().color(QPalette::Highlight), 1.2) : QPen(Qt::NoPen));
    painter.setBrush(underMouse() ? mixed(ground, ink, 0.07) : QColor(Qt::transparent));
    const double round = 0.4 * gap();
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.7, 0.7, -0.7, -0.7), round, round);
  }
  QRect area = rect().adjusted(gap() / 2, 0, -gap() / 2, 0);
  if (signSize()) {
    const QRect sign(area.left(), area.center().y() - signSize() / 2, signSize(), signSize());
    scye::icon(isChecked() ? "open-down" : "open-right")
        .paint(&painter, sign.adjusted(1, 1, -1, -1));
    area.setLeft(sign.right() + gap() / 2);
  }
  painter.setFont(textFont());
  painter.setPen(looks_ == Looks::Heading ? ink : mixed(ground, ink, 0.72));
  const bool whole = sign_.isEmpty() || width() >= std::max(sizeHint().width(), 11 * gap());
  painter.drawText(area, Qt::AlignLeft | Qt::AlignVCenter, whole ? text() : sign_);
  if (looks_ != Looks::Heading) return;
  painter.setRenderHint(QPainter::Antialiasing, false);
  painter.setPen(mixed(ground, ink, 0.18));
  painter.drawLine(0, height() - 1, width(), height() - 1);
}

} // namespace scye
