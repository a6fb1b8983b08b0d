// How the garment is to sit: the fit that the present bust ease makes, and the published ease of
// another one with a choice. The ranges allow for the fabric's thickness.
#pragma once

#include "panels/panel_context.h"
#include "values/choice_box.h"

namespace scye {

class EaseFit : public ChoiceBox {
  Q_OBJECT
public:
  explicit EaseFit(const PanelContext& context, QWidget* parent = nullptr);

private:
  void choose(int fit);
  void refresh();

  PanelContext context_;
};

} // namespace scye
