#include "draft/complete.h"

#include "body/size_tables.h"
#include "draft/starting.h"
#include "model/units.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

#include <cmath>

namespace scye {
namespace {

Design threeThings(Figure figure, double bust, double upperArm) {
  Design design;
  design.choose(Choice::Figure, figure);
  design.set(Field::Bust, bust).set(Field::UpperArm, upperArm).set(Field::SwatchStitches, 22);
  return design;
}

TEST(Complete, fillsEverythingFromThreeThings) {
  const Sizes s = complete(threeThings(Figure::Woman, 94, 29));
  EXPECT_EQ(s.tableSize, "M");
  EXPECT_EQ(s.origin(Field::Bust), Origin::GivenBody);
  EXPECT_EQ(s.origin(Field::SwatchStitches), Origin::Set);
  EXPECT_EQ(s.origin(Field::Waist), Origin::Estimate);
  EXPECT_EQ(s.origin(Field::Wrist), Origin::Estimate);
  EXPECT_EQ(s.origin(Field::CapEase), Origin::Rule);
  EXPECT_EQ(s[Field::Bust], 94);
  EXPECT_EQ(s[Field::UpperArm], 29);
}

TEST(Complete, drawsSomethingForABareDesign) {
  for (Figure figure : {Figure::Woman, Figure::Man, Figure::Child, Figure::Baby}) {
    Design design;
    design.choose(Choice::Figure, figure);
    const Sizes s = complete(design);
    for (int f = 0; f < kFieldCount; ++f)
      EXPECT_TRUE(std::isfinite(s[Field(f)])) << info(Field(f)).key;
    EXPECT_GT(s.finished(Field::Bust), s.body(Field::Bust));
  }
}

TEST(Complete, measuresAreThoseOfThePublishedSize) {
  for (Figure figure : {Figure::Woman, Figure::Man, Figure::Child, Figure::Baby})
    for (const TableSize& size : publishedSizes(figure)) {
      SCOPED_TRACE(size.name);
      Design design;
      design.choose(Choice::Figure, figure).choose(Choice::FillFrom, FillFrom::Size);
      design.set(Field::Bust, kCmPerInch * size.bust);
      const Sizes s = complete(design);
      EXPECT_EQ(s.tableSize, size.name);
      EXPECT_NEAR(s[Field::UpperArm], kCmPerInch * size.upperArm, 1e-9);
      // A published depth hangs from a garment's shoulder.
      EXPECT_NEAR(s.finished(Field::ArmholeDepth) - s[Field::EaseArmholeDepth],
                  kCmPerInch * size.armholeDepth, 1e-9);
      EXPECT_NEAR(s[Field::CrossShoulder], kCmPerInch * size.crossBack, 1e-9);
      EXPECT_EQ(s[Field::CrossFront], s[Field::CrossShoulder]);
      EXPECT_NEAR(s.finished(Field::CrossFront), s.finished(Field::CrossShoulder), 1e-9);
      EXPECT_NEAR(s.finished(Field::CrossBack), s.finished(Field::CrossShoulder), 1e-9);
    }
}

// What is filled in follows what it was filled from, until it is set.
TEST(Complete, filledValueFollowsUntilTouched) {
  Design design;
  design.set(Field::Bust, 94);
  const double filled = complete(design)[Field::Hip];
  design.set(Field::Bust, 110);
  EXPECT_GT(complete(design)[Field::Hip], filled + 5);
  design.set(Field::Hip, filled);
  design.set(Field::Bust, 120);
  const Sizes touched = complete(design);
  EXPECT_EQ(touched[Field::Hip], filled);
  EXPECT_EQ(touched.origin(Field::Hip), Origin::GivenBody);
  design.clear(Field::Hip);
  EXPECT_GT(complete(design)[Field::Hip], filled + 10);
}

TEST(Complete, garmentWidthLeadsToTheBodyInside) {
  const Design body = threeThings(Figure::Woman, 92, 29);
  Design garment = body;
  garment.set(Field::Bust, 48.5, Source::Garment);
  const Sizes a = complete(body), b = complete(garment);
  EXPECT_EQ(b.origin(Field::Bust), Origin::GivenGarment);
  EXPECT_DOUBLE_EQ(b.finished(Field::Bust), 97);
  EXPECT_DOUBLE_EQ(b[Field::EaseBust], 0) << "it is the garment that fits, unchanged";
  EXPECT_DOUBLE_EQ(b.body(Field::Bust), 92) << "a usual ease of 5 was in it";
  EXPECT_DOUBLE_EQ(a[Field::Hip], b[Field::Hip]) << "the body tells the others";
  garment.set(Field::EaseBust, 2);
  EXPECT_DOUBLE_EQ(complete(garment).finished(Field::Bust), 99) << "2 cm wider than that garment";
  EXPECT_DOUBLE_EQ(complete(garment).body(Field::Bust), 92) << "the wearer stays the same";
}

// Starting ease by garment and figure: common practice.
TEST(Complete, easeStartsByGarmentAndFigure) {
  const auto eases = [](Figure figure, Garment garment) {
    Design design;
    design.choose(Choice::Figure, figure).choose(Choice::Garment, garment);
    const Sizes s = complete(design);
    return std::array{s[Field::EaseBust], s[Field::EaseUpperArm]};
  };
  using Eases = std::array<double, 2>;
  EXPECT_EQ(eases(Figure::Woman, Garment::Pullover), (Eases{5, 4}));
  EXPECT_EQ(eases(Figure::Man, Garment::Jacket), (Eases{8, 5}));
  EXPECT_EQ(eases(Figure::Child, Garment::Pullover), (Eases{8, 5}));
  EXPECT_EQ(eases(Figure::Baby, Garment::Jacket), (Eases{5, 4}));
}

// Regressions of the 1988 survey, cm (tests/data/README.md): women 10.6 + 0.156 arm, men 11.4 +
// 0.182.
TEST(Complete, estimatesTheWristFromTheArm) {
  const auto sized = [](Figure figure, double bust, double arm) {
    return complete(threeThings(figure, bust, arm).choose(Choice::FillFrom, FillFrom::Size));
  };
  EXPECT_NEAR(sized(Figure::Woman, 94, 29)[Field::Wrist], 10.6 + 0.156 * 29, 1e-9);
  EXPECT_NEAR(sized(Figure::Man, 104, 34)[Field::Wrist], 11.4 + 0.182 * 34, 1e-9);
  EXPECT_LT(complete(threeThings(Figure::Baby, 46, 15))[Field::Wrist], 11);
}

TEST(Complete, assumesTheRowsItWasNotTold) {
  Design design = threeThings(Figure::Woman, 94, 29);
  design.set(Field::SwatchWidth, 10).set(Field::SwatchHeight, 12);
  Sizes s = complete(design);
  EXPECT_NEAR(s.stitch.width, 10.0 / 22, 1e-12);
  EXPECT_NEAR(s.stitch.width / s.stitch.height, 1.36, 1e-12); // printed patterns: 1.2 to 1.4
  EXPECT_EQ(s.origin(Field::SwatchRows), Origin::Estimate);
  design.set(Field::SwatchRows, 36);
  s = complete(design);
  EXPECT_NEAR(s.stitch.height, 12.0 / 36, 1e-12);
  EXPECT_EQ(s.origin(Field::SwatchRows), Origin::Set);
}

TEST(Complete, underarmBindOffFollowsWhatTheArmholeTakesAway) {
  EXPECT_DOUBLE_EQ(startingUnderarm(6), 3); // half
  EXPECT_DOUBLE_EQ(startingUnderarm(6, 0.45), 2.7);
  EXPECT_DOUBLE_EQ(startingUnderarm(20), 5);  // at most 5 cm: common practice
  EXPECT_DOUBLE_EQ(startingUnderarm(2), 1);   // at least 1 cm
  EXPECT_DOUBLE_EQ(startingUnderarm(1), 0.6); // but at most 60 %
  EXPECT_EQ(startingUnderarm(-3), 0);
}

TEST(Complete, riseStaysBetweenAThirdAndTwoThirds) {
  EXPECT_NEAR(startingRise(6, 2.7, 20, 0), 0.35, 1e-12);
  EXPECT_NEAR(startingRise(10, 4, 20, 0), 0.42, 1e-12);
  EXPECT_NEAR(startingRise(25, 5, 20, 0), 0.65, 1e-12);
}

// Where the bust is large over the shoulders; a man's fronts and most women's are as their backs.
TEST(Complete, frontsAreScoopedDeeperWhereTheBustAsksForIt) {
  double before = 0;
  for (const double bust : {84.0, 94.0, 104.0, 114.0, 125.0, 135.0, 155.0}) {
    const Sizes s = complete(Design().set(Field::Bust, bust));
    const double deeper = s[Field::ScoopFront] - s[Field::ScoopBack];
    EXPECT_GE(deeper, before - 1e-12) << bust;
    EXPECT_LE(deeper, 0.05 + 1e-12) << bust;
    EXPECT_EQ(deeper > 1e-12, bust > 110) << bust;
    EXPECT_EQ(deeper > 0.02, bust > 130) << bust;
    before = deeper;
  }
  Design man;
  man.choose(Choice::Figure, Figure::Man).set(Field::Bust, 150);
  EXPECT_EQ(complete(man)[Field::ScoopFront], complete(man)[Field::ScoopBack]);
}

// Slender and broad-shouldered, as a true body of the 1988 survey: the usual ease is raised so that
// the armhole keeps a curve. What was set is left alone.
TEST(Complete, aSlenderBodyWithBroadShouldersGetsTheEaseItsArmholeNeeds) {
  Design design;
  design.set(Field::Bust, 71.1).set(Field::CrossShoulder, 37);
  const Sizes s = complete(design);
  EXPECT_GT(s[Field::EaseBust], 5);
  EXPECT_LE(s[Field::EaseBust], 10);
  EXPECT_GT(0.5 * s.finished(Field::Bust) - s.finished(Field::CrossShoulder), 3);
  EXPECT_EQ(s[Field::EaseWaist], s[Field::EaseBust]);
  EXPECT_EQ(complete(design.set(Field::EaseBust, 5))[Field::EaseBust], 5);
}

TEST(Complete, aGarmentsShoulderSeamSettlesTheNeckWidth) {
  Design design = threeThings(Figure::Woman, 94, 29);
  design.set(Field::ShoulderLength, 11, Source::Garment).set(Field::ShoulderDrop, 3);
  const Sizes s = complete(design);
  const double run =
      0.5 * (s.finished(Field::CrossShoulder) - s[Field::NeckWidth]) - s[Field::NeckBand];
  EXPECT_NEAR(std::hypot(run, 3.0), 11, 1e-9);
}

// A body's shoulder is longer and steeper than a garment's seam: it moves the neck a little, and
// the neck keeps the neck's and the head's size.
TEST(Complete, aBodysShoulderLengthLeavesANeckAndAShoulder) {
  for (const Garment garment : {Garment::Pullover, Garment::Jacket})
    for (const double length : {9.0, 12.0, 14.5, 18.0, 22.0}) {
      Design design = threeThings(Figure::Woman, 92, 29);
      design.choose(Choice::Garment, garment).set(Field::CrossShoulder, 39);
      design.set(Field::ShoulderLength, length);
      const Sizes s = complete(design);
      EXPECT_GT(s[Field::NeckWidth], 10) << length;
      EXPECT_LT(s[Field::NeckWidth], 21) << length;
      EXPECT_GE(s.finished(Field::ShoulderLength), 5 - 1e-9) << length;
    }
}

// Depth on the body: nape to underarm line. The garment's hangs from its shoulder tip.
TEST(Complete, armholeDepthHangsFromTheGarmentsShoulder) {
  Design design = threeThings(Figure::Woman, 94, 29);
  design.set(Field::ArmholeDepth, 18.6).set(Field::EaseArmholeDepth, 2);
  design.set(Field::ShoulderDrop, 3).set(Field::BackNeckDrop, 2);
  EXPECT_DOUBLE_EQ(complete(design).finished(Field::ArmholeDepth), 18.6 + 2 - 3 + 2);
  design.set(Field::ArmholeDepth, 20, Source::Garment).clear(Field::EaseArmholeDepth);
  EXPECT_DOUBLE_EQ(complete(design).finished(Field::ArmholeDepth), 20) << "straight, as it is";
}

TEST(Complete, fillsFromTheSurveyAndSaysWhereBodiesLie) {
  Design design = threeThings(Figure::Woman, 94, 29);
  const Sizes survey = complete(design);
  for (const Field f :
       {Field::Hip, Field::CrossShoulder, Field::ShoulderLength, Field::ScyeGirth}) {
    EXPECT_EQ(survey.origin(f), Origin::Estimate) << info(f).key;
    ASSERT_TRUE(survey.likely[std::size_t(f)]) << info(f).key;
    EXPECT_GT(survey[f], survey.likely[std::size_t(f)]->low) << info(f).key;
    EXPECT_LT(survey[f], survey.likely[std::size_t(f)]->high) << info(f).key;
  }
  EXPECT_FALSE(survey.likely[std::size_t(Field::Bust)]) << "taken, so not estimated";
  design.choose(Choice::FillFrom, FillFrom::Size);
  const Sizes table = complete(design);
  EXPECT_EQ(table.origin(Field::Hip), Origin::Table);
  EXPECT_TRUE(table.likely[std::size_t(Field::Hip)]);
  design.choose(Choice::FillFrom, FillFrom::Survey);
  design.choose(Choice::Figure, Figure::Child).set(Field::Bust, 66);
  EXPECT_EQ(complete(design).origin(Field::Hip), Origin::Table) << "children: published tables";
}

// Beyond the survey's reach the estimates give way to the published sizes, without a jump.
TEST(Complete, passesFromTheSurveyToTheTablesBeyondItsReach) {
  double before = 0;
  for (double bust = 100; bust < 160; bust += 0.5) {
    Design design;
    design.set(Field::Bust, bust);
    const Sizes s = complete(design);
    if (before > 0) {
      EXPECT_NEAR(s[Field::UpperArm], before, 0.5) << bust;
    }
    before = s[Field::UpperArm];
    if (bust > 113) {
      EXPECT_TRUE(s.beyondSurvey) << bust;
    }
    if (bust > 140) {
      EXPECT_NEAR(s[Field::UpperArm], sizeAtBust(Figure::Woman, bust).upperArm, 1e-9) << bust;
    }
  }
}

TEST(Complete, anUnderarmGivenOnOneSideIsTakenForTheOther) {
  Design design = threeThings(Figure::Woman, 94, 29);
  design.set(Field::UnderarmBack, 3.3);
  EXPECT_EQ(complete(design)[Field::UnderarmFront], 3.3);
}

TEST(Complete, keepsEveryGivenValueAndFillsWithinRange) {
  const auto seed = test::propertySeed(1101);
  test::RandomDesigns random(seed);
  for (int i = 0; i < 2000; ++i) {
    const Design design = i % 2 ? random.plausible() : random.wild();
    const Sizes s = complete(design);
    for (int f = 0; f < kFieldCount; ++f) {
      const Field field = Field(f);
      ASSERT_TRUE(std::isfinite(s[field])) << info(field).key;
      if (design.has(field)) {
        ASSERT_EQ(s[field], *design.given(field)) << info(field).key;
      } else {
        ASSERT_GE(s[field], info(field).low) << info(field).key;
        ASSERT_LE(s[field], info(field).high) << info(field).key;
      }
    }
  }
}

} // namespace
} // namespace scye
