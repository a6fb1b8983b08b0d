#include "values/field_box.h"

#include "paint/picture_colours.h"

#include <QGuiApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QStyleOptionSpinBox>

namespace scye {

FieldBox::FieldBox(FieldKind kind, const Phrases& phrases, QWidget* parent)
    : QAbstractSpinBox(parent), kind_(kind), phrases_(phrases) {
  setButtonSymbols(NoButtons);
  setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
  setFocusPolicy(Qt::StrongFocus); // not by the wheel: it scrolls the panel
  connect(lineEdit(), &QLineEdit::textEdited, this, [this] { dirty_ = true; });
  connect(this, &QAbstractSpinBox::editingFinished, this, &FieldBox::commit);
}

void FieldBox::setValueStyle(const ValueStyle& style) {
  if (style_ == style) return;
  style_ = style;
  updateGeometry();
  showText();
}

void FieldBox::setValue(double value) {
  if (value_ == value) return;
  value_ = value;
  showText();
}

void FieldBox::setBlank() {
  if (!value_ && !refused_ && !dirty_) return;
  value_.reset();
  showText();
}

void FieldBox::setFilledIn(bool filledIn) {
  if (filledIn_ == filledIn) return;
  filledIn_ = filledIn;
  colour();
}

void FieldBox::colour() {
  const QPalette desktop = QGuiApplication::palette();
  QPalette p;
  if (refused_)
    p.setColor(QPalette::Text,
               legible(blockingColour(isDark(desktop)), desktop.color(QPalette::Base)));
  else if (filledIn_)
    p.setColor(QPalette::Text,
               mixed(desktop.color(QPalette::Base), desktop.color(QPalette::Text), 0.66));
  if (p.color(QPalette::Text) != palette().color(QPalette::Text)) setPalette(p);
}

void FieldBox::refuse() {
  refused_ = true;
  dirty_ = false; // it has been said
  if (lineEdit()->text() != typed_) lineEdit()->setText(typed_);
  colour();
}

void FieldBox::forgive() {
  if (!std::exchange(refused_, false)) return;
  showText();
  colour();
  Q_EMIT gaveUp();
}

void FieldBox::showText() {
  if (refused_) return; // it stays
  dirty_ = false;
  const QString text = value_ ? valueText(phrases_, kind_, *value_, style_) : QString();
  if (text != lineEdit()->text()) lineEdit()->setText(text);
}

QSize FieldBox::sizeHint() const {
  ensurePolished();
  const QString widest =
      style_.unit == LengthUnit::Inch && (kind_ == FieldKind::Girth || kind_ == FieldKind::Length)
          ? QStringLiteral("+00 7/8")
          : QStringLiteral("+000.0");
  const bool showsUnit = style_.showUnit && kind_ != FieldKind::Count;
  const int text = fontMetrics().horizontalAdvance(
      showsUnit ? withUnit(phrases_, lengthPhrase(style_.unit), widest) : widest);
  QStyleOptionSpinBox option;
  initStyleOption(&option);
  const QSize inner(text + fontMetrics().averageCharWidth(), lineEdit()->sizeHint().height());
  return style()->sizeFromContents(QStyle::CT_SpinBox, &option, inner, this);
}

QAbstractSpinBox::StepEnabled FieldBox::stepEnabled() const {
  if (isReadOnly() || !value_) return StepNone;
  return StepUpEnabled | StepDownEnabled;
}

void FieldBox::stepBy(int steps) {
  if (dirty_) commit();
  if (!value_) return;
  const double step = keyStep(kind_, style_.unit);
  Q_EMIT stepped(ontoGrid(*value_ + steps * step, step));
  selectAll();
}

void FieldBox::commit() {
  if (!dirty_) return;
  const QString text = lineEdit()->text();
  const auto read = readValue(phrases_, kind_, text, style_.unit);
  typed_ = text;
  if (std::exchange(refused_, false)) colour();
  if (read || text.trimmed().isEmpty()) {
    showText();
    if (read)
      Q_EMIT entered(*read);
    else
      Q_EMIT unreadable(text);
    return;
  }
  refuse();
  Q_EMIT unreadable(text);
}

bool FieldBox::event(QEvent* event) {
  // A text field takes Ctrl+Z for itself; while nobody types in it, it belongs to the window.
  if (event->type() == QEvent::ShortcutOverride && !dirty_) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
      event->ignore();
      return false;
    }
  }
  return QAbstractSpinBox::event(event);
}

void FieldBox::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && (dirty_ || refused_)) {
    forgive();
    showText();
    selectAll();
    return;
  }
  QAbstractSpinBox::keyPressEvent(event);
  if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter) return;
  selectAll();
  if (!refused_ && !isReadOnly()) Q_EMIT done();
}

void FieldBox::focusInEvent(QFocusEvent* event) {
  QAbstractSpinBox::focusInEvent(event);
  if (event->reason() != Qt::PopupFocusReason) Q_EMIT focused();
}

void FieldBox::wheelEvent(QWheelEvent* event) {
  if (hasFocus())
    QAbstractSpinBox::wheelEvent(event);
  else
    event->ignore();
}

void FieldBox::changeEvent(QEvent* event) {
  QAbstractSpinBox::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) colour();
}

} // namespace scye
