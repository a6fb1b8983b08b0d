// Our starting values against what printed patterns do with the same width and depth.
// Sources: "A Serviceable Sweater", Handbook of Wool Knitting and Crochet, 1918 (Project Gutenberg
// 26113): 5 stitches and 7 rows to the inch; two printed patterns of 5.5 x 7 and 6.5 x 8 to the
// inch.
#include "draft/armhole.h"
#include "draft/complete.h"
#include "model/units.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

struct PrintedBack {
  double perInch, rowsPerInch;
  int stitches, boundOff, afterArmhole, neck; // bound off: on each side, at once
  double armholeInches;
};
constexpr PrintedBack kBacks[] = {
    {5.5, 7, 100, 6, 78, 26, 8.5},  {5.5, 7, 106, 6, 84, 28, 8.75}, {5.5, 7, 112, 6, 90, 30, 9},
    {5.5, 7, 118, 6, 96, 32, 9.25}, {5.5, 7, 124, 6, 102, 34, 9.5}, {6.5, 8, 110, 6, 82, 30, 7},
};

double centimetres(const PrintedBack& p, double stitches) {
  return kCmPerInch * stitches / p.perInch;
}

Sizes ourSizes(const PrintedBack& p) {
  Design d;
  for (Field ease : {Field::EaseBust, Field::EaseArmholeDepth, Field::EaseCrossShoulder})
    d.set(ease, 0);
  d.set(Field::Bust, centimetres(p, 2 * p.stitches));
  d.set(Field::CrossShoulder, centimetres(p, p.afterArmhole));
  d.set(Field::CrossBack, centimetres(p, p.afterArmhole));
  d.set(Field::ArmholeDepth, kCmPerInch * p.armholeInches, Source::Garment);
  return complete(
      d.set(Field::SwatchStitches, 4 * p.perInch).set(Field::SwatchWidth, 4 * kCmPerInch));
}

// Six stitches at once in every one of them; ours come within a stitch and a quarter.
TEST(PrintedPatterns, underarmBindOffIsNearThePrintedOne) {
  for (const PrintedBack& p : kBacks) {
    const double ours = ourSizes(p)[Field::UnderarmBack] / centimetres(p, 1);
    EXPECT_NEAR(ours, p.boundOff, 1.25) << p.stitches << " stitches";
    EXPECT_GE(centimetres(p, p.boundOff), 2.3 - 0.05) << "common practice: 2.3 to 2.8 cm";
    EXPECT_LE(centimetres(p, p.boundOff), 2.8 + 0.05);
  }
}

// The neck: a third of the cross-back and a little more. Ours is the finished one, inside its band.
TEST(PrintedPatterns, neckIsAboutAsWideAsThePrintedOnes) {
  for (const PrintedBack& p : kBacks) {
    const double ours = ourSizes(p)[Field::NeckWidth] / centimetres(p, p.afterArmhole);
    EXPECT_NEAR(ours, double(p.neck) / p.afterArmhole, 0.03) << p.stitches << " stitches";
  }
  constexpr double kNeck1918 = 25.0 / 63;
  EXPECT_NEAR(ourSizes(kBacks[0])[Field::NeckWidth] / centimetres(kBacks[0], 78), kNeck1918, 0.04);
}

// One stitch a side on every second row after the bind-off: how high that reaches.
TEST(PrintedPatterns, armholeCurveEndsAboutWherePrintedDecreasesEnd) {
  for (const PrintedBack& p : kBacks) {
    const int decreases = (p.stitches - 2 * p.boundOff - p.afterArmhole) / 2;
    const double printed = (2 + 2 * decreases) / p.rowsPerInch / p.armholeInches;
    EXPECT_GE(ourSizes(p)[Field::RiseShare], printed - 0.05) << p.stitches << " stitches";
    EXPECT_LE(ourSizes(p)[Field::RiseShare], printed + 0.2) << p.stitches << " stitches";
  }
}

// The sweater of 1918: back 79 stitches, two at a time off both sides in eight rows, 63 left, 56
// rows to the shoulder. Smoothed along its chords that edge is 8.82 in. A drafted curve through the
// same corner points bulges a little: it is longer, by no more than 4 %.
TEST(PrintedPatterns, draftedArmholeIsAsLongAsThatOf1918) {
  const double inch = kCmPerInch, rise = 8.0 / 56;
  const ArmholeShape back{.halfBust = 0.5 * 79 / 5 * inch,
                          .underarm = 0,
                          .halfCross = 0.5 * 63 / 5 * inch,
                          .halfShoulder = 0.5 * 63 / 5 * inch,
                          .depth = 56.0 / 7 * inch,
                          .rise = rise,
                          .scoop = 0.55};
  const double printed = 8.82 * inch, chord = (std::hypot(8.0 / 5, 8.0 / 7) + 48.0 / 7) * inch;
  EXPECT_NEAR(chord, printed, 0.01 * inch) << "the figure itself";
  EXPECT_GT(armholeEdge(back), printed);
  EXPECT_LT(armholeEdge(back), 1.04 * printed);
}

} // namespace
} // namespace scye
