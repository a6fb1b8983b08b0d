#include "garment/derived.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

bool said(const Findings& findings, Field field) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) {
    const bool of = f.code == "knit.rounded" || f.code == "sleeve.cuffReach";
    return of && std::find(f.fields.begin(), f.fields.end(), field) != f.fields.end();
  });
}

// What was set and comes out more than a stitch or a row off is named.
TEST(KnitChecks, whatWasSetIsNamedWhereItIsMissed) {
  test::RandomDesigns random(test::propertySeed(2321));
  int missed = 0;
  for (int i = 0; i < 200; ++i) {
    Design d = random.plausible();
    if (i % 4 == 0) d.set(Field::PatternMultiple, 10 + i % 7);
    if (i % 3 == 0) d.set(Field::CrownWidth, 7).set(Field::NeckWidth, 17);
    const Derived derived = derive(d);
    const double w = derived.knit.lattice.size.width, h = derived.knit.lattice.size.height;
    for (const Rounded& r : derived.knit.rounded) {
      const auto measurement = measurementOf(r.field);
      const bool set = d.has(r.field) || (measurement && d.has(*measurement));
      // Two fronts are rounded each for itself.
      const double grain = r.grain == h || r.field == Field::CrossFront ? r.grain : w;
      if (!set || r.grain == 0 || std::abs(r.knitted - r.wanted) <= grain + 1e-6) continue;
      ++missed;
      EXPECT_TRUE(said(derived.findings, r.field)) << r.key << " in design " << i;
    }
  }
  EXPECT_GT(missed, 10);
}

// A hem that reaches up to the underarm has no rows for more.
TEST(KnitChecks, aHemThatIsCutShortIsNamed) {
  Design d;
  d.set(Field::Bust, 94).set(Field::HemToUnderarm, 12).set(Field::HemDepth, 20);
  EXPECT_TRUE(said(derive(d).findings, Field::HemDepth));
  EXPECT_FALSE(said(derive(d.set(Field::HemDepth, 4)).findings, Field::HemDepth));
}

} // namespace
} // namespace scye
