// A slider over one value. A press anywhere on it takes hold at that place; from press to release
// is one gesture, which Escape gives up. Arrow keys step; a double click asks for the start value.
#pragma once

#include "values/value_text.h"

#include <QSlider>

#include <optional>

namespace scye {

class ValueSlider : public QSlider {
  Q_OBJECT
public:
  explicit ValueSlider(QWidget* parent = nullptr);

  // Both ends are put on the grid of `step`. Has no effect while the slider is held.
  void setSpan(double low, double high, double step);
  void showValue(double value); // says nothing; ignored while held
  // A band with a tick at either end, under the groove: where the value is likely to lie.
  void setLikely(std::optional<std::pair<double, double>> range);

  [[nodiscard]] double low() const { return step_ * minimum(); }
  [[nodiscard]] double high() const { return step_ * maximum(); }
  [[nodiscard]] double placeOf(double value) const; // px from the left

Q_SIGNALS:
  void taken();
  void moved(double value); // while held, or by a key
  void letGo();
  void gaveUp();
  void pressedTwice(); // before it
  void startWanted();
  void focusChanged(bool has);

protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void hideEvent(QHideEvent* event) override;

private:
  void giveUp();

  std::optional<std::pair<double, double>> likely_;
  double step_ = 0.1;
  bool held_ = false;
  int pressX_ = 0, pressValue_ = 0;
};

} // namespace scye
