#include "fit/verdict_line.h"

#include "fit/severity.h"
#include "garment/verdict.h"
#include "look/icons.h"
#include "paint/picture_colours.h"
#include "values/value_text.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QPainter>

namespace scye {

VerdictLine::VerdictLine(Document& document, Settings& settings, QWidget* parent)
    : QAbstractButton(parent), document_(document), settings_(settings) {
  setCheckable(true);
  setFocusPolicy(Qt::StrongFocus);
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived) refresh();
  });
  connect(&settings_, &Settings::changed, this, &VerdictLine::refresh);
}

void VerdictLine::refresh() {
  if (!isVisible()) return; // there is no design to speak of
  const Derived& derived = document_.derived();
  const FitVerdict verdict = fitVerdict(derived, settings_.phrases(), settings_.unit());
  const QString before = sentence_;
  sentence_ = unbroken(settings_.phrases(), verdict.sentence);
  fits_ = verdict.fits;
  sign_ = fits_ ? scye::icon("fits", accent(isDark(palette()))) : severityIcon(Severity::Blocking);
  const int findings = int(derived.findings.size());
  count_ = findings == 0 ? tr("no findings") : tr("%n findings", nullptr, findings);
  setText(sentence_);
  setToolTip(tr("Fit and findings: show them, or hide them"));
  setAccessibleName(tr("Does the sleeve fit? %1 %2.").arg(sentence_, count_));
  if (!before.isEmpty() && before != sentence_) {
    QAccessibleEvent changed(this, QAccessible::NameChanged);
    QAccessible::updateAccessibility(&changed);
    QAccessibleEvent alert(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
  }
  if (heightForWidth(width()) > height()) {
    updateGeometry();
    Q_EMIT grown();
  }
  update();
}

QFont VerdictLine::sentenceFont() const {
  QFont f = font();
  f.setBold(true);
  return f;
}

int VerdictLine::beside() const {
  const int gap = fontMetrics().averageCharWidth();
  return 5 * gap + fontMetrics().height() + fontMetrics().horizontalAdvance(count_);
}

int VerdictLine::linesHigh(int width) const {
  const QRect room(0, 0, std::max(1, width - beside()), 1 << 14);
  return QFontMetrics(sentenceFont()).boundingRect(room, Qt::TextWordWrap, sentence_).height();
}

int VerdictLine::heightForWidth(int width) const {
  const int gap = fontMetrics().averageCharWidth();
  return std::max(2 * fontMetrics().lineSpacing(), linesHigh(width)) + gap / 2;
}

QSize VerdictLine::sizeHint() const {
  const int em = fontMetrics().averageCharWidth();
  return {90 * em, heightForWidth(90 * em)};
}
QSize VerdictLine::minimumSizeHint() const {
  return {44 * fontMetrics().averageCharWidth(), 2 * fontMetrics().lineSpacing()};
}

void VerdictLine::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const bool dark = isDark(palette());
  const QColor ground = palette().color(QPalette::Base), ink = palette().color(QPalette::Text);
  const QColor colour = fits_ ? accent(dark) : blockingColour(dark);
  const int gap = fontMetrics().averageCharWidth();
  const double round = 0.6 * gap, line = hasFocus() ? 2 : 1;
  painter.setPen(QPen(hasFocus() ? palette().color(QPalette::Highlight) : colour, line));
  painter.setBrush(mixed(ground, colour, underMouse() ? 0.16 : 0.08));
  painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), round, round);
  QRect area = rect().adjusted(gap, 0, -gap, 0);
  const int size = fontMetrics().height();
  sign_.paint(&painter, QRect(area.left(), area.center().y() - size / 2, size, size));
  area.setLeft(area.left() + size + gap);
  const int count = fontMetrics().horizontalAdvance(count_);
  painter.setPen(ink);
  painter.drawText(area, Qt::AlignRight | Qt::AlignVCenter, count_);
  area.setRight(area.right() - count - 2 * gap);
  painter.setFont(sentenceFont());
  painter.drawText(area, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap, sentence_);
}

void VerdictLine::showEvent(QShowEvent* event) {
  QAbstractButton::showEvent(event);
  refresh();
}

void VerdictLine::changeEvent(QEvent* event) {
  QAbstractButton::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) refresh();
}

void VerdictLine::enterEvent(QEnterEvent* event) {
  QAbstractButton::enterEvent(event);
  update();
}
void VerdictLine::leaveEvent(QEvent* event) {
  QAbstractButton::leaveEvent(event);
  update();
}

void VerdictLine::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
    click();
  else
    QAbstractButton::keyPressEvent(event);
}

} // namespace scye
