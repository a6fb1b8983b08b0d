#include "support/random_designs.h"

#include "body/size_tables.h"
#include "draft/complete.h"
#include "model/units.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iostream>

namespace scye::test {
namespace {

double withinRange(Field f, double value, Source where = Source::Body) {
  const FieldInfo& i = info(f);
  const ValueRange range = rangeOf(f, where);
  const double grain = i.kind != FieldKind::Count ? 0 : i.group == FieldGroup::Swatch ? 4 : 1;
  if (grain > 0) value = std::round(value * grain) / grain;
  return std::clamp(value, range.low, range.high);
}

} // namespace

std::uint64_t propertySeed(std::uint64_t fallback) {
  const char* wanted = std::getenv("SCYE_TEST_SEED");
  const std::uint64_t seed = wanted ? std::strtoull(wanted, nullptr, 10) : fallback;
  std::cout << "seed " << seed << '\n';
  testing::Test::RecordProperty("seed", std::to_string(seed));
  return seed;
}

double RandomDesigns::uniform(double low, double high) {
  return std::uniform_real_distribution<double>(low, high)(engine_);
}

bool RandomDesigns::chance(double probability) {
  return uniform(0, 1) < probability;
}

int RandomDesigns::index(int count) {
  return std::uniform_int_distribution<int>(0, count - 1)(engine_);
}

void RandomDesigns::vary(Design& design, Field f, double filled) {
  const FieldInfo& i = info(f);
  if (!isMeasurement(f)) {
    design.set(f, withinRange(f, filled + uniform(-1, 1) / 3 * i.span));
    return;
  }
  const double value = filled * uniform(0.92, 1.08);
  const Source where = chance(0.15) ? Source::Garment : Source::Body;
  design.set(f, withinRange(f, flatShare(f, where) * value, where), where);
}

Design RandomDesigns::plausible() {
  Design design;
  for (int c = 0; c < kChoiceCount; ++c)
    design.choose(Choice(c), index(int(info(Choice(c)).options.size())));
  // Most knitters leave the cap height to be worked out.
  if (chance(0.6)) design.choose(Choice::WorkedOut, WorkedOut::CapHeight);
  const auto sizes = publishedSizes(design.as<Figure>());
  const double bust = kCmPerInch * uniform(0.95 * sizes.front().bust, 1.03 * sizes.back().bust);
  design.set(Field::Bust, withinRange(Field::Bust, bust));
  const Sizes filled = complete(design);
  for (int f = 0; f < kFieldCount; ++f) {
    const Field field = Field(f);
    if (field == Field::Bust || info(field).group == FieldGroup::Limits) continue;
    if (chance(0.3)) vary(design, field, filled[field]);
  }
  return design;
}

Design RandomDesigns::wild() {
  Design design;
  for (int c = 0; c < kChoiceCount; ++c)
    design.choose(Choice(c), index(int(info(Choice(c)).options.size())));
  for (int f = 0; f < kFieldCount; ++f) {
    const FieldInfo& i = info(Field(f));
    if (chance(0.5)) continue;
    const double value = uniform(i.low, i.high);
    const Source where = chance(0.25) ? Source::Garment : Source::Body;
    design.set(i.id, withinRange(i.id, flatShare(i.id, where) * value, where), where);
  }
  return design;
}

} // namespace scye::test
