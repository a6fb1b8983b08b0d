// The wearer's name, a menu with kept measurements, and a note when those that are kept differ from
// the design's, with a click to take them over.
#pragma once

#include "panels/panel_context.h"

#include <QWidget>

class QLabel;
class QPushButton;

namespace scye {

class WearerRow : public QWidget {
  Q_OBJECT
public:
  explicit WearerRow(const PanelContext& context, QWidget* parent = nullptr);

private:
  void refresh();

  PanelContext context_;
  QLabel* note_;
  QPushButton* takeOver_;
};

} // namespace scye
