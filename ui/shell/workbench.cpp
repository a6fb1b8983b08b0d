#include "shell/workbench.h"

#include "canvas/drawing_table.h"
#include "fit/answers.h"
#include "panels/ease_dial.h"
#include "panels/ease_strip.h"
#include "panels/edit_panel.h"
#include "panels/field_slider.h"
#include "shell/export_strip.h"
#include "shell/work_area.h"
#include "values/field_box.h"

#include <QEvent>
#include <QSplitter>
#include <QVBoxLayout>

namespace scye {
namespace {

constexpr int kLeastMiddle = 84; // letters: pieces two by two with their figures
constexpr int kPanel = 50;       // letters: name, three figures, source

} // namespace

Workbench::Workbench(const PanelContext& context, QWidget* parent)
    : QWidget(parent), parts_(new QSplitter(Qt::Horizontal)),
      table_(new DrawingTable(context.document, context.attention, context.settings)),
      panel_(new EditPanel(context)), ease_(new EaseStrip(context)),
      exports_(new ExportStrip(context.document, context.settings)),
      knitFiles_(new KnitFiles(context.document, context.settings, this)) {
  area_ = new WorkArea(table_);
  pages_ = std::make_unique<KnitPages>(context.document, context.attention, context.settings,
                                       *area_, *knitFiles_);
  auto* middle = new QWidget;
  auto* below = new QVBoxLayout(middle);
  below->setContentsMargins({});
  below->setSpacing(0);
  below->addWidget(area_, 1);
  below->addWidget(ease_);

  parts_->addWidget(panel_);
  parts_->addWidget(middle);
  answers_ = new Answers(context.document, context.attention, context.settings);
  parts_->addWidget(answers_);
  parts_->setStretchFactor(0, 0);
  parts_->setStretchFactor(1, 1);
  parts_->setStretchFactor(2, 0);
  parts_->setChildrenCollapsible(false);

  // Below everything, so that it is there in every stage.
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins({});
  column->setSpacing(0);
  column->addWidget(parts_, 1);
  column->addWidget(exports_);

  // From the drawing it is one step to the first slider.
  QWidget* before = table_;
  for (EaseDial* dial : ease_->dials()) {
    QWidget::setTabOrder(before, dial->slider());
    QWidget::setTabOrder(dial->slider(), dial->box());
    before = dial->box();
  }

  connect(area_, &WorkArea::stageChanged, this, &Workbench::takeStage);
  // A value that is asked for is set while drafting.
  connect(&context.attention, &Attention::asked, this, [this] { setStage(Stage::Drafting); });
}

void Workbench::setStage(Stage stage) {
  area_->setStage(stage);
}

void Workbench::takeStage() {
  const bool drafting = area_->stage() == Stage::Drafting;
  panel_->setVisible(drafting);
  ease_->setVisible(drafting);
  table_->setHandlesOffered(drafting);
  Q_EMIT stageShown(area_->stage());
}

void Workbench::goToNextPart(int by) {
  const QList<QWidget*> all{panel_, table_, area_->page(), ease_, answers_};
  QList<QWidget*> parts;
  for (QWidget* part : all)
    if (part && part->isVisible()) parts.append(part);
  if (parts.isEmpty()) return;
  QWidget* focus = window()->focusWidget();
  qsizetype at = by > 0 ? -1 : 0;
  for (qsizetype i = 0; i < parts.size(); ++i)
    if (parts[i] == focus || parts[i]->isAncestorOf(focus)) at = i;
  QWidget* part = parts[(at + by + parts.size()) % parts.size()];
  QWidget* first = part;
  const auto takes = [](const QWidget* w) {
    return (w->focusPolicy() & Qt::TabFocus) && w->isVisible() && w->isEnabled();
  };
  if (!takes(part))
    for (QWidget* w = part->nextInFocusChain(); w != part; w = w->nextInFocusChain())
      if (part->isAncestorOf(w) && takes(w)) {
        first = w;
        break;
      }
  first->setFocus(Qt::TabFocusReason);
}

QByteArray Workbench::saveState() const {
  return parts_->saveState();
}

bool Workbench::takeState(const QByteArray& state) {
  placed_ = parts_->restoreState(state);
  return placed_;
}

void Workbench::setAnswersShown(bool shown) {
  if (shown != answers_->isHidden()) return;
  answers_->setVisible(shown);
  Q_EMIT answersShown(shown);
}

void Workbench::divide() {
  const int left = panel_->sizeHint().width(), right = answers_->sizeHint().width();
  parts_->setSizes({left, std::max(1, width() - left - right), right});
}

// What there is no room for makes room, until it is asked for.
void Workbench::makeRoom() {
  // Not by what the measurements ask for: they are not all there when the window is first laid out.
  const int em = fontMetrics().averageCharWidth();
  const int left = kPanel * em, right = answers_->minimumSizeHint().width();
  const int middle = width() - left - right - 2 * parts_->handleWidth();
  if (const bool narrow = middle < kLeastMiddle * em; narrow != std::exchange(narrow_, narrow))
    setAnswersShown(!narrow);
}

void Workbench::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  makeRoom();
  if (!std::exchange(placed_, true)) divide();
}

void Workbench::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) makeRoom();
}

} // namespace scye
