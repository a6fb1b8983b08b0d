#include "shell/workbench.h"

#include "canvas/drawing_table.h"
#include "fit/findings_panel.h"
#include "fit/fit_panel.h"
#include "panels/edit_panel.h"
#include "shell/export_strip.h"
#include "shell/work_area.h"

#include <QVBoxLayout>

namespace scye {

Workbench::Workbench(const PanelContext& context, QWidget* parent)
    : QSplitter(Qt::Horizontal, parent),
      table_(new DrawingTable(context.document, context.attention, context.settings)),
      panel_(new EditPanel(context)), exports_(new ExportStrip(context.document, context.settings)) {
  auto* drawing = new QWidget;
  auto* column = new QVBoxLayout(drawing);
  column->setContentsMargins({});
  column->setSpacing(0);
  column->addWidget(table_, 1);
  column->addWidget(exports_);
  area_ = new WorkArea(drawing);

  auto* answers = new QSplitter(Qt::Vertical);
  answers->addWidget(new FitPanel(context.document, context.settings));
  answers->addWidget(new FindingsPanel(context.document, context.attention, context.settings));
  answers->setStretchFactor(0, 3);
  answers->setStretchFactor(1, 2);
  answers->setObjectName(QStringLiteral("answers"));

  addWidget(panel_);
  addWidget(area_);
  addWidget(answers);
  setStretchFactor(0, 0);
  setStretchFactor(1, 1);
  setStretchFactor(2, 0);
  setChildrenCollapsible(false);
  const int em = fontMetrics().averageCharWidth();
  setSizes({panel_->sizeHint().width(), 120 * em, 46 * em});
}

} // namespace scye
