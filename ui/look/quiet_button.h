// A button that is only its text, with a frame when it is pointed at or has the keyboard: for
// things that can be pressed but should not call out.
#pragma once

#include <QAbstractButton>

namespace scye {

class QuietButton : public QAbstractButton {
  Q_OBJECT
public:
  enum class Looks {
    Aside,   // paler text: where a value came from
    Heading, // bold, over a hairline, with a sign that tells open from closed
    Link,    // plain text with a sign: rarer things to open
  };
  explicit QuietButton(Looks looks, QWidget* parent = nullptr);

  // A sign in place of the text, where that has no room.
  void setSign(const QString& sign);

  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

protected:
  void paintEvent(QPaintEvent* event) override;
  void enterEvent(QEnterEvent* event) override;
  void leaveEvent(QEvent* event) override;

private:
  [[nodiscard]] QFont textFont() const;
  [[nodiscard]] QSize sizeFor(const QString& shown) const;
  [[nodiscard]] int signSize() const;
  [[nodiscard]] int gap() const;

  Looks looks_;
  QString sign_;
};

} // namespace scye
