// Words as large as their room allows, to be read from two metres: wrapped, and smaller only where
// they would not fit otherwise.
#pragma once

#include <QWidget>

namespace scye {

class BigText : public QWidget {
  Q_OBJECT
public:
  explicit BigText(QWidget* parent);

  void setText(const QString& text);
  [[nodiscard]] const QString& text() const { return text_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

protected:
  void paintEvent(QPaintEvent* event) override;

private:
  QString text_;
};

} // namespace scye
