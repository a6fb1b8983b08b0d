#include "draft/side.h"

#include "draft/complete.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

// A woman's pullover with hip, waist and bust widths that are easy to tell apart.
Design aBody(SideSeam side, double hemToUnderarm) {
  Design d;
  d.choose(Choice::SideSeam, side);
  for (Field ease : {Field::EaseBust, Field::EaseWaist, Field::EaseHip, Field::EaseArmholeDepth})
    d.set(ease, 0);
  return d.set(Field::Bust, 100)
      .set(Field::Waist, 80)
      .set(Field::Hip, 112)
      .set(Field::HemToUnderarm, hemToUnderarm)
      .set(Field::ArmholeDepth, 20.5) // nape to underarm: 20 from the tip
      .set(Field::ShoulderDrop, 2.5)
      .set(Field::BackNeckDrop, 2)
      .set(Field::BackWaistLength, 42);
}

Path sideOf(const Design& d) {
  const Sizes s = complete(d);
  return sideSeam(s, draftBodice(s).at, 0.5);
}

double xAtHeight(const Path& path, double y) {
  for (const Cubic& c : path.segments())
    if (c.start().y() <= y && y <= c.end().y() && c.end().y() > c.start().y())
      return c.start().x() +
             (y - c.start().y()) / (c.end().y() - c.start().y()) * (c.end().x() - c.start().x());
  ADD_FAILURE() << "the seam does not reach " << y;
  return 0;
}

TEST(SideSeam, shapedGoesInAtTheWaistAndOutAtTheHip) {
  const Design d =
      aBody(SideSeam::Shaped, 45); // waist at 45 + 20 + 2.5 - 2 - 42 = 23.5, hip 20 below
  const Path side = sideOf(d);
  EXPECT_EQ(side.start(), Vec2(28, 0));
  EXPECT_EQ(side.end(), Vec2(25, 45));
  EXPECT_NEAR(xAtHeight(side, 3.5), 28, 1e-12);
  for (double y : {23.5 - 0.5 * kWaistEven, 23.5, 23.5 + 0.5 * kWaistEven})
    EXPECT_NEAR(xAtHeight(side, y), 20, 1e-12) << "even for " << kWaistEven << " cm at the waist";
  EXPECT_NEAR(xAtHeight(side, 45 - kUnderarmEven), 25, 1e-12) << "even before the underarm";
}

TEST(SideSeam, straightGoesFromHipToBust) {
  const Path side = sideOf(aBody(SideSeam::Straight, 45));
  EXPECT_EQ(side.start(), Vec2(28, 0));
  EXPECT_EQ(side.end(), Vec2(25, 45));
  EXPECT_GT(xAtHeight(side, 23.5), 25);
  EXPECT_NEAR(xAtHeight(side, 43), 25, 1e-12);
}

TEST(SideSeam, aShortBodyIsCutOffAbove) {
  // The waist lies at 3.5: the hem falls between hip and waist.
  const Path side = sideOf(aBody(SideSeam::Shaped, 25).choose(Choice::Hem, HemMade::Plain));
  EXPECT_EQ(side.start().y(), 0);
  EXPECT_LT(side.start().x(), 24);
  EXPECT_GT(side.start().x(), 20);
  // So short that only the part above the waist is left.
  const Path cropped = sideOf(aBody(SideSeam::Shaped, 18));
  EXPECT_EQ(cropped.start().y(), 0);
  EXPECT_GE(cropped.start().x(), 20);
  EXPECT_LT(cropped.start().x(), 25);
}

// Common practice: a rib that lies about the waist is as wide as the waist; nothing is shaped in
// it.
TEST(SideSeam, aRibAboutTheWaistHasItsWidth) {
  const Path side = sideOf(aBody(SideSeam::Shaped, 25).set(Field::HemDepth, 6));
  EXPECT_EQ(side.start(), Vec2(20, 0));
  EXPECT_NEAR(xAtHeight(side, 6), 20, 1e-12);
  EXPECT_EQ(side.end(), Vec2(25, 25));
}

// What is folded in is as wide as the edge it is folded at.
TEST(SideSeam, aFacingIsAsWideAsTheLowerEdge) {
  const Design d = aBody(SideSeam::Straight, 45);
  const Path faced = sideOf(Design(d).choose(Choice::Hem, HemMade::Faced).set(Field::HemDepth, 3));
  EXPECT_DOUBLE_EQ(faced.start().x(), sideOf(d).start().x());
  EXPECT_NEAR(xAtHeight(faced, 2), faced.start().x(), 1e-12);
  EXPECT_EQ(faced.end(), Vec2(25, 48));
}

TEST(SideSeam, takesTheShareOfThePiece) {
  const Design d = aBody(SideSeam::Straight, 45);
  const Sizes s = complete(d);
  const BodiceHeights at = draftBodice(s).at;
  EXPECT_NEAR(sideSeam(s, at, 0.52).end().x() + sideSeam(s, at, 0.48).end().x(), 50, 1e-12);
}

Design aSleeve(SleeveLine line) {
  Design d;
  for (Field ease :
       {Field::EaseArmholeDepth, Field::EaseUpperArm, Field::EaseElbow, Field::EaseWrist})
    d.set(ease, 0);
  d.choose(Choice::SleeveLine, line);
  return d.set(Field::UpperArm, 32)
      .set(Field::Elbow, 28)
      .set(Field::Wrist, 18)
      .set(Field::SleeveToUnderarm, 44)
      .set(Field::CuffDepth, 5)
      .set(Field::CuffGirth, 50);
}

