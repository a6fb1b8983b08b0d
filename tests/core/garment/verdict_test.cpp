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

// Whatever else tells the cap's height tells the one of the sentence: that of the whole rows.
TEST(KnittedFit, ToldCapHeightIsTheSentences) {
  test::RandomDesigns designs(test::propertySeed(55));
  int knitted = 0, drafted = 0;
  for (int i = 0; i < 150; ++i) {
    const Derived derived = derive(designs.plausible());
    const FitVerdict v = fitVerdict(derived, builtinPhrases(), LengthUnit::Centimetre);
    const bool tellsHeight = v.sentence.find("a cap ") != std::string::npos; // gathers do not
    if (!v.fits || !derived.knit.capKnitted || !tellsHeight) continue;
    const std::string told =
        builtinPhrases().length(toldCapHeight(derived), LengthUnit::Centimetre);
    EXPECT_THAT(v.sentence, testing::HasSubstr(told));
    ++knitted;
    drafted += told != builtinPhrases().length(derived.draft.cap.height, LengthUnit::Centimetre);
  }
  EXPECT_GT(knitted, 20);
  EXPECT_GT(drafted, 5) << "the drafted height would do as well";
}

TEST(KnittedFit, DoesNotFitWhatCannotBeKnitted) {
  Derived derived = derive(Design().set(Field::Bust, 94));
  derived.findings = {{Severity::Blocking, "knit.noCap", {}, {}, {}}};
  const FitVerdict v = fitVerdict(derived, builtinPhrases(), LengthUnit::Centimetre);
  EXPECT_FALSE(v.fits);
  EXPECT_EQ(v.sentence, builtinPhrases().say("finding.knit.noCap"));
}

// A short sleeve that is gathered into a cuff: where the rows between are too few it cannot be
// made, and the card says why and what would help.
TEST(GatheredCuff, thatItsRowsCannotReachIsSaidWithItsCure) {
  Design d;
  d.choose(Choice::SleeveLine, SleeveLine::Full);
  d.set(Field::Bust, 94).set(Field::UpperArm, 33).set(Field::SwatchStitches, 22);
  d.set(Field::SwatchRows, 30).set(Field::SleeveLength, 9);
  Derived derived = derive(d);
  deriveRemedies(d, derived);
  const Finding* reach = findCode(derived.findings, "sleeve.cuffReach");
  ASSERT_NE(reach, nullptr);
  EXPECT_EQ(reach->severity, Severity::Blocking);
  EXPECT_EQ(findCode(derived.findings, "knit.rounded"), nullptr) << "rounding is not to blame";
  ASSERT_FALSE(reach->remedies.empty());
  for (const Remedy& remedy : reach->remedies)
    EXPECT_EQ(findCode(findingsOf(applied(d, remedy)), "sleeve.cuffReach"), nullptr) << remedy.key;
  const std::string sentence =
      fitVerdict(derived, builtinPhrases(), LengthUnit::Centimetre).sentence;
  EXPECT_THAT(sentence, testing::StartsWith("This sleeve cannot be made"));
}

// A sleeve fits where its cap is as long as the armhole or up to a smooth ease longer.
TEST(Verdict, saysWhetherTheCapCanBeSewnIn) {
  const auto verdict = [](double ease) {
    return fitVerdict(
        derive(Design().set(Field::Bust, 94).set(Field::UpperArm, 29.5).set(Field::CapEase, ease)),
        builtinPhrases(), LengthUnit::Centimetre);
  };
  EXPECT_TRUE(verdict(1).fits);
  EXPECT_TRUE(verdict(0).fits);
  EXPECT_NEAR(verdict(1).cap - verdict(1).armhole, 1, 1e-6);
  EXPECT_FALSE(verdict(-1).fits) << "the cap is too short";
  EXPECT_FALSE(verdict(4).fits) << "too much to ease in";
  EXPECT_NE(verdict(-1).sentence, verdict(4).sentence);
}

} // namespace
} // namespace scye
