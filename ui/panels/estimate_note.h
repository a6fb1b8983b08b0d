// What has to be said once about all that was filled in: that children's values come from tables
// only, that a body lies beyond those the survey measured. Hidden when there is nothing to say.
#pragma once

#include "panels/panel_context.h"

#include <QLabel>

namespace scye {

class EstimateNote : public QLabel {
  Q_OBJECT
public:
  explicit EstimateNote(const PanelContext& context, QWidget* parent = nullptr);

private:
  void refresh();

  PanelContext context_;
};

} // namespace scye
