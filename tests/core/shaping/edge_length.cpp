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
      edgeLength(back, EdgeSide::Left, inch).chord + edgeLength(front, EdgeSide::Right, inch).chord;
  EXPECT_NEAR(edgeLength(back, EdgeSide::Left, inch).chord, 8.82, 0.01);
  EXPECT_NEAR(edgeLength(back, EdgeSide::Right, inch).chord, 8.82, 0.01);
  const double cap = 97.0 / 5;
  EXPECT_NEAR(armhole / cap, 1, 0.025);
  EXPECT_NEAR(armhole / cap, 1, 0.002); // much nearer than asked: 19.39 in against 19.40
  const double mean =
      (edgeLength(back, EdgeSide::Left, inch) + edgeLength(front, EdgeSide::Right, inch)).mean();
  EXPECT_NEAR(mean / cap, 1, 0.01); // by the three measures too
}

TEST(EdgeLength, ruleByHand) {
  const StitchSize size{0.5, 0.4};
  const KnittedEdge edge{.begin = Rows(10),
                         .end = Rows(30),
                         .events = {{Rows(10), Stitches(5), EventKind::Underarm},
                                    {Rows(12), Stitches(3), EventKind::BindOff},
                                    {Rows(14), Stitches(1), EventKind::Decrease},
                                    {Rows(20), Stitches(-1), EventKind::Increase}},
                         .flatTop = 4.5};
  const double flats = (5 + 4.5) * 0.5;
  const EdgeLength length = edgeLength(edge, size);
  EXPECT_NEAR(length.chord,
              flats + 2 * 0.4 + std::hypot(1.5, 0.8) + std::hypot(0.5, 2.4) + std::hypot(0.5, 4.0),
              1e-12);
  EXPECT_NEAR(length.corner,
              flats + std::hypot(1.5, 0.8) + std::hypot(0.5, 0.8) + std::hypot(0.5, 2.4) + 4.0,
              1e-12);
  // The middles of the decrease's tread and of the increase's lie above each other.
  EXPECT_NEAR(length.middle,
              flats + std::hypot(0.75, 0.8) + std::hypot(1.0, 0.8) + 2.4 + std::hypot(0.25, 4.0),
              1e-12);
  EXPECT_NEAR(length.mean(), (length.chord + length.corner + length.middle) / 3, 1e-12);
  EXPECT_NEAR(length.spread(),
              std::max({length.chord, length.corner, length.middle}) -
                  std::min({length.chord, length.corner, length.middle}),
              1e-12);
}

// Where nothing changes from step to step the three differ by the two ends alone.
TEST(EdgeLength, withinARunTheMeasuresAreOne) {
  const StitchSize size{0.45, 0.33};
  const auto of = [&](int times) {
    return edgeLength(Schedule{.runs = {{ShapingKind::Decrease, Stitches(1), Rows(4), times}},
                               .rows = Rows(4 * times + 4)},
                      EdgeSide::Right, size);
  };
  const EdgeLength more = of(9) - of(4);
  EXPECT_NEAR(more.chord, 5 * std::hypot(0.45, 4 * 0.33), 1e-12);
  EXPECT_NEAR(more.spread(), 0, 1e-12);
}

TEST(EdgeLength, edgeWithoutEventsIsStraight) {
  const EdgeLength length = edgeLength(KnittedEdge{.begin = Rows(4), .end = Rows(14)}, {0.5, 0.4});
  EXPECT_DOUBLE_EQ(length.chord, 4.0);
  EXPECT_DOUBLE_EQ(length.spread(), 0);
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
    const auto same = [](const EdgeLength& a, const checks::Lengths& b) {
      EXPECT_NEAR(a.chord, b.chord, 1e-9);
      EXPECT_NEAR(a.corner, b.corner, 1e-9);
      EXPECT_NEAR(a.middle, b.middle, 1e-9);
    };
    same(edgeLength(s, EdgeSide::Right, {w, h}, Stitches(1)), checks::rightLengths(s, w, h, top));
    same(edgeLength(s, EdgeSide::Left, {w, h}, Stitches(1)), checks::leftLengths(s, w, h, top));
  }
}

TEST(EdgeLength, columnsAreReadBackAsTheSameEdge) {
  std::mt19937 rng(22);
  for (int i = 0; i < 300; ++i) {
    const Schedule s = randomSchedule(rng);
    const checks::Columns c = checks::knit(s, 60.5);
    const KnittedEdge right = edgeFromColumn(c.right, EdgeSide::Right, Rows(0), Rows(c.rightEnd));
    const KnittedEdge left =
        edgeFromColumn(std::span(c.left).subspan(1), EdgeSide::Left, Rows(1), Rows(c.leftEnd));
    const StitchSize size{0.45, 0.33};
    EXPECT_NEAR(edgeLength(right, size).mean(), checks::rightLengths(s, 0.45, 0.33).mean(), 1e-9);
    EXPECT_NEAR(edgeLength(left, size).mean(), checks::leftLengths(s, 0.45, 0.33).mean(), 1e-9);
    EXPECT_EQ(right.events.front().kind, EventKind::Underarm);
  }
}

TEST(EdgeLength, bindOffsComeARowLaterOnTheLeft) {
  const Schedule s{.underarm = Stitches(6),
                   .runs = {{ShapingKind::BindOff, Stitches(3), Rows(2), 1},
                            {ShapingKind::Decrease, Stitches(1), Rows(2), 2}},
                   .rows = Rows(40)};
  const KnittedEdge right = knittedEdge(s, EdgeSide::Right, Rows(101));
  const KnittedEdge left = knittedEdge(s, EdgeSide::Left, Rows(101));
  const auto rows = [](const KnittedEdge& edge) {
    std::vector<int> all;
    for (const EdgeEvent& e : edge.events)
      all.push_back(e.row.value());
    return all;
  };
  EXPECT_EQ(rows(right), (std::vector{101, 103, 105, 107}));
  EXPECT_EQ(rows(left), (std::vector{102, 104, 105, 107}));
  EXPECT_EQ(right.end, Rows(141));
  EXPECT_EQ(left.end, Rows(142));
}

TEST(EdgeLength, deviationIsThatOfTheRowTable) {
  std::mt19937 rng(23);
  const double w = 0.45, h = 0.33;
  for (int i = 0; i < 200; ++i) {
    const Schedule s = randomSchedule(rng);
    Path curve(Vec2(20, 0));
    curve.cubicTo({17, 0}, {15, 4}, {15, 9}).lineTo({15, 19});
    const double slow = checks::rightDeviation(s, curve.segments(), w, h);
    const KnittedEdge right = knittedEdge(s, EdgeSide::Right, Rows(33));
    const KnittedEdge left = knittedEdge(s, EdgeSide::Left, Rows(33));
    EXPECT_NEAR(edgeDeviation(right, Rows(33), s.rows, curve, {w, h}), slow, 1e-6);
    EXPECT_NEAR(edgeDeviation(left, Rows(33), s.rows, curve, {w, h}), slow, 1e-6);
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
