#include "curve/cap_curve.h"

#include "support/random_designs.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace scye {
namespace {

CapShape anyCap(test::RandomDesigns& random) {
  CapShape c;
  c.underarm = random.uniform(0, 5);
  c.crownHalf = random.uniform(0.25, 5);
  c.halfWidth = c.underarm + c.crownHalf + random.uniform(1, 20);
  c.lowerFullness = random.uniform(info(Field::LowerFullness).low, info(Field::LowerFullness).high);
  c.upperFullness = random.uniform(info(Field::UpperFullness).low, info(Field::UpperFullness).high);
  return c;
}

TEST(CapShape, curveLeavesAndArrivesLevel) {
  const CapShape shape{.halfWidth = 16,
                       .underarm = 2.5,
                       .crownHalf = 3.5,
                       .lowerFullness = 0.45,
                       .upperFullness = 0.55};
  const Cubic c = capCurve(shape, 12);
  EXPECT_EQ(c.start(), Vec2(13.5, 0));
  EXPECT_EQ(c.end(), Vec2(3.5, 12));
  EXPECT_LT(c.derivative(0).x(), 0);
  EXPECT_EQ(c.derivative(0).y(), 0);
  EXPECT_LT(c.derivative(1).x(), 0);
  EXPECT_NEAR(c.derivative(1).y(), 0, 1e-12);
  EXPECT_NEAR(c.p[0].x() - c.p[1].x(), 0.45 * 10, 1e-12);
  EXPECT_NEAR(c.p[2].x() - c.p[3].x(), 0.55 * 10, 1e-12);
}

// a + b <= 1 + sqrt(ab) holds for all fullnesses that may be set, so x never turns back.
TEST(CapShape, edgeNeverTurnsBackWhateverTheFullness) {
  const FieldInfo &lower = info(Field::LowerFullness), &upper = info(Field::UpperFullness);
  for (double a = lower.low; a <= lower.high + 1e-9; a += 0.05)
    for (double b = upper.low; b <= upper.high + 1e-9; b += 0.05) {
      CapShape shape{.halfWidth = 16, .underarm = 2.5, .crownHalf = 3.5};
      shape.lowerFullness = a, shape.upperFullness = b;
      const Cubic c = capCurve(shape, 12);
      for (int i = 0; i <= 100; ++i)
        ASSERT_LE(c.derivative(i / 100.0).x(), 1e-9) << a << " " << b;
    }
}

TEST(CapEdge, atNoHeightIsHalfTheWidth) {
  const CapShape shape{.halfWidth = 16, .underarm = 2.5, .crownHalf = 3.5};
  EXPECT_NEAR(capEdge(shape, 0).first, 16, 1e-12);
}

TEST(CapEdge, withoutASpanIsTheHeight) {
  const CapShape shape{.halfWidth = 6, .underarm = 2.5, .crownHalf = 3.5};
  EXPECT_NEAR(capEdge(shape, 9).first, 6 + 9, 1e-11);
  EXPECT_NEAR(capEdge(shape, 9).second, 1, 1e-11);
}

TEST(CapEdge, growsWithHeightAndEverFaster) {
  const auto seed = test::propertySeed(1201);
  test::RandomDesigns random(seed);
  for (int i = 0; i < 500; ++i) {
    const CapShape shape = anyCap(random);
    double before = capEdge(shape, 0).first, slopeBefore = 0;
    for (int k = 1; k <= 40; ++k) {
      const double height = 0.5 * k;
      const auto [edge, slope] = capEdge(shape, height);
      ASSERT_GT(edge, before);
      ASSERT_GE(slope, slopeBefore - 1e-11);
      ASSERT_LE(slope, 1 + 1e-11) << "no edge grows faster than the height";
      ASSERT_GE(edge, shape.underarm + shape.crownHalf + std::hypot(shape.span(), height) - 1e-9);
      ASSERT_LE(edge, shape.underarm + shape.crownHalf + shape.span() + height + 1e-9);
      before = edge, slopeBefore = slope;
    }
  }
}

TEST(CapEdge, slopeIsThatOfTheEdge) {
  const auto seed = test::propertySeed(1202);
  test::RandomDesigns random(seed);
  for (int i = 0; i < 500; ++i) {
    const CapShape shape = anyCap(random);
    const double height = random.uniform(0.5, 20), d = 1e-5;
    EXPECT_NEAR(capEdge(shape, height).second,
                (capEdge(shape, height + d).first - capEdge(shape, height - d).first) / (2 * d),
                1e-8);
  }
}

TEST(SolveCapHeight, givesTheHeightBack) {
  const auto seed = test::propertySeed(1203);
  test::RandomDesigns random(seed);
  int most = 0;
  for (int i = 0; i < 2000; ++i) {
    const std::array halves{anyCap(random), anyCap(random)};
    const double height = random.uniform(1, 25);
    const double target = capEdge(halves[0], height).first + capEdge(halves[1], height).first;
    const RootSummary r = solveCapHeight(halves, target);
    ASSERT_TRUE(r.ok());
    ASSERT_NEAR(r.x, height, 1e-9);
    most = std::max(most, r.iterations);
  }
  RecordProperty("mostIterations", most);
  EXPECT_LE(most, 20);
}

TEST(SolveCapHeight, saysWhenTheSleeveIsTooWide) {
  const CapShape shape{.halfWidth = 16, .underarm = 2.5, .crownHalf = 3.5};
  EXPECT_EQ(solveCapHeight(std::array{shape, shape}, 31.9).status, RootStatus::NoSignChange);
  EXPECT_EQ(solveCapHeight(std::array{shape, shape}, 5).status, RootStatus::NoSignChange);
  EXPECT_FALSE(solveCapHeight({}, 40).ok());
}

} // namespace
} // namespace scye
