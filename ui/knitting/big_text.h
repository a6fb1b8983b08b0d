// Words as large as their room allows, to be read from two metres: wrapped, and smaller only where
// they would not fit otherwise. It asks for as much height as letters of more than twice the usual
// size take.
#pragma once

#include <QWidget>

namespace scye {

class BigText : public QWidget {
  Q_OBJECT
public:
  explicit BigText(QWidget* parent);

  void setText(const QString& text);
  [[nodiscard]] const QString& text() const { return text_; }
  // How many times as large as the widget's font its letters are in the room it has; 0: not even
  // those of the font itself have room.
  [[nodiscard]] double times() const;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  void askForRoom();
  [[nodiscard]] QRect needed(double times, const QRect& in) const;

  QString text_;
};

} // namespace scye
