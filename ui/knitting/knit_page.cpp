#include "knitting/knit_page.h"

#include <QResizeEvent>
#include <QScrollArea>
#include <QVBoxLayout>

namespace scye {

KnitPage::KnitPage(Document& document, Settings& settings, QWidget* parent)
    : QWidget(parent), document_(document), settings_(settings) {
  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived) refreshSoon();
  });
  connect(&settings_, &Settings::changed, this, &KnitPage::refreshSoon);
}

QVBoxLayout* KnitPage::scrolledColumn() {
  const int gap = fontMetrics().averageCharWidth();
  auto* inside = new QWidget;
  auto* column = new QVBoxLayout(inside);
  column->setContentsMargins(2 * gap, gap, 2 * gap, gap);
  auto* scroll = new QScrollArea(this);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setWidget(inside);
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins({});
  all->addWidget(scroll);
  return column;
}

void KnitPage::refreshWithWork() {
  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.work) refreshSoon();
  });
}

void KnitPage::refreshSoon() {
  // The line above the page can be drawn down until nothing of it is left.
  due_ = !isVisible() || height() < fontMetrics().height();
  if (!due_) refresh();
}

void KnitPage::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (due_) refreshSoon();
}

void KnitPage::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  if (due_) refreshSoon();
}

} // namespace scye
