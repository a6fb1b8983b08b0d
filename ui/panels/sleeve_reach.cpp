#include "panels/sleeve_reach.h"

#include <cmath>
#include <iterator>

namespace scye {
namespace {

// Of the way from the underarm to the wrist: what a choice sets, and where the next name begins
// (common practice). The last is as long as the arm.
struct Reach {
  double share, end;
};
constexpr Reach kReaches[] = {{0.07, 0.12}, {0.3, 0.42}, {0.55, 0.66}, {0.78, 0.9}, {1, 1e9}};

} // namespace

SleeveReach::SleeveReach(const PanelContext& context, QWidget* parent)
    : ChoiceBox(parent), context_(context) {
  setAccessibleName(tr("The sleeve is"));
  addItems({tr("a cap sleeve"), tr("short"), tr("to the elbow"), tr("three-quarter"), tr("long")});
  connect(this, &QComboBox::activated, this, &SleeveReach::choose);
  connect(&context_.document, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived) refresh();
  });
  refresh();
}

void SleeveReach::choose(int reach) {
  Design next = context_.document.design();
  if (reach + 1 == int(std::size(kReaches))) {
    next.clear(Field::SleeveLength);
  } else {
    const Sizes& sizes = context_.document.draft().sizes;
    const double length =
        std::round(2 * kReaches[reach].share * sizes.finished(Field::SleeveToUnderarm)) / 2;
    const FieldInfo& limits = info(Field::SleeveLength);
    next.set(Field::SleeveLength, std::clamp(length, limits.low, limits.high));
  }
  context_.document.edit(tr("Sleeve: %1").arg(itemText(reach)), next);
}

void SleeveReach::refresh() {
  const Sizes& sizes = context_.document.draft().sizes;
  const double share =
      sizes[Field::SleeveLength] / std::max(1.0, sizes.finished(Field::SleeveToUnderarm));
  int reach = 0;
  while (share >= kReaches[reach].end)
    ++reach;
  setCurrentIndex(reach);
}

} // namespace scye
