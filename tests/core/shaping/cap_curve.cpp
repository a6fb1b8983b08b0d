// The half cap's edge against the general path code, finite differences and closed forms.
#include "curve/cap_curve.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <random>

namespace scye {
namespace {

CapShape randomCap(std::mt19937& rng) {
  std::uniform_real_distribution<double> unit(0, 1);
  CapShape shape{.halfWidth = 8 + 14 * unit(rng), .underarm = 0.5 + 4 * unit(rng)};
  shape.crownHalf = 1 + 3 * unit(rng);
  shape.lowerFullness = 0.1 + 0.7 * unit(rng);
  shape.upperFullness = 0.1 + 0.7 * unit(rng);
  shape.lean = unit(rng) - 0.5;
  return shape;
}

TEST(CapCurve, edgeIsTheCubicsLengthAndTheFlats) {
  std::mt19937 rng(11);
  for (int i = 0; i < 300; ++i) {
    const CapShape shape = randomCap(rng);
    const double height = std::uniform_real_distribution<double>(0.01, 30)(rng);
    const Cubic curve = capCurve(shape, height);
    EXPECT_NEAR(curve.start().x() - curve.end().x(), shape.span(), 1e-12);
    EXPECT_NEAR(capEdge(shape, height).first, length(curve) + shape.underarm + shape.crownHalf,
                1e-10);
  }
}

TEST(CapCurve, derivativeIsThatOfTheLength) {
  std::mt19937 rng(12);
  for (int i = 0; i < 300; ++i) {
    const CapShape shape = randomCap(rng);
    const double height = std::uniform_real_distribution<double>(1, 30)(rng), d = 1e-4;
    const double slope = capEdge(shape, height).second;
    const double centred =
        (capEdge(shape, height + d).first - capEdge(shape, height - d).first) / (2 * d);
    EXPECT_NEAR(slope, centred, 2e-7);
    EXPECT_GT(slope, 0);
    EXPECT_LT(slope, 1);
  }
}

TEST(CapCurve, limitsAreExact) {
  const CapShape flat{.halfWidth = 17, .underarm = 2.5, .crownHalf = 3.5};
  EXPECT_NEAR(capEdge(flat, 0).first, 17, 1e-12);
  EXPECT_NEAR(capEdge(flat, 0).second, 0, 1e-12);
  const CapShape upright{.halfWidth = 6, .underarm = 2.5, .crownHalf = 3.5};
  EXPECT_NEAR(capEdge(upright, 13).first, 19, 1e-12);
  EXPECT_NEAR(capEdge(upright, 13).second, 1, 1e-12);
}

TEST(CapCurve, solvedHeightGivesTheTarget) {
  std::mt19937 rng(13);
  for (int i = 0; i < 300; ++i) {
    CapShape back = randomCap(rng), front = back;
    front.lean = -back.lean;
    front.underarm = back.underarm * 0.8;
    const double height = std::uniform_real_distribution<double>(1, 25)(rng);
    const double target = capEdge(back, height).first + capEdge(front, height).first;
    const RootSummary solved = solveCapHeight(std::array{back, front}, target);
    ASSERT_TRUE(solved.ok());
    EXPECT_NEAR(solved.x, height, 1e-9);
  }
}

TEST(CapCurve, noHeightShortensTheEdgeBelowTheFlatSleeve) {
  const CapShape half{.halfWidth = 20, .underarm = 2.5, .crownHalf = 3.5};
  EXPECT_EQ(solveCapHeight(std::array{half, half}, 39.9).status, RootStatus::NoSignChange);
  EXPECT_EQ(solveCapHeight(std::array{half, half}, 5).status, RootStatus::NoSignChange);
  EXPECT_TRUE(solveCapHeight(std::array{half, half}, 40.1).ok());
}

} // namespace
} // namespace scye
