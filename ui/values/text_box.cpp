#include "values/text_box.h"

#include <QKeyEvent>

namespace scye {

namespace {

constexpr int kTellMs = 400;

} // namespace

TextBox::TextBox(QWidget* parent) : QLineEdit(parent) {
  pause_.setSingleShot(true);
  pause_.setInterval(kTellMs);
  connect(this, &QLineEdit::textEdited, this, [this] {
    if (!pause_.isActive()) pause_.start();
  });
  connect(&pause_, &QTimer::timeout, this, [this] {
    if (isModified()) Q_EMIT entered(text());
  });
  connect(this, &QLineEdit::editingFinished, this, [this] {
    if (!isModified()) return;
    setModified(false);
    Q_EMIT entered(text());
  });
}

void TextBox::showText(const QString& shown) {
  if (!isModified() && text() != shown) setText(shown);
}

void TextBox::focusInEvent(QFocusEvent* event) {
  QLineEdit::focusInEvent(event);
  Q_EMIT visited();
}

bool TextBox::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && !isModified()) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
      event->ignore();
      return false;
    }
  }
  return QLineEdit::event(event);
}

} // namespace scye
