// A slider over a field of the design: it spans what is usual round the value, lights on the
// drawing what it changes, and is one undo step from press to release. A double click goes back to
// what would be filled in. A value that is worked out cannot be moved.
#pragma once

#include "panels/panel_context.h"
#include "values/value_slider.h"

namespace scye {

class FieldSlider : public ValueSlider {
  Q_OBJECT
public:
  explicit FieldSlider(const PanelContext& context, QWidget* parent = nullptr);

  void setField(Field field); // takes hold of another value
  [[nodiscard]] Field field() const { return field_; }
  void refresh();
  [[nodiscard]] QString lowText() const;
  [[nodiscard]] QString highText() const;

Q_SIGNALS:
  void spanned(); // its ends are other ones

private:
  void setOwnSpan();
  void move(double value);
  [[nodiscard]] double shown() const;

  PanelContext context_;
  Field field_ = Field::Bust;
  int run_ = 0;
  int step_ = 0; // of the history, that the last press made; 0: none
};

} // namespace scye
