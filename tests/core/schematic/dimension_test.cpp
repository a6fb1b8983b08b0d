#include "schematic/dimension.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

const Label& only(const Group& g) {
  return g.labels.front();
}

TEST(Dimensions, StandAboveTheirLineAndReadFromBelowOrFromTheRight) {
  Group g;
  Dimensions d(g, 1);
  d.level({{20, 0}, {0, 0}, "20 cm", {}, Role::Measure}, {-3}); // either way round
  EXPECT_EQ(only(g).angle, 0);
  EXPECT_GT(only(g).at.y(), -3);
  EXPECT_NEAR(only(g).at.x(), 10, 1e-9);
  d.upright({{0, 30}, {0, 0}, "30 cm", {}, Role::Measure}, {-4});
  EXPECT_NEAR(g.labels.back().angle, 90, 1e-9);
  EXPECT_LT(g.labels.back().at.x(), -4);
}

TEST(Dimensions, TakeTheNextLaneWhereAFigureStandsAlready) {
  Group g;
  Dimensions d(g, 1);
  d.level({{0, 0}, {6, 0}, "6 cm", {}, Role::Measure}, {-2, -5});
  d.level({{0, 0}, {6, 0}, "6 cm", {}, Role::Measure}, {-2, -5});
  ASSERT_EQ(g.labels.size(), 2u);
  EXPECT_LT(g.labels[1].at.y(), -4);
}

TEST(Dimensions, PutAFigureThatDoesNotFitBesideItsArrows) {
  Group g;
  Dimensions d(g, 1);
  d.level({{0, 0}, {2, 0}, "2 cm", Field::HemDepth, Role::Measure}, {-2});
  EXPECT_GT(labelBox(only(g)).low.x(), 2);
  ASSERT_EQ(g.hotSpots.size(), 1u);
  EXPECT_EQ(g.hotSpots.front().field, Field::HemDepth);
}

// Of a small piece, one dimension over the other: the lower one's figure, put above its arrows,
// would stand beside the upper one's line, and the two be taken for one another.
TEST(Dimensions, AFigureBeyondItsArrowsDoesNotStandBesideTheNextLine) {
  Group g;
  Dimensions d(g, 1);
  const double heights[] = {0, 3, 5};
  for (std::size_t i = 0; i < 2; ++i)
    d.upright({{0, heights[i]}, {0, heights[i + 1]}, "36.7 cm", {}, Role::Measure}, {-4, -8, -12});
  ASSERT_EQ(g.labels.size(), 2u);
  for (std::size_t i = 0; i < 2; ++i) {
    const Box figure = labelBox(g.labels[i]), other = labelBox(g.labels[1 - i]);
    const bool sameLane = std::abs(g.labels[i].at.x() - g.labels[1 - i].at.x()) < 2;
    const bool beside = figure.high.y() > heights[1 - i] && figure.low.y() < heights[2 - i];
    EXPECT_FALSE(sameLane && beside) << i;
    EXPECT_TRUE(figure.high.x() < other.low.x() || other.high.x() < figure.low.x());
  }
}

TEST(Dimensions, MoveAFigureAlongItsLineOffAnOutline) {
  Group g;
  Dimensions d(g, 1);
  d.avoid(Path::polyline({{20, -10}, {20, 10}}));
  d.level({{0, 0}, {40, 0}, "40 cm", {}, Role::Measure}, {0});
  const Box box = labelBox(only(g));
  EXPECT_TRUE(box.low.x() > 20 || box.high.x() < 20);
}

TEST(Dimensions, ReachFromTheFeatureToTheLine) {
  Group g;
  Dimensions d(g, 1);
  d.upright({{10, 0}, {4, 30}, "30 cm", {}, Role::Measure}, {-5});
  Box box;
  for (const Stroke& s : g.strokes)
    box.add(s.path);
  EXPECT_GT(box.high.x(), 9); // the extension line starts at the feature
  EXPECT_NEAR(box.low.x(), -5.35, 1e-9);
}

} // namespace
} // namespace scye
