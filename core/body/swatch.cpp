#include "body/swatch.h"

#include "body/estimate.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr double kBustTolerance = 1; // cm
constexpr double kDisagree = 2;

std::optional<SwatchCount> countOf(const Design& design, Field count, Field length) {
  const auto n = design.given(count);
  if (!n) return std::nullopt;
  return SwatchCount{*n, design.given(length).value_or(kSwatchSide)};
}

} // namespace

double UncertainSize::reach() const {
  return kNinetyReach * deviation;
}

// With n_i = g L_i + error, g = sum(n L) / sum(L L) has the standard deviation sd / sqrt(sum(L L));
// the size 1 / g has the same relative one.
std::optional<SwatchGauge> gaugeOf(std::span<const SwatchCount> swatches, double readingError) {
  double countLength = 0, lengthLength = 0;
  for (const auto& [count, length] : swatches) {
    if (!(count > 0 && length > 0)) return std::nullopt;
    countLength += count * length;
    lengthLength += length * length;
  }
  if (swatches.empty()) return std::nullopt;
  const double perCm = countLength / lengthLength, reading = readingError / kNinetyReach;
  SwatchGauge out;
  if (swatches.size() > 1 && reading > 0) {
    double squares = 0;
    for (const auto& [count, length] : swatches)
      squares += std::pow((count - perCm * length) / reading, 2);
    out.disagreement = std::sqrt(squares / double(swatches.size() - 1));
  }
  const double relative =
      reading / std::sqrt(lengthLength) / perCm * std::max(1.0, out.disagreement);
  out.size = {1 / perCm, relative / perCm};
  return out;
}

std::optional<SwatchCount> swatchAcross(const Design& design) {
  return countOf(design, Field::SwatchStitches, Field::SwatchWidth);
}

std::optional<SwatchCount> swatchAlong(const Design& design) {
  return countOf(design, Field::SwatchRows, Field::SwatchHeight);
}

double swatchLengthFor(double finished, double stitchSize, double tolerance, double readingError) {
  return finished * readingError * stitchSize / tolerance;
}

double changeByWashing(const SwatchGauge& before, const SwatchGauge& after) {
  return after.size.value / before.size.value - 1;
}

Findings swatchFindings(std::span<const SwatchCount> across, double finishedBust) {
  Findings out;
  const auto gauge = gaugeOf(across);
  if (!gauge) return out;
  const double stitch = gauge->size.value, reach = gauge->over(finishedBust / stitch).reach();
  if (gauge->disagreement > kDisagree)
    out.push_back({Severity::Warning,
                   "swatch.disagree",
                   {Field::SwatchStitches},
                   {numberParam("count", double(across.size())), lengthParam("reach", reach)},
                   {}});
  else if (reach > kBustTolerance)
    out.push_back({Severity::Note,
                   "swatch.short",
                   {Field::SwatchWidth},
                   {lengthParam("bust", finishedBust), lengthParam("reach", reach),
                    lengthParam("tolerance", kBustTolerance),
                    lengthParam("length", swatchLengthFor(finishedBust, stitch, kBustTolerance))},
                   {}});
  return out;
}

} // namespace scye
