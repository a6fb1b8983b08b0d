#include "values/text_box.h"

#include <QKeyEvent>

namespace scye {

TextBox::TextBox(QWidget* parent) : QLineEdit(parent) {
  connect(this, &QLineEdit::editingFinished, this, [this] {
    if (!isModified()) return;
    setModified(false);
    Q_EMIT entered(text());
  });
}

void TextBox::showText(const QString& shown) {
  if (!isModified() && text() != shown) setText(shown);
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
