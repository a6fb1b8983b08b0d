// How far down the sleeve reaches, by the names that sleeves have; chosen, it sets the length.
#pragma once

#include "panels/panel_context.h"
#include "values/choice_box.h"

namespace scye {

class SleeveReach : public ChoiceBox {
  Q_OBJECT
public:
  explicit SleeveReach(const PanelContext& context, QWidget* parent = nullptr);

private:
  void choose(int reach);
  void refresh();

  PanelContext context_;
};

} // namespace scye
