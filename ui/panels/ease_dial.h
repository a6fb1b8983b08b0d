// One ease in the hand: its name, the figure to type over, the slider, and under it the marks of
// what is usual. Where it is the value worked out, it says so and cannot be moved. A refused figure
// is told in place of the marks until it is put right.
#pragma once

#include "panels/panel_context.h"

#include <QWidget>

class QLabel;

namespace scye {

class FieldBox;
class FieldSlider;

class EaseDial : public QWidget {
  Q_OBJECT
public:
  EaseDial(const PanelContext& context, Field ease, const QString& name, QWidget* parent = nullptr);

  [[nodiscard]] FieldSlider* slider() const { return slider_; }
  [[nodiscard]] FieldBox* box() const { return box_; }

private:
  void enter(double value, int run);
  void refresh();
  void say(const QString& refusal);

  class Scale;
  PanelContext context_;
  Field ease_;
  int run_ = 0;
  QLabel* name_;
  FieldBox* box_;
  FieldSlider* slider_;
  Scale* scale_;
};

} // namespace scye
