#include "draft/neckline.h"

#include <gtest/gtest.h>

#include <cmath>

namespace scye {
namespace {

constexpr Neckline kShapes[] = {Neckline::Round, Neckline::Vee, Neckline::Square, Neckline::Boat};
constexpr NeckHalf kNeck{.from = 1.25, .halfWidth = 9, .low = 45, .high = 55};

TEST(Neckline, runsFromTheNeckPointToItsLowestPoint) {
  for (Neckline shape : kShapes) {
    const Path neck = frontNeck(shape, kNeck);
    EXPECT_EQ(neck.start(), Vec2(9, 55)) << int(shape);
    EXPECT_EQ(neck.end(), Vec2(1.25, 45)) << int(shape);
  }
  const NeckHalf back{.from = 0, .halfWidth = 9, .low = 53, .high = 55};
  EXPECT_EQ(backNeck(back).start(), Vec2(9, 55));
  EXPECT_EQ(backNeck(back).end(), Vec2(0, 53));
}

TEST(Neckline, staysWithinItsCornerAndBehindItsChord) {
  const double chord = std::hypot(7.75, 10);
  for (Neckline shape : kShapes) {
    const Path neck = frontNeck(shape, kNeck);
    EXPECT_GE(neck.length(), chord - 1e-12);
    EXPECT_LE(neck.length(), 7.75 + 10 + 1e-12);
    for (const Vec2& p : neck.flattened()) {
      EXPECT_GE(p.x(), 1.25 - 1e-12);
      EXPECT_LE(p.x(), 9 + 1e-12);
      EXPECT_GE(p.y(), 45 - 1e-12);
      EXPECT_LE(p.y(), 55 + 1e-12);
    }
  }
}

TEST(Neckline, veeIsStraightAndSquareHasOneCorner) {
  EXPECT_NEAR(frontNeck(Neckline::Vee, kNeck).length(), std::hypot(7.75, 10), 1e-12);
  EXPECT_NEAR(frontNeck(Neckline::Square, kNeck).length(), 17.75, 1e-12);
}

TEST(Neckline, roundIsLevelBelowAndUprightAbove) {
  const auto segments = frontNeck(Neckline::Round, kNeck).segments();
  ASSERT_EQ(segments.size(), 3u); // down, the curve, across
  EXPECT_EQ(segments[0].start().x(), segments[0].end().x());
  EXPECT_EQ(segments[2].start().y(), segments[2].end().y());
  EXPECT_NEAR(segments[1].derivative(0).x(), 0, 1e-12);
  EXPECT_NEAR(segments[1].derivative(1).y(), 0, 1e-12);
}

TEST(Neckline, withoutWidthOrDepthIsALine) {
  for (Neckline shape : kShapes) {
    const NeckHalf flat{.from = 0, .halfWidth = 9, .low = 55, .high = 55};
    EXPECT_NEAR(frontNeck(shape, flat).length(), 9, 1e-12);
    const NeckHalf closed{.from = 3, .halfWidth = 3, .low = 45, .high = 55};
    EXPECT_NEAR(frontNeck(shape, closed).length(), 10, 1e-12);
  }
  EXPECT_NEAR(backNeck({.from = 0, .halfWidth = 9, .low = 55, .high = 55}).length(), 9, 1e-12);
}

} // namespace
} // namespace scye
