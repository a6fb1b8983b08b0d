#include "garment/verdict.h"

#include "support/random_designs.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

TEST(KnittedFit, SaysDraftedAndKnitted) {
  test::RandomDesigns designs(test::propertySeed(54));
  for (int i = 0; i < 60; ++i) {
    const Derived derived = derive(designs.plausible());
    const KnitGarment& knit = derived.knit;
    const FitVerdict v = fitVerdict(derived, builtinPhrases(), LengthUnit::Centimetre);
    EXPECT_NEAR(v.cap - v.armhole, v.ease, 1e-9);
    ASSERT_EQ(v.knitted.has_value(), knit.capKnitted);
    if (!v.knitted) continue;
    const double ease = knit.easeWanted;
    const double left = v.knitted->capLeft - v.knitted->armholeLeft - ease;
    const double right = v.knitted->capRight - v.knitted->armholeRight - ease;
    EXPECT_NEAR(std::abs(v.knitted->mismatch), std::max(std::abs(left), std::abs(right)), 1e-12);
    EXPECT_THAT(v.knitted->sentence, testing::Not(testing::ContainsRegex("[][{}]")));
  }
}

TEST(KnittedFit, DoesNotFitWhatCannotBeKnitted) {
  Derived derived = derive(Design().set(Field::Bust, 94));
  derived.findings = {{Severity::Blocking, "knit.noCap", {}, {}, {}}};
  const FitVerdict v = fitVerdict(derived, builtinPhrases(), LengthUnit::Centimetre);
  EXPECT_FALSE(v.fits);
  EXPECT_EQ(v.sentence, builtinPhrases().say("finding.knit.noCap"));
}

} // namespace
} // namespace scye
