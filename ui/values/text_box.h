// A line of free text. It is told when the typing is done, and when it pauses or has gone on for a
// while: what is typed must not be lost. Ctrl+Z is the window's while nothing has been typed.
#pragma once

#include <QLineEdit>
#include <QTimer>

namespace scye {

class TextBox : public QLineEdit {
  Q_OBJECT
public:
  explicit TextBox(QWidget* parent = nullptr);
  void showText(const QString& text);

Q_SIGNALS:
  void entered(const QString& text);
  void visited(); // the keyboard has come

protected:
  bool event(QEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;

private:
  QTimer pause_;
};

} // namespace scye
