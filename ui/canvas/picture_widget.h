// A picture that fills its widget and follows its size, with letters of the widget's font. For
// pictures that are only looked at; the pieces have the drawing table.
#pragma once

#include "canvas/picture_fit.h"

#include <QWidget>

namespace scye {

class PictureWidget : public QWidget {
  Q_OBJECT
public:
  // Of the layouts (groups in a row) the one that shows the picture largest is taken.
  using Make = std::function<Picture(double textHeight, int perRow)>;

  PictureWidget(Make make, QList<int> layouts, QWidget* parent = nullptr);
  void refresh(); // once, before it is next looked at
  [[nodiscard]] const Picture& picture() {
    settle();
    return fitted_.picture;
  }
  [[nodiscard]] const PictureView& view() {
    settle();
    return fitted_.view;
  }

  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  [[nodiscard]] bool stays();
  void settle();

  Make make_;
  FittedPicture fitted_;
  QList<int> layouts_;
  int perRow_ = 0;
  QSizeF room_;
  bool waits_ = false;
};

} // namespace scye
