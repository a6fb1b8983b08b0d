#include "body/yarn_classes.h"

#include <gtest/gtest.h>

#include <numbers>

namespace scye {

static double perCm(double inFourInches) {
  return inFourInches / 10.16;
}

// Craft Yarn Council, Standards and Guidelines: yarn weight system.
TEST(YarnClass, GaugeNamesItAsPublished) {
  const std::pair<int, int> published[] = {{40, 0}, {33, 0}, {32, 1}, {27, 1}, {26, 2}, {24, 2},
                                           {23, 3}, {21, 3}, {20, 4}, {16, 4}, {15, 5}, {12, 5},
                                           {11, 6}, {7, 6},  {6, 7},  {2, 7}};
  for (const auto& [stitches, number] : published) {
    const YarnClass* c = yarnClassByGauge(perCm(stitches));
    ASSERT_NE(c, nullptr) << stitches;
    EXPECT_EQ(c->number, number) << stitches;
  }
  EXPECT_EQ(yarnClassByGauge(perCm(41)), nullptr);
  EXPECT_EQ(yarnClassByGauge(0), nullptr);
}

// Same source: yards to the pound.
TEST(YarnClass, LengthOnTheLabelNamesItAsPublished) {
  const auto metres = [](double yardsPerPound) { return yardsPerPound * 0.9144 / 4.5359237; };
  const std::pair<double, int> published[] = {{2401, 0}, {2400, 1}, {1901, 1}, {1900, 2},
                                              {1201, 2}, {1200, 3}, {901, 3},  {900, 4},
                                              {601, 4},  {600, 5},  {401, 5},  {400, 6}};
  for (const auto& [yards, number] : published) {
    ASSERT_NE(yarnClassByRun(metres(yards)), nullptr) << yards;
    EXPECT_EQ(yarnClassByRun(metres(yards))->number, number) << yards;
  }
  EXPECT_EQ(yarnClassByRun(0), nullptr);
}

TEST(YarnClass, EveryClassHasAName) {
  EXPECT_EQ(yarnClasses().size(), 8u);
  for (const YarnClass& c : yarnClasses()) {
    EXPECT_TRUE(builtinPhrases().has("yarn." + std::string(c.key)));
    EXPECT_EQ(&c, &yarnClasses()[std::size_t(c.number)]);
  }
}

TEST(YarnClass, AGaugeWithinItsClassIsNotPointedOut) {
  for (const YarnClass& c : yarnClasses())
    for (int n = c.lowStitches; n <= c.highStitches; ++n)
      EXPECT_FALSE(yarnDoubt(c.number, perCm(n)));
}

TEST(YarnClass, AGaugeOfTheClassBesideItIsANoteAndFurtherOffAWarning) {
  const auto loose = yarnDoubt(3, perCm(18));
  ASSERT_TRUE(loose);
  EXPECT_EQ(loose->code, "yarn.loose");
  EXPECT_EQ(loose->severity, Severity::Note);
  const auto tight = yarnDoubt(5, perCm(24));
  ASSERT_TRUE(tight);
  EXPECT_EQ(tight->code, "yarn.tight");
  EXPECT_EQ(tight->severity, Severity::Warning);
  const std::string said = builtinPhrases().say("finding.yarn.tight", tight->params);
  EXPECT_NE(said.find("bulky yarn (5), which gives 12 to 15"), std::string::npos) << said;
  EXPECT_EQ(said.find('{'), std::string::npos) << said;
}

TEST(YarnClass, AClassThatDoesNotExistIsNotJudged) {
  EXPECT_FALSE(yarnDoubt(8, 2));
  EXPECT_FALSE(yarnDoubt(-1, 2));
}

// Same source, garment fit, cm at the bust.
TEST(Ease, FollowsThePublishedFits) {
  EXPECT_EQ(easeFor(Fit::VeryClose).high, 0);
  EXPECT_FALSE(easeFor(Fit::VeryClose).low);
  EXPECT_EQ(easeFor(Fit::Close).low, 2.5);
  EXPECT_EQ(easeFor(Fit::Standard).low, 5);
  EXPECT_EQ(easeFor(Fit::Standard).high, 10);
  EXPECT_EQ(easeFor(Fit::Standard).suggested(), 7.5);
  EXPECT_EQ(easeFor(Fit::Oversized).low, 15);
  EXPECT_EQ(easeFor(Fit::Oversized).suggested(), 15);
}

TEST(Ease, NamesTheFitItMakes) {
  EXPECT_EQ(fitOf(-4), Fit::VeryClose);
  EXPECT_EQ(fitOf(0), Fit::VeryClose);
  EXPECT_EQ(fitOf(2.5), Fit::Close);
  EXPECT_EQ(fitOf(7.5), Fit::Standard);
  EXPECT_EQ(fitOf(12), Fit::Loose);
  EXPECT_EQ(fitOf(20), Fit::Oversized);
  for (Fit fit : {Fit::VeryClose, Fit::Close, Fit::Standard, Fit::Loose, Fit::Oversized}) {
    EXPECT_EQ(fitOf(easeFor(fit).suggested()), fit);
    EXPECT_TRUE(builtinPhrases().has("easeFit." + std::string(fitKey(fit))));
  }
}

// Geometry: a tube of thickness t is 2 pi t/2 shorter inside than at mid-fabric.
TEST(Ease, ThickFabricTakesItsThicknessFromTheInside) {
  const double bulky = 10.16 / 13, medium = 10.16 / 18;
  EXPECT_NEAR(girthTakenByThickness(bulky), std::numbers::pi * bulky / 2, 1e-12);
  EXPECT_NEAR(*easeFor(Fit::Standard, medium).low, 5, 1e-12);
  EXPECT_NEAR(*easeFor(Fit::Standard, bulky).low, 5 + std::numbers::pi / 2 * (bulky - medium),
              1e-12);
  EXPECT_LT(*easeFor(Fit::Standard, 10.16 / 28).high, 10);
}

} // namespace scye
