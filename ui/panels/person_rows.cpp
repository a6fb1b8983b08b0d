#include "panels/person_rows.h"

#include "values/text_box.h"

#include <QCoreApplication>
#include <QKeyEvent>
#include <QPlainTextEdit>

namespace scye {
namespace {

struct RowText {
  Q_DECLARE_TR_FUNCTIONS(PersonRows)
};

// Free text, in the design as it is typed; what is typed in one visit is one undo step.
class NotesBox : public QPlainTextEdit {
public:
  explicit NotesBox(Document& document) : document_(document) {
    setAccessibleName(RowText::tr("Notes"));
    setPlaceholderText(RowText::tr("Yarn, needles, what to think of next time"));
    setTabChangesFocus(true);
    show_();
    connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
      if (event.design) show_();
    });
    connect(this, &QPlainTextEdit::textChanged, this, &NotesBox::take);
  }

protected:
  bool event(QEvent* event) override {
    if (event->type() == QEvent::ShortcutOverride && !QPlainTextEdit::document()->isModified()) {
      const auto* key = static_cast<QKeyEvent*>(event);
      if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
        event->ignore();
        return false;
      }
    }
    return QPlainTextEdit::event(event);
  }
  void focusInEvent(QFocusEvent* event) override {
    QPlainTextEdit::focusInEvent(event);
    run_ = document_.newRun();
  }
  void focusOutEvent(QFocusEvent* event) override {
    QPlainTextEdit::focusOutEvent(event);
    QPlainTextEdit::document()->setModified(false);
  }

private:
  void take() {
    if (showing_) return;
    Design next = document_.design();
    next.notes = toPlainText().toStdString();
    document_.edit(accessibleName(), next, run_);
  }
  void show_() {
    const QString text = QString::fromStdString(document_.design().notes);
    if (text == toPlainText()) return;
    showing_ = true;
    setPlainText(text);
    showing_ = false;
  }
  int run_ = 0;
  bool showing_ = false;
  Document& document_;
};

} // namespace

QWidget* makeTextBox(const PanelContext& context, const QString& name,
                     std::string Design::*member) {
  auto* box = new TextBox;
  box->setAccessibleName(name);
  Document& document = context.document;
  const auto show = [box, member, &document] {
    box->showText(QString::fromStdString(document.design().*member));
  };
  show();
  // What is typed in one visit is one undo step.
  const auto run = std::make_shared<int>(0);
  QObject::connect(box, &TextBox::visited, box, [&document, run] { *run = document.newRun(); });
  QObject::connect(box, &TextBox::entered, box,
                   [&document, member, name, run](const QString& text) {
                     Design next = document.design();
                     next.*member = text.trimmed().toStdString();
                     document.edit(name, next, *run);
                   });
  QObject::connect(&document, &Document::changed, box, [show](const Document::Event& event) {
    if (event.design) show();
  });
  return box;
}

QWidget* makeNotes(const PanelContext& context) {
  auto* notes = new NotesBox(context.document);
  notes->setFixedHeight(6 * notes->fontMetrics().lineSpacing());
  return notes;
}

} // namespace scye
