#include "panels/ease_fit.h"

#include "panels/ease_marks.h"

namespace scye {
namespace {

// What a fabric of this stitch width needs beyond the published ease.
double addedForThickness(double stitchWidth) {
  return easeFor(Fit::Standard, stitchWidth).suggested() - easeFor(Fit::Standard).suggested();
}

QString rangeText(const Phrases& phrases, const EaseRange& range, LengthUnit unit) {
  Params params;
  if (range.low) params.push_back(lengthParam("low", *range.low));
  if (range.high) params.push_back(lengthParam("high", *range.high));
  return phraseText(phrases,
                    !range.low    ? "easeRange.upTo"
                    : !range.high ? "easeRange.from"
                                  : "easeRange.between",
                    params, unit);
}

} // namespace

EaseFit::EaseFit(const PanelContext& context, QWidget* parent)
    : ChoiceBox(parent), context_(context) {
  setAccessibleName(tr("Fit at the bust"));
  setToolTip(phraseText(context_.phrases(), "easeFit.source"));
  for (const Fit fit : kFits)
    addItem(phraseText(context_.phrases(), "easeFit." + std::string(fitKey(fit))));
  connect(this, &QComboBox::activated, this, &EaseFit::choose);
  connect(&context_.document, &Document::changed, this, [this](const Document::Event& event) {
    if (event.derived) refresh();
  });
  connect(&context_.settings, &Settings::changed, this, &EaseFit::refresh);
  refresh();
}

void EaseFit::choose(int fit) {
  const Sizes& sizes = context_.document.draft().sizes;
  const FieldInfo& limits = info(Field::EaseBust);
  const double ease = suggestedEase(kFits[fit], sizes.stitch.width) - easeHeld(sizes);
  Design next = context_.document.design();
  next.set(Field::EaseBust, std::clamp(ease, limits.low, limits.high));
  context_.document.edit(tr("Fit: %1").arg(itemText(fit)), next);
}

void EaseFit::refresh() {
  const Sizes& sizes = context_.document.draft().sizes;
  const double stitch = sizes.stitch.width;
  for (int i = 0; i < count(); ++i)
    setItemData(i,
                rangeText(context_.phrases(), easeFor(kFits[i], stitch), context_.settings.unit()),
                Qt::ToolTipRole);
  setCurrentIndex(int(fitOf(sizes[Field::EaseBust] + easeHeld(sizes) - addedForThickness(stitch))));
  setAccessibleDescription(itemData(currentIndex(), Qt::ToolTipRole).toString() + u' ' + toolTip());
}

} // namespace scye
