#include "shaping/edge_length.h"
#include "core/shaping/checks.h"
#include "shaping/runs.h"

#include <gtest/gtest.h>

#include <random>

namespace scye {
namespace {

// "A Serviceable Sweater", Handbook of Wool Knitting and Crochet, 1918 (public domain, Project
// Gutenberg 26113). 5 stitches and 7 rows to the inch. Back: bind off 2 at the beginning of 8 rows,
// 48 rows even to the shoulder. Front: 3, 3, 3, 1, 1 at the armhole in rows 120 to 128, worked to
// row 184. The sleeve is cast on along its cap edge: 97 stitches.
TEST(EdgeLength, printedSweaterOf1918Fits) {
  const StitchSize inch{1.0 / 5, 1.0 / 7};
  const auto bindOff = [](int k, int times) {
    return scye::Run{ShapingKind::BindOff, Stitches(k), Rows(2), times};
  };
  Schedule back{.underarm = Stitches(2), .runs = {bindOff(2, 3)}, .rows = Rows(8 + 48)};
  Schedule front{.underarm = Stitches(3), .runs = {bindOff(3, 2), bindOff(1, 2)}, .rows = Rows(64)};
  const double armhole =
      edgeLength(back, EdgeSide::Left, inch) + edgeLength(front, EdgeSide::Right, inch);
  EXPECT_NEAR(edgeLength(back, EdgeSide::Left, inch), 8.82, 0.01);
  EXPECT_NEAR(edgeLength(back, EdgeSide::Right, inch), 8.82, 0.01);
  const double cap = 97.0 / 5;
  EXPECT_NEAR(armhole / cap, 1, 0.025);
  EXPECT_NEAR(armhole / cap, 1, 0.002); // much nearer than asked: 19.39 in against 19.40
}

TEST(EdgeLength, ruleByHand) {
  const StitchSize size{0.5, 0.4};
  const KnittedEdge edge{.begin = 10,
                         .end = 30,
                         .events = {{10, Stitches(5), EventKind::Underarm},
                                    {12, Stitches(3), EventKind::BindOff},
                                    {14, Stitches(1), EventKind::Decrease},
                                    {20, Stitches(-1), EventKind::Increase}},
                         .flatTop = 4.5};
  const double wanted = 5 * 0.5 + 2 * 0.4 + std::hypot(1.5, 0.8) + std::hypot(0.5, 2.4) +
                        std::hypot(0.5, 4.0) + 4.5 * 0.5;
  EXPECT_NEAR(edgeLength(edge, size), wanted, 1e-12);
}

TEST(EdgeLength, edgeWithoutEventsIsStraight) {
  EXPECT_DOUBLE_EQ(edgeLength(KnittedEdge{.begin = 4, .end = 14}, {0.5, 0.4}), 4.0);
}

TEST(EdgeLength, crownLeavesOutBothSelvedges) {
  EXPECT_DOUBLE_EQ(crownHalfStitches(Stitches(15), Stitches(1)), 6.5);
  EXPECT_DOUBLE_EQ(crownHalfStitches(Stitches(15), Stitches(0)), 7.5);
}

Schedule randomSchedule(std::mt19937& rng) {
  const auto upTo = [&](int low, int high) {
    return std::uniform_int_distribution(low, high)(rng);
  };
  Schedule s{.underarm = Stitches(upTo(1, 9))};
  for (int i = upTo(1, 6); i > 0; --i) {
    if (upTo(0, 2) == 0)
      s.runs.push_back({ShapingKind::BindOff, Stitches(upTo(2, 5)), Rows(2), upTo(1, 4)});
    else
      s.runs.push_back({ShapingKind::Decrease, Stitches(1), Rows(2 * upTo(1, 4)), upTo(1, 7)});
  }
  if (upTo(0, 3) == 0)
    s.runs.push_back(
        {ShapingKind::Increase, Stitches(1), Rows(4), upTo(1, 3), Rows(2 * upTo(0, 4))});
  s.rows = s.shapedRows() + Rows(2 * upTo(1, 12));
  if (upTo(0, 1) == 0) s.crown = Stitches(upTo(6, 30));
  return s;
}

TEST(EdgeLength, schedulesAndTheirRowTablesAgree) {
  std::mt19937 rng(21);
  const double w = 0.45, h = 0.33;
  for (int i = 0; i < 500; ++i) {
    const Schedule s = randomSchedule(rng);
    const double top = s.crown > Stitches(0) ? 0.5 * (s.crown.value() - 2) : 0;
    EXPECT_NEAR(edgeLength(s, EdgeSide::Right, {w, h}, Stitches(1)),
                checks::rightLength(s, w, h, top), 1e-9);
    EXPECT_NEAR(edgeLength(s, EdgeSide::Left, {w, h}, Stitches(1)),
                checks::leftLength(s, w, h, top), 1e-9);
  }
}

TEST(EdgeLength, columnsAreReadBackAsTheSameEdge) {
  std::mt19937 rng(22);
  for (int i = 0; i < 300; ++i) {
    const Schedule s = randomSchedule(rng);
    const checks::Columns c = checks::knit(s, 60.5);
    const KnittedEdge right = edgeFromColumn(c.right, EdgeSide::Right, 0, c.rightEnd);
    const KnittedEdge left =
        edgeFromColumn(std::span(c.left).subspan(1), EdgeSide::Left, 1, c.leftEnd);
    const StitchSize size{0.45, 0.33};
    EXPECT_NEAR(edgeLength(right, size), checks::rightLength(s, 0.45, 0.33), 1e-9);
    EXPECT_NEAR(edgeLength(left, size), checks::leftLength(s, 0.45, 0.33), 1e-9);
    EXPECT_EQ(right.events.front().kind, EventKind::Underarm);
  }
}

TEST(EdgeLength, bindOffsComeARowLaterOnTheLeft) {
  const Schedule s{.underarm = Stitches(6),
                   .runs = {{ShapingKind::BindOff, Stitches(3), Rows(2), 1},
                            {ShapingKind::Decrease, Stitches(1), Rows(2), 2}},
                   .rows = Rows(40)};
  const KnittedEdge right = knittedEdge(s, EdgeSide::Right, 101);
  const KnittedEdge left = knittedEdge(s, EdgeSide::Left, 101);
  const auto rows = [](const KnittedEdge& edge) {
    std::vector<int> all;
    for (const EdgeEvent& e : edge.events)
      all.push_back(e.row);
    return all;
  };
  EXPECT_EQ(rows(right), (std::vector{101, 103, 105, 107}));
  EXPECT_EQ(rows(left), (std::vector{102, 104, 105, 107}));
  EXPECT_EQ(right.end, 141);
  EXPECT_EQ(left.end, 142);
}

TEST(EdgeLength, deviationIsThatOfTheRowTable) {
  std::mt19937 rng(23);
  const double w = 0.45, h = 0.33;
  for (int i = 0; i < 200; ++i) {
    const Schedule s = randomSchedule(rng);
    Path curve(Vec2(20, 0));
    curve.cubicTo({17, 0}, {15, 4}, {15, 9}).lineTo({15, 19});
    const double slow = checks::rightDeviation(s, curve.segments(), w, h);
    const KnittedEdge right = knittedEdge(s, EdgeSide::Right, 33);
    const KnittedEdge left = knittedEdge(s, EdgeSide::Left, 33);
    EXPECT_NEAR(edgeDeviation(right, 33, s.rows, curve, {w, h}), slow, 1e-6);
    EXPECT_NEAR(edgeDeviation(left, 33, s.rows, curve, {w, h}), slow, 1e-6);
  }
}

TEST(Runs, joinedMergesEqualNeighbours) {
  const scye::Run two{ShapingKind::Decrease, Stitches(1), Rows(2), 2};
  const scye::Run none{ShapingKind::Decrease, Stitches(1), Rows(4), 0};
  const std::vector<scye::Run> runs = joined({two, none, two});
  ASSERT_EQ(runs.size(), 1);
  EXPECT_EQ(runs[0].times, 4);
}

} // namespace
} // namespace scye
