#include "shell/work_area.h"

#include "look/icons.h"

#include <QStackedWidget>
#include <QTabBar>
#include <QToolButton>
#include <QVBoxLayout>

namespace scye {

WorkArea::WorkArea(QWidget* table, QWidget* parent)
    : QSplitter(Qt::Vertical, parent), table_(table), lower_(new QWidget), tabs_(new QTabBar),
      pages_(new QStackedWidget), larger_(new QToolButton) {
  addWidget(table);
  auto* column = new QVBoxLayout(lower_);
  column->setContentsMargins({});
  column->setSpacing(0);
  tabs_->setDocumentMode(true);
  tabs_->setExpanding(false);
  tabs_->setDrawBase(false);
  tabs_->setAccessibleName(tr("What she knits from"));
  larger_->setIcon(icon("enlarge"));
  larger_->setCheckable(true);
  larger_->setAutoRaise(true);
  larger_->setToolTip(tr("The page alone"));
  larger_->setAccessibleName(larger_->toolTip());
  auto* head = new QHBoxLayout;
  head->setContentsMargins({});
  head->addWidget(tabs_, 1);
  head->addWidget(larger_);
  column->addLayout(head);
  column->addWidget(pages_, 1);
  pages_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Ignored); // may be folded away
  addWidget(lower_);
  setCollapsible(indexOf(lower_), false); // its tabs stay
  lower_->hide();
  setStretchFactor(0, 3);
  setStretchFactor(1, 2);
  connect(tabs_, &QTabBar::currentChanged, pages_, &QStackedWidget::setCurrentIndex);
  // A click on the tab of the page that is there folds it away.
  connect(tabs_, &QTabBar::tabBarClicked, this, [this](int index) {
    if (index < 0) return;
    if (index == tabs_->currentIndex() && !isFolded())
      fold();
    else
      showPage(pages_->widget(index));
  });
  connect(larger_, &QToolButton::toggled, this, &WorkArea::setEnlarged);
}

void WorkArea::addPage(const QString& title, QWidget* page) {
  pages_->addWidget(page);
  tabs_->addTab(title);
  tabs_->updateGeometry(); // it does not say so itself while it is hidden
  lower_->show();
}

void WorkArea::showPage(QWidget* page) {
  tabs_->setCurrentIndex(pages_->indexOf(page));
  if (isFolded()) setSizes({height() / 2, height() / 2});
}

bool WorkArea::isFolded() const {
  return pages_->height() < 3 * fontMetrics().height();
}

void WorkArea::fold() {
  setEnlarged(false);
  setSizes({height(), 0});
}

bool WorkArea::takeState(const QByteArray& state) {
  placed_ = restoreState(state);
  return placed_;
}

void WorkArea::resizeEvent(QResizeEvent* event) {
  QSplitter::resizeEvent(event);
  if (lower_->isHidden() || std::exchange(placed_, true)) return;
  constexpr double kDrawing = 0.58; // of the height: the pieces are looked at most
  constexpr int kLeastDrawing = 34; // lines: less leaves no room for their figures
  const int drawing = int(kDrawing * height());
  if (drawing < kLeastDrawing * fontMetrics().height())
    fold();
  else
    setSizes({drawing, height() - drawing});
}

bool WorkArea::isEnlarged() const {
  return table_->isHidden();
}

void WorkArea::setEnlarged(bool enlarge) {
  if (enlarge == isEnlarged()) return;
  table_->setVisible(!enlarge);
  larger_->setChecked(enlarge);
  Q_EMIT enlarged(enlarge);
}

} // namespace scye
