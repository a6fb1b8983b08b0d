#include "seam/hang.h"

#include <gtest/gtest.h>

namespace scye::sleeve_hang {
namespace {

// Common practice: cap height over armhole depth, adults' mostly 0.6 to 0.75.
TEST(SleeveHang, goesFromStandingOutToStraight) {
  EXPECT_EQ(hangOf(0.3), Hang::StandsOut);
  EXPECT_EQ(hangOf(0.499), Hang::StandsOut);
  EXPECT_EQ(hangOf(0.5), Hang::Easy);
  EXPECT_EQ(hangOf(0.6), Hang::Usual);
  EXPECT_EQ(hangOf(0.66), Hang::Usual);
  EXPECT_EQ(hangOf(0.75), Hang::Close);
  EXPECT_EQ(hangOf(0.8), Hang::Straight);
  EXPECT_EQ(hangOf(1.1), Hang::Straight);
}

TEST(SleeveHang, isTheCapsHeightOverTheArmholesDepth) {
  const GarmentDraft g = draftGarment(
      Design().choose(Choice::WorkedOut, WorkedOut::CapEase).set(Field::CapHeight, 12));
  EXPECT_NEAR(sleeveHang(g).share, 12 / g.sizes.finished(Field::ArmholeDepth), 1e-12);
}

// A usual garment hangs as usual (common practice: armhole depth less 5 to 10 cm, 0.6 to 0.75).
TEST(SleeveHang, ofStartingValuesIsUsualOrClose) {
  for (const double bust : {80.0, 92.0, 110.0}) {
    const SleeveHang hang = sleeveHang(draftGarment(Design().set(Field::Bust, bust)));
    EXPECT_GE(hang.share, 0.5) << bust;
    EXPECT_LE(hang.share, 0.8) << bust;
  }
}

// Gathers lift the crown, not the arm's seam: a puff hangs as the sleeve does without it.
TEST(SleeveHang, ofAGatheredCapIsThatOfTheCapWithoutGathers) {
  const Design smooth = Design().set(Field::Bust, 90).set(Field::CapEase, 1);
  const SleeveHang plain = sleeveHang(draftGarment(smooth));
  EXPECT_FALSE(plain.undrawn);
  for (const double ease : {4.0, 9.0}) {
    const GarmentDraft puff = draftGarment(
        Design(smooth).choose(Choice::CapTop, CapTop::Gathered).set(Field::CapEase, ease));
    const SleeveHang hang = sleeveHang(puff);
    EXPECT_TRUE(hang.undrawn);
    EXPECT_NEAR(hang.share, plain.share, 1e-6);
    EXPECT_GT(puff.cap.height / puff.bodice.back.depth, hang.share + 0.02);
  }
}

TEST(SleeveHang, isToldWithItsFigure) {
  EXPECT_EQ(hangText({0.66, false, Hang::Usual}, builtinPhrases()),
            "Cap 0.66 of the armhole depth: " + builtinPhrases().say("hang.usual"));
}

TEST(SleeveHang, hasWords) {
  for (int h = 0; h <= int(Hang::Straight); ++h)
    EXPECT_TRUE(builtinPhrases().has("hang." + std::string(hangKey(Hang(h)))));
}

} // namespace
} // namespace scye::sleeve_hang
