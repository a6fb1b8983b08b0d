#include "knitting/knit_page.h"

#include <QResizeEvent>

namespace scye {

KnitPage::KnitPage(Document& document, Settings& settings, QWidget* parent)
    : QWidget(parent), document_(document), settings_(settings) {
  connect(&document_, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived) refreshSoon();
  });
  connect(&settings_, &Settings::changed, this, &KnitPage::refreshSoon);
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
