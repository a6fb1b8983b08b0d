#include "panels/ease_marks.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr double kGrain = 0.5; // cm

} // namespace

double suggestedEase(Fit fit, double stitchWidth) {
  const EaseRange range = easeFor(fit, stitchWidth);
  const double steps = range.suggested() / kGrain;
  if (!range.high) return kGrain * std::ceil(steps);
  if (!range.low) return kGrain * std::floor(steps);
  return kGrain * std::round(steps);
}

double easeHeld(const Sizes& sizes) {
  return sizes.fromGarment(Field::Bust) ? sizes.usualEase[std::size_t(Field::EaseBust)] : 0;
}

QList<EaseMark> easeMarks(const Phrases& phrases, const Design& design, const Sizes& sizes,
                          Field ease) {
  QList<EaseMark> marks;
  const auto add = [&](double value, const char* key) {
    const auto same = [&](const EaseMark& m) { return std::abs(m.value - value) < 0.05; };
    if (std::none_of(marks.begin(), marks.end(), same))
      marks.append({value, phraseText(phrases, key)});
  };
  if (ease == Field::EaseBust) {
    for (const Fit fit : kFits)
      add(suggestedEase(fit, sizes.stitch.width) - easeHeld(sizes),
          ("easeFit." + std::string(fitKey(fit))).c_str());
    return marks;
  }
  add(filledIn(design, ease), "ease.mark.usual");
  if (ease == Field::EaseUpperArm) add(sizes[Field::LimitUpperArm], "ease.mark.least");
  if (ease == Field::EaseArmholeDepth) add(sizes[Field::LimitDepthEase], "ease.mark.most");
  if (ease == Field::CapEase && design.as<CapTop>() == CapTop::Smooth)
    add(sizes[Field::LimitCapEase], "ease.mark.most");
  if (ease != Field::EaseUpperArm) add(0, "ease.mark.none");
  std::sort(marks.begin(), marks.end(),
            [](const EaseMark& a, const EaseMark& b) { return a.value < b.value; });
  return marks;
}

} // namespace scye
