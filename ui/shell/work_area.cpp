#include "shell/work_area.h"

#include "look/icons.h"

#include <QSignalBlocker>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabBar>
#include <QToolButton>
#include <QVBoxLayout>

namespace scye {
namespace {

constexpr double kDrawing = 0.36; // of the room, beside a page
constexpr int kBeside = 100;      // letters: with less the drawing stands above the page

} // namespace

WorkArea::WorkArea(QWidget* drawing, QWidget* parent)
    : QWidget(parent), drawing_(drawing), parts_(new QSplitter(Qt::Horizontal)), head_(new QWidget),
      tabs_(new QTabBar), larger_(new QToolButton), pages_(new QStackedWidget) {
  tabs_->setDocumentMode(true);
  tabs_->setExpanding(false);
  tabs_->setDrawBase(false);
  tabs_->setAccessibleName(tr("Pages"));
  larger_->setIcon(icon("enlarge"));
  larger_->setCheckable(true);
  larger_->setAutoRaise(true);
  larger_->setToolTip(tr("The page alone"));
  larger_->setAccessibleName(larger_->toolTip());
  auto* row = new QHBoxLayout(head_);
  row->setContentsMargins({});
  row->addWidget(tabs_, 1);
  row->addWidget(larger_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins({});
  column->setSpacing(0);
  column->addWidget(head_);
  column->addWidget(parts_, 1);
  parts_->addWidget(drawing_);
  parts_->addWidget(pages_);
  parts_->setChildrenCollapsible(false);
  pages_->setMinimumSize(1, 1); // pages scroll
  pages_->hide();
  head_->hide();
  connect(tabs_, &QTabBar::currentChanged, this, &WorkArea::choose);
  connect(larger_, &QToolButton::toggled, this, &WorkArea::setEnlarged);
}

void WorkArea::addPage(Stage stage, const QString& title, QWidget* page) {
  all_.append({stage, title, page});
  pages_->addWidget(page);
  QWidget*& chosen = chosen_[int(stage)];
  if (!chosen && stage != Stage::Drafting) chosen = page;
  if (stage == stage_) fillTabs();
}

void WorkArea::fillTabs() {
  const QSignalBlocker quiet(tabs_);
  while (tabs_->count() > 0)
    tabs_->removeTab(0);
  if (stage_ == Stage::Drafting) tabs_->addTab(tr("Pieces"));
  for (const Page& page : all_)
    if (page.stage == stage_) {
      const int tab = tabs_->addTab(page.title);
      tabs_->setTabData(tab, QVariant::fromValue(page.widget));
      if (page.widget == chosen_[int(stage_)]) tabs_->setCurrentIndex(tab);
    }
  tabs_->updateGeometry(); // it does not say so itself while it is hidden
  showChosen();
}

void WorkArea::choose(int tab) {
  chosen_[int(stage_)] = tab < 0 ? nullptr : tabs_->tabData(tab).value<QWidget*>();
  showChosen();
}

void WorkArea::showChosen() {
  QWidget* chosen = page();
  head_->setVisible(chosen || tabs_->count() > 1);
  larger_->setVisible(chosen);
  if (chosen) pages_->setCurrentWidget(chosen);
  pages_->setVisible(chosen);
  if (!chosen) setEnlarged(false);
  drawing_->setVisible(!chosen || !larger_->isChecked());
}

QWidget* WorkArea::page() const {
  return chosen_[int(stage_)];
}

void WorkArea::setStage(Stage stage) {
  if (stage == stage_) return;
  stage_ = stage;
  fillTabs();
  Q_EMIT stageChanged();
}

void WorkArea::showPage(QWidget* page) {
  for (const Page& p : all_)
    if (p.widget == page) {
      chosen_[int(p.stage)] = page;
      if (p.stage == stage_)
        fillTabs();
      else
        setStage(p.stage);
    }
}

QByteArray WorkArea::saveState() const {
  return parts_->saveState();
}

bool WorkArea::takeState(const QByteArray& state) {
  placed_ = parts_->restoreState(state);
  return placed_;
}

void WorkArea::divide() {
  const bool beside = width() >= kBeside * fontMetrics().averageCharWidth();
  const Qt::Orientation way = beside ? Qt::Horizontal : Qt::Vertical;
  const bool turned = parts_->orientation() != way;
  parts_->setOrientation(way);
  if (std::exchange(placed_, true) && !turned) return;
  const int all = beside ? width() : height(), drawing = int(kDrawing * all);
  parts_->setSizes({drawing, all - drawing});
}

void WorkArea::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  divide();
}

bool WorkArea::isEnlarged() const {
  return drawing_->isHidden();
}

void WorkArea::setEnlarged(bool enlarge) {
  const bool now = enlarge && page();
  larger_->setChecked(now);
  if (now == isEnlarged()) return;
  drawing_->setVisible(!now);
  Q_EMIT enlarged(now);
}

} // namespace scye
