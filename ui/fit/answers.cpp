#include "fit/answers.h"

#include "fit/findings_panel.h"
#include "fit/fit_panel.h"

#include <utility>

namespace scye {
namespace {

// Of the height, for the findings: also when there are none, and when the comparison needs more
// than is left.
constexpr double kLeastShare = 0.14, kSureShare = 0.18;

} // namespace

Answers::Answers(Document& document, Attention& attention, Settings& settings, QWidget* parent)
    : QWidget(parent), fit_(new FitPanel(document, settings, this)),
      findings_(new FindingsPanel(document, attention, settings, this)) {
  // After the panels have heard of it: they were connected first.
  connect(&document, &Document::changed, this, [this, &document](const Document::Event& event) {
    if (!event.remedies || document.inGesture()) return;
    arrangeLater_ = underMouse(); // nothing moves under the pointer
    if (!arrangeLater_) arrange();
  });
  connect(&settings, &Settings::changed, this, &Answers::arrange);
}

void Answers::arrange() {
  const int wanted = findings_->heightWanted(width());
  const int left = height() - fit_->leastHeight(width());
  const int least = std::min(int(kLeastShare * height()), std::max(left, wanted));
  const int below = std::clamp(wanted, least, std::max(int(kSureShare * height()), left));
  fit_->setGeometry(0, 0, width(), height() - below);
  findings_->setGeometry(0, height() - below, width(), below);
}

void Answers::leaveEvent(QEvent* event) {
  QWidget::leaveEvent(event);
  if (std::exchange(arrangeLater_, false)) arrange();
}

void Answers::resizeEvent(QResizeEvent*) {
  arrange();
}

QSize Answers::sizeHint() const {
  const int em = fontMetrics().averageCharWidth();
  return {42 * em, 100 * em};
}
QSize Answers::minimumSizeHint() const {
  const int em = fontMetrics().averageCharWidth();
  return {std::max(40 * em, fit_->minimumSizeHint().width()),
          fit_->minimumSizeHint().height() + 10 * em};
}

} // namespace scye
