// A picture that fills its widget and follows its size, with letters of the widget's font. For pictures
// that are only looked at; the pieces have the drawing table.
#pragma once

#include "canvas/picture_fit.h"

#include <QWidget>

namespace scye {

class PictureWidget : public QWidget {
  Q_OBJECT
public:
  using Make = std::function<Picture(double textHeight)>;

  explicit PictureWidget(Make make, QWidget* parent = nullptr);
  // Height to width of its size hint.
  void setShape(double heightToWidth);
  void refresh();
  [[nodiscard]] const Picture& picture() const { return fitted_.picture; }

  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override { return int(width * shape_); }

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  Make make_;
  FittedPicture fitted_;
  double shape_ = 0.75;
};

} // namespace scye
