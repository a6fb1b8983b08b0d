#include "draft/armhole.h"

#include <gtest/gtest.h>

#include <cmath>

namespace scye {
namespace {

ArmholeShape anArmhole() {
  return {.halfBust = 24.5,
          .underarm = 2.5,
          .halfCross = 18.5,
          .halfShoulder = 18.5,
          .depth = 20,
          .rise = 0.4};
}

// Length of a quarter ellipse, a E(k), DLMF 19.30.
double quarterEllipse(double a, double b) {
  const double longer = std::max(a, b), shorter = std::min(a, b);
  return longer * std::comp_ellint_2(std::sqrt(1 - shorter * shorter / (longer * longer)));
}

TEST(Armhole, runsFromTheUnderarmSeamToTheShoulderTip) {
  const ArmholeShape a = anArmhole();
  const Path flat = underarmFlat(a), curve = armholeCurve(a);
  EXPECT_EQ(flat.start(), Vec2(24.5, 0));
  EXPECT_EQ(flat.end(), Vec2(22, 0));
  EXPECT_EQ(curve.start(), flat.end());
  EXPECT_EQ(curve.end(), Vec2(18.5, 20));
  EXPECT_DOUBLE_EQ(a.away(), 6);
}

TEST(Armhole, leavesLevelAndArrivesUpright) {
  const Cubic c = armholeCurve(anArmhole()).segments().front();
  EXPECT_LT(c.derivative(0).x(), 0);
  EXPECT_EQ(c.derivative(0).y(), 0);
  EXPECT_NEAR(c.derivative(1).x(), 0, 1e-12);
  EXPECT_GT(c.derivative(1).y(), 0);
  EXPECT_EQ(c.end(), Vec2(18.5, 8)) << "the curve ends at the rise share of the depth";
}

// A scoop of 0.5523 draws the quarter ellipse to 0.03 % of its length.
TEST(Armhole, scoopOfTheCircleIsAQuarterEllipse) {
  for (double rise : {0.2, 0.35, 0.5, 0.65})
    for (double away : {4.5, 6.0, 9.0}) {
      ArmholeShape a = anArmhole();
      a.rise = rise, a.halfBust = a.halfCross + away;
      const double across = away - a.underarm, up = rise * a.depth;
      const double exact = a.underarm + quarterEllipse(across, up) + a.depth - up;
      EXPECT_NEAR(length(armholeCurve(a).segments().front()), quarterEllipse(across, up),
                  3e-4 * quarterEllipse(across, up));
      EXPECT_NEAR(armholeEdge(a), exact, 3e-4 * exact);
    }
}

// Nearer to its corner the curve is longer, nearer to its chord shorter.
TEST(Armhole, deeperScoopIsALongerEdge) {
  ArmholeShape a = anArmhole();
  double before = 0;
  for (double k = 0.3; k <= 0.9; k += 0.1) {
    a.scoop = k;
    const double edge = armholeEdge(a);
    EXPECT_GT(edge, before);
    EXPECT_GT(edge, 2.5 + std::hypot(3.5, 8) + 12);
    EXPECT_LT(edge, 6 + 20);
    before = edge;
  }
}

TEST(Armhole, edgeGrowsWithDepth) {
  ArmholeShape a = anArmhole();
  const double before = armholeEdge(a);
  a.depth += 1;
  EXPECT_GT(armholeEdge(a), before + 0.8);
  EXPECT_LT(armholeEdge(a), before + 1);
}

TEST(Armhole, slopesBackOutToAWiderShoulder) {
  ArmholeShape a = anArmhole();
  a.halfShoulder = 20;
  const auto segments = armholeCurve(a).segments();
  ASSERT_EQ(segments.size(), 3u);
  EXPECT_EQ(segments[1].end(), Vec2(18.5, 10)) << "upright to half the depth";
  EXPECT_EQ(segments[2].end(), Vec2(20, 20));
  a.rise = 0.6;
  const Path high = armholeCurve(a);
  ASSERT_EQ(high.segments().size(), 2u);
  EXPECT_TRUE(high.segments()[1].start().isApprox(Vec2(18.5, 12))) << "from where the curve ends";
}

TEST(Armhole, underarmThatIsTooWideIsDrawnShorter) {
  ArmholeShape a = anArmhole();
  a.underarm = 9;
  EXPECT_DOUBLE_EQ(a.curveStart(), a.halfCross + kLeastCurve);
  EXPECT_EQ(underarmFlat(a).end(), armholeCurve(a).start());
}

} // namespace
} // namespace scye
