// The picture of the garment worn, and of another beside it: turned with the mouse or the arrow
// keys, nearer and further with the wheel or + and -. Both turn together. The numbers of notches
// are written over it.
#pragma once

#include "worn/worn_engine.h"

#include <QWidget>

namespace scye {

class WornView : public QWidget {
  Q_OBJECT
public:
  explicit WornView(QWidget* parent = nullptr);

  void setFrames(const WornFrame& garment, const WornFrame& beside);
  void setTwo(bool two, const QString& left, const QString& right);
  void setMessage(const QString& text); // where there is no picture
  void setPulls(bool pulls);
  void look(NamedView view);

  [[nodiscard]] const View& turned() const { return turned_; }
  [[nodiscard]] NamedView named() const { return named_; }
  [[nodiscard]] QSize pictureSize() const; // in pixels of the screen
  [[nodiscard]] bool isDark() const;
  // The least in which a garment can be made out; it takes what room there is.
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
  void moved(); // another view or size is wanted
  void looked(scye::NamedView view);

protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  void describe();
  void turn(double degrees, double up);
  void zoom(double by);
  void paintFrame(QPainter& painter, const WornFrame& frame, const QRect& place,
                  const QString& caption) const;
  void paintScale(QPainter& painter) const;

  WornFrame frame_[2];
  bool two_ = false, pulls_ = false;
  QString caption_[2], message_;
  View turned_; // beyond the named view
  NamedView named_ = NamedView::Front;
  QPointF from_;
};

} // namespace scye
