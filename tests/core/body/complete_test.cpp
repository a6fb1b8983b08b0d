#include "body/complete.h"

#include "body/size_tables.h"
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
  EXPECT_EQ(s.origin(Field::Waist), Origin::Table);
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
      design.choose(Choice::Figure, figure).set(Field::Bust, kCmPerInch * size.bust);
      const Sizes s = complete(design);
      EXPECT_EQ(s.tableSize, size.name);
      EXPECT_NEAR(s[Field::UpperArm], kCmPerInch * size.upperArm, 1e-9);
      EXPECT_NEAR(s[Field::ArmholeDepth], kCmPerInch * size.armholeDepth, 1e-9);
      EXPECT_NEAR(s[Field::CrossShoulder], kCmPerInch * size.crossBack, 1e-9);
      EXPECT_EQ(s[Field::CrossFront], s[Field::CrossShoulder]);
      EXPECT_EQ(s[Field::CrossBack], s[Field::CrossShoulder]);
    }
}

// What is filled in follows what it was filled from, until it is set.
TEST(Complete, filledValueFollowsUntilTouched) {
  Design design = threeThings(Figure::Woman, 94, 29);
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
  Design body = threeThings(Figure::Woman, 92, 29);
  body.set(Field::EaseBust, 8);
  Design garment = body;
  garment.set(Field::Bust, 50, Source::Garment);
  const Sizes a = complete(body), b = complete(garment);
  EXPECT_EQ(b.origin(Field::Bust), Origin::GivenGarment);
  EXPECT_DOUBLE_EQ(b.finished(Field::Bust), 100);
  EXPECT_DOUBLE_EQ(b.body(Field::Bust), 92);
  EXPECT_DOUBLE_EQ(a[Field::Hip], b[Field::Hip]) << "the table is entered with the body";
}

// Starting ease by garment and figure: common practice.
TEST(Complete, easeStartsByGarmentAndFigure) {
  const auto eases = [](Figure figure, Garment garment) {
    Design design;
    design.choose(Choice::Figure, figure).choose(Choice::Garment, garment);
    const Sizes s = complete(design);
    return std::array{s[Field::EaseBust], s[Field::EaseUpperArm], s[Field::EaseArmholeDepth],
                      s[Field::EaseCrossBack]};
  };
  using Eases = std::array<double, 4>;
  EXPECT_EQ(eases(Figure::Woman, Garment::Pullover), (Eases{5, 4, 2, 0}));
  EXPECT_EQ(eases(Figure::Man, Garment::Jacket), (Eases{8, 6, 3, 0}));
  EXPECT_EQ(eases(Figure::Child, Garment::Pullover), (Eases{8, 5, 2.5, 0}));
  EXPECT_EQ(eases(Figure::Baby, Garment::Jacket), (Eases{5, 4, 2, 0}));
}

// Regressions of the 1988 survey, cm (tests/data/README.md): women 10.6 + 0.156 arm, men 11.4 +
// 0.182.
TEST(Complete, estimatesTheWristFromTheArm) {
  EXPECT_NEAR(complete(threeThings(Figure::Woman, 94, 29))[Field::Wrist], 10.6 + 0.156 * 29, 1e-9);
  EXPECT_NEAR(complete(threeThings(Figure::Man, 104, 34))[Field::Wrist], 11.4 + 0.182 * 34, 1e-9);
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
  EXPECT_DOUBLE_EQ(startingUnderarm(6), 2.7); // 45 %
  EXPECT_DOUBLE_EQ(startingUnderarm(20), 5);  // at most 5 cm: common practice
  EXPECT_DOUBLE_EQ(startingUnderarm(2), 1);   // at least 1 cm
  EXPECT_DOUBLE_EQ(startingUnderarm(1), 0.6); // but at most 60 %
  EXPECT_EQ(startingUnderarm(-3), 0);
}

TEST(Complete, riseStaysBetweenAThirdAndTwoThirds) {
  EXPECT_NEAR(startingRise(6, 2.7, 20), 0.35, 1e-12);
  EXPECT_NEAR(startingRise(10, 4, 20), 0.42, 1e-12);
  EXPECT_NEAR(startingRise(25, 5, 20), 0.65, 1e-12);
}

TEST(Complete, givenShoulderLengthSettlesTheNeckWidth) {
  Design design = threeThings(Figure::Woman, 94, 29);
  design.set(Field::ShoulderLength, 11).set(Field::ShoulderDrop, 3);
  const Sizes s = complete(design);
  const double run =
      0.5 * (s.finished(Field::CrossShoulder) - s[Field::NeckWidth]) - s[Field::NeckBand];
  EXPECT_NEAR(std::hypot(run, 3.0), 11, 1e-9);
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
