#include "shell/workbench.h"

#include "canvas/drawing_table.h"
#include "fit/answers.h"
#include "panels/edit_panel.h"
#include "shell/export_strip.h"
#include "shell/work_area.h"

#include <QVBoxLayout>

namespace scye {
namespace {

constexpr int kLeastMiddle = 64; // letters: pieces two by two with their figures

} // namespace

Workbench::Workbench(const PanelContext& context, QWidget* parent)
    : QSplitter(Qt::Horizontal, parent),
      table_(new DrawingTable(context.document, context.attention, context.settings)),
      panel_(new EditPanel(context)), exports_(new ExportStrip(context.document, context.settings)),
      knitFiles_(new KnitFiles(context.document, context.settings, this)) {
  auto* drawing = new QWidget;
  auto* column = new QVBoxLayout(drawing);
  column->setContentsMargins({});
  column->setSpacing(0);
  column->addWidget(table_, 1);
  column->addWidget(exports_);
  area_ = new WorkArea(drawing);
  pages_ =
      std::make_unique<KnitPages>(context.document, context.attention, context.settings, *area_);

  addWidget(panel_);
  addWidget(area_);
  answers_ = new Answers(context.document, context.attention, context.settings);
  addWidget(answers_);
  setStretchFactor(0, 0);
  setStretchFactor(1, 3);
  setStretchFactor(2, 1);
  setChildrenCollapsible(false);
}

bool Workbench::takeState(const QByteArray& state) {
  placed_ = restoreState(state);
  return placed_;
}

void Workbench::setAnswersShown(bool shown) {
  if (shown != answers_->isHidden()) return;
  answers_->setVisible(shown);
  Q_EMIT answersShown(shown);
}

void Workbench::resizeEvent(QResizeEvent* event) {
  QSplitter::resizeEvent(event);
  const int left = panel_->sizeHint().width(), right = answers_->minimumSizeHint().width();
  const int middle = width() - left - right - 2 * handleWidth();
  if (const bool narrow = middle < kLeastMiddle * fontMetrics().averageCharWidth();
      narrow != std::exchange(narrow_, narrow))
    setAnswersShown(!narrow);
  if (std::exchange(placed_, true)) return;
  const int wide = std::max(right, width() / 4);
  setSizes({left, std::max(1, width() - left - wide), wide});
}

} // namespace scye
