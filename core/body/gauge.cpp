#include "body/gauge.h"

namespace scye {
namespace {

using Use = SwatchReading::Use;

std::vector<SwatchCount> counts(const Design& design, Use use, bool across) {
  std::vector<SwatchCount> out;
  if (use == Use::Same)
    if (const auto first = across ? swatchAcross(design) : swatchAlong(design))
      out.push_back(*first);
  for (const SwatchReading& s : design.swatches) {
    const SwatchCount count{across ? s.stitches : s.rows, across ? s.width : s.height};
    if (s.use == use && count.count > 0) out.push_back(count);
  }
  return out;
}

double squareWeight(const Design& design) {
  double grams = 0, area = 0;
  const auto add = [&](double weight, double width, double height) {
    if (weight > 0) grams += weight, area += width * height;
  };
  const auto given = [&](Field f, double otherwise) { return design.given(f).value_or(otherwise); };
  add(given(Field::SwatchWeight, 0), given(Field::SwatchWidth, kSwatchSide),
      given(Field::SwatchHeight, kSwatchSide));
  for (const SwatchReading& s : design.swatches)
    if (s.use == Use::Same) add(s.weight, s.width, s.height);
  constexpr double kSquareMetre = 1e4; // cm2
  return area > 0 ? grams / area * kSquareMetre : 0;
}

std::optional<double> change(const std::optional<SwatchGauge>& before,
                             const std::optional<SwatchGauge>& after) {
  if (!before || !after) return std::nullopt;
  return changeByWashing(*before, *after);
}

} // namespace

std::optional<double> GaugeReport::washedAcross() const {
  return change(unwashedAcross, across);
}
std::optional<double> GaugeReport::washedAlong() const {
  return change(unwashedAlong, along);
}

std::vector<SwatchCount> pooledAcross(const Design& design) {
  return counts(design, Use::Same, true);
}

GaugeReport gaugeReport(const Design& design) {
  GaugeReport out;
  const auto of = [&](Use use, bool across) { return gaugeOf(counts(design, use, across)); };
  out.across = of(Use::Same, true), out.along = of(Use::Same, false);
  out.unwashedAcross = of(Use::BeforeWashing, true),
  out.unwashedAlong = of(Use::BeforeWashing, false);
  out.otherAcross = of(Use::OtherPattern, true), out.otherAlong = of(Use::OtherPattern, false);
  for (const SwatchReading& s : design.swatches)
    if (s.use == Use::OtherPattern) out.otherLabel = s.label;
  out.gramsPerSquareMetre = squareWeight(design);
  return out;
}

} // namespace scye
