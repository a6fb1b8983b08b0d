// The three parts of the work side by side: what she says, the drawing table, what the design answers.
#pragma once

#include "panels/panel_context.h"

#include <QSplitter>

namespace scye {

class DrawingTable;
class EditPanel;
class ExportStrip;
class WorkArea;

class Workbench : public QSplitter {
  Q_OBJECT
public:
  explicit Workbench(const PanelContext& context, QWidget* parent = nullptr);

  [[nodiscard]] DrawingTable& table() const { return *table_; }
  [[nodiscard]] EditPanel& panel() const { return *panel_; }
  [[nodiscard]] ExportStrip& exports() const { return *exports_; }
  [[nodiscard]] WorkArea& area() const { return *area_; }

private:
  DrawingTable* table_;
  EditPanel* panel_;
  ExportStrip* exports_;
  WorkArea* area_;
};

} // namespace scye
