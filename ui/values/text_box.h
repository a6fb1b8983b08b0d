// A line of free text that becomes one undo step when she is done with it, and leaves Ctrl+Z to the
// window while nothing has been typed.
#pragma once

#include <QLineEdit>

namespace scye {

class TextBox : public QLineEdit {
  Q_OBJECT
public:
  explicit TextBox(QWidget* parent = nullptr);
  void showText(const QString& text);

Q_SIGNALS:
  void entered(const QString& text);

protected:
  bool event(QEvent* event) override;
};

} // namespace scye
