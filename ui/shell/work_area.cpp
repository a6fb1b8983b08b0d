#include "shell/work_area.h"

#include "look/icons.h"

#include <QEvent>
#include <QSignalBlocker>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabBar>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace scye {
namespace {

constexpr double kDrawing = 0.36; // of the room, beside a page
constexpr int kBeside = 100;      // letters: with less the drawing stands above the page
constexpr int kLeastPage = 12;    // lines: with less room for a page it stands alone
constexpr int kNone = -1;         // of the pages

} // namespace

WorkArea::WorkArea(QWidget* drawing, QWidget* parent)
    : QWidget(parent), drawing_(drawing), parts_(new QSplitter(Qt::Horizontal)), head_(new QWidget),
      tabs_(new QTabBar), larger_(new QToolButton), pages_(new QStackedWidget) {
  std::ranges::fill(chosen_, kNone);
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

int WorkArea::addPage(Stage stage, const QString& title, MakePage make) {
  const int number = int(all_.size());
  all_.append({stage, title, std::move(make), nullptr});
  int& chosen = chosen_[int(stage)];
  if (chosen == kNone && stage != Stage::Drafting) chosen = number;
  if (stage == stage_) fillTabs();
  return number;
}

QWidget* WorkArea::madePage(int number) {
  Page& page = all_[number];
  if (!page.widget) {
    page.widget = page.make();
    pages_->addWidget(page.widget);
  }
  return page.widget;
}

void WorkArea::fillTabs() {
  const QSignalBlocker quiet(tabs_);
  while (tabs_->count() > 0)
    tabs_->removeTab(0);
  const auto add = [this](const QString& title, int page) {
    const int tab = tabs_->addTab(title);
    tabs_->setTabData(tab, page);
    if (page == chosen_[int(stage_)]) tabs_->setCurrentIndex(tab);
  };
  if (stage_ == Stage::Drafting) add(tr("Pieces"), kNone);
  for (int number = 0; number < all_.size(); ++number)
    if (all_[number].stage == stage_) add(all_[number].title, number);
  tabs_->updateGeometry(); // it does not say so itself while it is hidden
  showChosen();
}

void WorkArea::choose(int tab) {
  chosen_[int(stage_)] = tab < 0 ? kNone : tabs_->tabData(tab).toInt();
  showChosen();
}

void WorkArea::showChosen() {
  const int chosen = chosen_[int(stage_)];
  const bool any = chosen != kNone;
  head_->setVisible(any || tabs_->count() > 1);
  larger_->setVisible(any);
  if (any) pages_->setCurrentWidget(madePage(chosen));
  pages_->setVisible(any);
  if (!any) enlarge(false);
  drawing_->setVisible(!any || !larger_->isChecked());
  makeRoom();
}

QWidget* WorkArea::page() const {
  const int chosen = chosen_[int(stage_)];
  return chosen == kNone ? nullptr : all_[chosen].widget;
}

void WorkArea::setStage(Stage stage) {
  if (stage == stage_) return;
  stage_ = stage;
  fillTabs();
  Q_EMIT stageChanged();
}

void WorkArea::showPage(QWidget* page) {
  for (int number = 0; number < all_.size(); ++number)
    if (const Page& p = all_[number]; p.widget == page) {
      chosen_[int(p.stage)] = number;
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

// Of a page squeezed below the drawing, as large letters in a small window do, nothing could be
// seen.
bool WorkArea::isCrowded() const {
  const int rest = height() - head_->sizeHint().height() - drawing_->minimumSizeHint().height();
  return page() && parts_->orientation() == Qt::Vertical &&
         rest < kLeastPage * fontMetrics().lineSpacing();
}

void WorkArea::makeRoom() {
  if (!page()) return;
  if (!isCrowded()) {
    bothAsked_ = false;
    if (std::exchange(byItself_, false)) enlarge(false);
  } else if (!bothAsked_ && !isEnlarged()) {
    enlarge(true);
    byItself_ = true;
  }
}

void WorkArea::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  divide();
  makeRoom();
}

void WorkArea::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::FontChange) return;
  divide();
  makeRoom();
}

bool WorkArea::isEnlarged() const {
  return drawing_->isHidden();
}

void WorkArea::setEnlarged(bool alone) {
  byItself_ = false;
  bothAsked_ = !alone && isCrowded();
  enlarge(alone);
}

void WorkArea::enlarge(bool alone) {
  const bool now = alone && page();
  const QSignalBlocker quiet(larger_);
  larger_->setChecked(now);
  if (now == isEnlarged()) return;
  drawing_->setVisible(!now);
  Q_EMIT enlarged(now);
}

} // namespace scye
