#include "body/yarn_classes.h"
#include "model/enum_keys.h"

#include "model/units.h"

#include <array>
#include <cmath>
#include <numbers>

namespace scye {
namespace {

constexpr std::array<YarnClass, 8> kClasses{{
    {0, "lace", 33, 40, 1.5, 2.25, 2401, 0},
    {1, "superFine", 27, 32, 2.25, 3.25, 1901, 2400},
    {2, "fine", 23, 26, 3.25, 3.75, 1201, 1900},
    {3, "light", 21, 24, 3.75, 4.5, 901, 1200},
    {4, "medium", 16, 20, 4.5, 5.5, 601, 900},
    {5, "bulky", 12, 15, 5.5, 8, 401, 600},
    {6, "superBulky", 7, 11, 8, 12.75, 1, 400},
    {7, "jumbo", 1, 6, 12.75, 0, 0, 0},
}};

constexpr double kFourInches = 4 * kCmPerInch;
constexpr double kMetresPerYard = 0.9144, kGramsPerPound = 453.59237; // both exact
constexpr int kMediumStitches = 18; // the middle of medium yarn, for which the ease is meant

double inFourInches(double stitchesPerCm) {
  return std::round(stitchesPerCm * kFourInches);
}

double thickness(double stitchWidth) {
  return 2 * stitchWidth / 4;
}

} // namespace

std::span<const YarnClass> yarnClasses() {
  return kClasses;
}

// Fine and light share 23 and 24 stitches: the nearer middle decides.
const YarnClass* yarnClassByGauge(double stitchesPerCm) {
  const double n = inFourInches(stitchesPerCm);
  const YarnClass* best = nullptr;
  double bestOff = 0;
  for (const YarnClass& c : kClasses) {
    if (n < c.lowStitches || n > c.highStitches) continue;
    const double off = std::abs(n - 0.5 * (c.lowStitches + c.highStitches));
    if (!best || off < bestOff) best = &c, bestOff = off;
  }
  return best;
}

const YarnClass* yarnClassByRun(double metresPer100g) {
  const double yards = std::round(metresPer100g / 100 / kMetresPerYard * kGramsPerPound);
  for (const YarnClass& c : kClasses)
    if (c.lowYards > 0 && yards >= c.lowYards && (c.highYards == 0 || yards <= c.highYards))
      return &c;
  return nullptr;
}

std::optional<Finding> yarnDoubt(int namedClass, double stitchesPerCm) {
  if (namedClass < 0 || namedClass >= int(kClasses.size()) || !(stitchesPerCm > 0))
    return std::nullopt;
  const YarnClass& named = kClasses[std::size_t(namedClass)];
  const double n = inFourInches(stitchesPerCm);
  if (n >= named.lowStitches && n <= named.highStitches) return std::nullopt;
  const YarnClass* fitting = yarnClassByGauge(stitchesPerCm);
  const bool beside = fitting && std::abs(fitting->number - namedClass) == 1;
  Finding out{beside ? Severity::Note : Severity::Warning,
              n < named.lowStitches ? "yarn.loose" : "yarn.tight",
              {Field::SwatchStitches},
              {phraseParam("class", "yarn." + std::string(named.key)),
               numberParam("number", namedClass), numberParam("low", named.lowStitches),
               numberParam("high", named.highStitches), numberParam("stitches", n)},
              {}};
  return out;
}

double EaseRange::suggested() const {
  if (low && high) return 0.5 * (*low + *high);
  return low.value_or(high.value_or(0));
}

EaseRange easeFor(Fit fit) {
  switch (fit) {
  case Fit::VeryClose:
    return {std::nullopt, 0};
  case Fit::Close:
    return {2.5, 5};
  case Fit::Standard:
    return {5, 10};
  case Fit::Loose:
    return {10, 15};
  case Fit::Oversized:
    break;
  }
  return {15, std::nullopt};
}

EaseRange easeFor(Fit fit, double stitchWidth) {
  EaseRange out = easeFor(fit);
  const double more =
      girthTakenByThickness(stitchWidth) - girthTakenByThickness(kFourInches / kMediumStitches);
  if (out.low) *out.low += more;
  if (out.high) *out.high += more;
  return out;
}

Fit fitOf(double ease) {
  if (ease < 1.25) return Fit::VeryClose; // halfway between its 0 and the next one's 2.5
  if (ease < 5) return Fit::Close;
  if (ease < 10) return Fit::Standard;
  if (ease < 15) return Fit::Loose;
  return Fit::Oversized;
}

double girthTakenByThickness(double stitchWidth) {
  return std::numbers::pi * thickness(stitchWidth);
}

std::string_view fitKey(Fit fit) {
  static constexpr EnumKeys<Fit, Fit::Oversized> kKeys{{
      {Fit::VeryClose, "veryClose"},
      {Fit::Close, "close"},
      {Fit::Standard, "standard"},
      {Fit::Loose, "loose"},
      {Fit::Oversized, "oversized"},
  }};
  return kKeys[fit];
}

} // namespace scye