SleeveBody bodyOf(const Design& d, double capHeight = 13) {
  return sleeveBody(complete(d), capHeight);
}

TEST(Sleeve, widthsAreThoseOfTheArm) {
  const SleeveBody tapered = bodyOf(aSleeve(SleeveLine::Tapered));
  EXPECT_EQ(tapered.halfWidth, 16);
  EXPECT_EQ(tapered.halfCuff, 9);
  EXPECT_EQ(tapered.length, 44);
  EXPECT_EQ(bodyOf(aSleeve(SleeveLine::Straight)).halfCuff, 16);
  EXPECT_EQ(bodyOf(aSleeve(SleeveLine::Flared)).halfCuff, 25);
  EXPECT_EQ(bodyOf(aSleeve(SleeveLine::Fitted)).halfCuff, 9);
}

TEST(Sleeve, aShorterOneEndsWhereTheLongOneIsThatWide) {
  EXPECT_NEAR(bodyOf(aSleeve(SleeveLine::Tapered).set(Field::SleeveLength, 22)).halfCuff, 12.5,
              1e-12);
  EXPECT_NEAR(bodyOf(aSleeve(SleeveLine::Fitted).set(Field::SleeveLength, 22)).halfCuff, 14, 1e-12);
  EXPECT_NEAR(bodyOf(aSleeve(SleeveLine::Fitted).set(Field::SleeveLength, 33)).halfCuff, 11.5,
              1e-12);
  EXPECT_NEAR(bodyOf(aSleeve(SleeveLine::Tapered).set(Field::SleeveLength, 60)).halfCuff, 9, 1e-12)
      << "never narrower than the wrist";
}

TEST(Sleeve, fittedForearmIsAsWideAsTheElbowHalfway) {
  const Design d = aSleeve(SleeveLine::Fitted);
  const Path seam = sleeveSeam(complete(d), bodyOf(d));
  EXPECT_NEAR(xAtHeight(seam, 22), 14, 1e-12);
  EXPECT_NEAR(xAtHeight(seam, 5), 9, 1e-12) << "the cuff is even";
  EXPECT_EQ(seam.end(), Vec2(16, 44));
}

// From the elbow say: tapered above, and only below as wide as its edge.
TEST(Sleeve, aFlareBeginsWhereSheWantsIt) {
  Design d = aSleeve(SleeveLine::Flared);
  const Path whole = sleeveSeam(complete(d), bodyOf(d));
  EXPECT_NEAR(xAtHeight(whole, 22), 25 - 9 * 22 / (44 - kUnderarmEven), 1e-12);
  d.set(Field::FlareFrom, 22);
  const Path seam = sleeveSeam(complete(d), bodyOf(d));
  EXPECT_EQ(seam.start(), Vec2(25, 0));
  EXPECT_NEAR(xAtHeight(seam, 22), 12.5, 1e-12)
      << "half way down the arm, between 32 and 18 around";
  EXPECT_NEAR(xAtHeight(seam, 11), 0.5 * (25 + 12.5), 1e-12);
  EXPECT_EQ(seam.end(), Vec2(16, 44));
}

TEST(Sleeve, aFullOneStandsOutAboveItsCuff) {
  Design d = aSleeve(SleeveLine::Full);
  d.set(Field::CuffGirth, 20).set(Field::FullGirth, 48);
  const Path seam = sleeveSeam(complete(d), bodyOf(d));
  EXPECT_EQ(seam.start(), Vec2(10, 0));
  EXPECT_EQ(seam.segments()[1].start(), Vec2(10, 5));
  EXPECT_EQ(seam.segments()[1].end(), Vec2(24, 5));
  EXPECT_EQ(seam.end(), Vec2(16, 44));
  EXPECT_EQ(bodyOf(d.set(Field::FullGirth, 12)).halfFull, 10) << "never narrower than its cuff";
}

// The cuff of a full sleeve lies about the arm where it ends: a short puff's near the upper arm's
// girth.
TEST(Sleeve, aFullOneEndsInACuffForItsPlaceOnTheArm) {
  Design d = aSleeve(SleeveLine::Full).clear(Field::CuffGirth);
  EXPECT_DOUBLE_EQ(2 * bodyOf(d).halfCuff, 18);
  EXPECT_DOUBLE_EQ(2 * bodyOf(d.set(Field::SleeveLength, 11)).halfCuff, 32 - 0.25 * (32 - 18));
}

TEST(Sleeve, measuredFromTheShoulderLosesTheCapHeight) {
  Design d = aSleeve(SleeveLine::Tapered);
  d.choose(Choice::SleeveFrom, SleeveFrom::Shoulder).set(Field::SleeveToShoulder, 58);
  EXPECT_DOUBLE_EQ(bodyOf(d, 13).length, 45);
  EXPECT_DOUBLE_EQ(bodyOf(d, 14.5).length, 43.5);
  d.set(Field::SleeveLength, 30);
  EXPECT_DOUBLE_EQ(bodyOf(d, 13).length, 30) << "a length she set holds";
}

TEST(Sleeve, aTinySleeveKeepsHalfItsLengthForTheCuff) {
  EXPECT_DOUBLE_EQ(bodyOf(aSleeve(SleeveLine::Straight).set(Field::SleeveLength, 6)).cuff, 3);
}

} // namespace
} // namespace scye
