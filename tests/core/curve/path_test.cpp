#include "curve/path.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

namespace scye {
namespace {

Cubic someCubic(std::mt19937_64& rng) {
  std::uniform_real_distribution<double> at(-20, 20);
  Cubic c;
  for (Vec2& p : c.p)
    p = Vec2(at(rng), at(rng));
  return c;
}

TEST(Cubic, lineRunsEvenlyFromEndToEnd) {
  const Cubic line = Cubic::line({1, 2}, {4, 6});
  EXPECT_TRUE(line.isStraight());
  EXPECT_TRUE(line.at(0.25).isApprox(Vec2(1.75, 3)));
  EXPECT_TRUE(line.derivative(0.9).isApprox(Vec2(3, 4)));
  EXPECT_DOUBLE_EQ(length(line), 5);
}

TEST(Cubic, aBendIsNotStraight) {
  EXPECT_FALSE((Cubic{{Vec2(0, 0), Vec2(1, 1e-3), Vec2(2, 0), Vec2(3, 0)}}.isStraight()));
}

TEST(Cubic, derivativeIsTheLimitOfTheChord) {
  std::mt19937_64 rng(1);
  for (int i = 0; i < 50; ++i) {
    const Cubic c = someCubic(rng);
    const double t = double(i) / 50, d = 1e-6;
    EXPECT_LT((c.derivative(t) - (c.at(t + d) - c.at(t - d)) / (2 * d)).norm(), 1e-6);
  }
}

TEST(Cubic, halvesOfASplitAreTheWhole) {
  std::mt19937_64 rng(2);
  for (int i = 0; i < 50; ++i) {
    const Cubic c = someCubic(rng);
    const auto [a, b] = c.split(0.3);
    EXPECT_TRUE(a.end().isApprox(c.at(0.3)));
    EXPECT_TRUE(a.at(0.5).isApprox(c.at(0.15)));
    EXPECT_TRUE(b.at(0.5).isApprox(c.at(0.65)));
    EXPECT_NEAR(length(a) + length(b), length(c), 1e-10 * length(c));
    EXPECT_NEAR(length(c, 0.0, 0.3), length(a), 1e-10 * length(c));
  }
}

TEST(Cubic, reversedRunsBack) {
  std::mt19937_64 rng(3);
  const Cubic c = someCubic(rng);
  EXPECT_TRUE(c.reversed().at(0.2).isApprox(c.at(0.8)));
}

// Straight, but run over twice: 0 to 3, back to 1 (the turning points are where x' vanishes).
TEST(Cubic, straightLineThatTurnsBackIsLongerThanItsChord) {
  const Cubic c{{Vec2(0, 0), Vec2(6, 0), Vec2(-5, 0), Vec2(1, 0)}};
  double walked = 0;
  for (int i = 0; i < 200000; ++i)
    walked += (c.at((i + 1) / 2e5) - c.at(i / 2e5)).norm();
  EXPECT_GT(walked, 1.5);
  EXPECT_NEAR(length(c), walked, 1e-8);
}

TEST(Cubic, aCuspIsMeasuredToo) {
  // The arms cross so that the speed vanishes at t = 1/2: by symmetry twice the length of half of
  // it.
  const Cubic cusp{{Vec2(0, 0), Vec2(1, 1), Vec2(0, 1), Vec2(1, 0)}};
  EXPECT_LT(cusp.derivative(0.5).norm(), 1e-12);
  double walked = 0;
  for (int i = 0; i < 400000; ++i)
    walked += (cusp.at((i + 1) / 4e5) - cusp.at(i / 4e5)).norm();
  EXPECT_NEAR(length(cusp), walked, 1e-9);
}

TEST(Path, runsFromPointToPoint) {
  const Path square = Path::polyline({{0, 0}, {2, 0}, {2, 2}, {0, 2}, {0, 0}});
  EXPECT_EQ(square.segments().size(), 4u);
  EXPECT_DOUBLE_EQ(square.length(), 8);
  EXPECT_EQ(square.end(), square.start());
}

TEST(Path, leavesOutALineOfNoLength) {
  Path path(Vec2(1, 1));
  path.lineTo({1, 1});
  EXPECT_TRUE(path.empty());
  EXPECT_EQ(path.end(), Vec2(1, 1));
}

TEST(Path, joinsWhatIsAppendedByALine) {
  Path path(Vec2(0, 0));
  path.lineTo({1, 0});
  path.append(Path::polyline({{1, 2}, {4, 2}}));
  EXPECT_EQ(path.segments().size(), 3u);
  EXPECT_DOUBLE_EQ(path.length(), 6);
  EXPECT_EQ(path.end(), Vec2(4, 2));
}

TEST(Path, keepsItsStartWhenSomethingIsAppended) {
  Path path(Vec2(0, 0));
  path.append(Path::polyline({{3, 4}, {3, 5}}));
  EXPECT_EQ(path.start(), Vec2(0, 0));
  EXPECT_DOUBLE_EQ(path.length(), 6);
}

TEST(Path, keepsItsLengthWhenMovedMirroredOrReversed) {
  Path path(Vec2(1, 0));
  path.lineTo({2, 1}).cubicTo({3, 1}, {4, 2}, {4, 5});
  const double l = path.length();
  EXPECT_NEAR(path.moved({7, -3}).length(), l, 1e-12);
  EXPECT_NEAR(path.mirroredX().length(), l, 1e-12);
  EXPECT_NEAR(path.reversed().length(), l, 1e-12);
  EXPECT_EQ(path.reversed().start(), path.end());
  EXPECT_EQ(path.mirroredX().end(), Vec2(-4, 5));
  EXPECT_EQ(path.moved({7, -3}).start(), Vec2(8, -3));
}

TEST(Path, flattenedKeepsCornersAndEndsOnCurves) {
  Path path(Vec2(0, 0));
  path.lineTo({1, 0}).cubicTo({2, 0}, {2, 1}, {2, 2});
  const auto points = path.flattened(8);
  ASSERT_EQ(points.size(), 1 + 1 + 8u);
  EXPECT_EQ(points[1], Vec2(1, 0));
  EXPECT_EQ(points.back(), Vec2(2, 2));
}

TEST(Box, holdsWhatIsAdded) {
  Box box;
  EXPECT_TRUE(box.empty());
  EXPECT_EQ(box.size(), Vec2(0, 0));
  box.add(Box{});
  EXPECT_TRUE(box.empty());
  box.add(Path::polyline({{1, 5}, {-2, 3}}));
  EXPECT_EQ(box.low, Vec2(-2, 3));
  EXPECT_EQ(box.size(), Vec2(3, 2));
}

// The bulge of a quarter circle lies within 0.1 % of its size.
TEST(Box, seesTheBulgeOfACurve) {
  Path path(Vec2(0, -1));
  path.cubicTo({4.0 / 3, -1}, {4.0 / 3, 1}, {0, 1}); // bulges to x = 1
  Box box;
  box.add(path);
  EXPECT_NEAR(box.high.x(), 1, 1e-3 * 2);
}

} // namespace
} // namespace scye
