// How sure a length is, as a bar: from value - reach to value + reach on a scale of 2 cm to either
// side, with marks at 1 cm. A bar within the marks is sure to 1 cm.
#pragma once

#include <QWidget>

namespace scye {

class SwatchBand : public QWidget {
  Q_OBJECT
public:
  explicit SwatchBand(QWidget* parent = nullptr);
  void setReach(double cm);
  [[nodiscard]] double reach() const { return reach_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
  void paintEvent(QPaintEvent* event) override;

private:
  double reach_ = 0;
};

} // namespace scye
