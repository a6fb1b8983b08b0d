// One line of a panel for a thing to choose between.
#pragma once

#include "panels/field_row.h"

class QComboBox;

namespace scye {

class ChoiceRow : public QObject {
  Q_OBJECT
public:
  ChoiceRow(const PanelContext& context, QGridLayout* grid, Choice choice, QObject* parent);
  void refresh();

private:
  PanelContext context_;
  Choice choice_;
  QLabel* name_;
  QComboBox* box_;
};

} // namespace scye
