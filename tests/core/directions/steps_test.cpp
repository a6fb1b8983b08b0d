#include "directions/steps.h"

#include "knit/acts.h"

#include <gtest/gtest.h>

namespace scye::steps_told {
namespace {

constexpr StitchSize kSize{0.5, 0.25};

// One section of 40 stitches; the last row closes it.
struct PieceMaker {
  KnitPiece piece;
  explicit PieceMaker(int last, Acts acts, int hemRows = 4) {
    piece.hemRows = Rows(hemRows);
    Section body{SectionId::Undivided, Rows(0), Rows(last), -20, 20, std::move(acts)};
    body.acts.push_back({Rows(0), ActKind::CastOn, EdgeSide::Right, Stitches(40), Shapes::Hem});
    sortActs(body.acts);
    piece.sections = {body};
    piece.rows = workedRows(piece.sections);
  }
  [[nodiscard]] PieceSteps told() const { return stepsOf(piece, kSize); }
};

Act at(int row, ActKind kind, EdgeSide side, int k = 1, Shapes shapes = Shapes::Side) {
  return {Rows(row), kind, side, Stitches(k), shapes};
}
Acts each(std::initializer_list<int> rows, ActKind kind, EdgeSide side, int k, Shapes shapes) {
  Acts acts;
  for (const int row : rows)
    acts.push_back(at(row, kind, side, k, shapes));
  return acts;
}
Acts both(std::initializer_list<int> rows, ActKind kind) {
  Acts acts = each(rows, kind, EdgeSide::Right, 1, Shapes::Side);
  append(acts, each(rows, kind, EdgeSide::Left, 1, Shapes::Side));
  return acts;
}

struct Told {
  StepKind kind;
  int first, last, every, times, stitches;
  bool operator==(const Told&) const = default;
};
void PrintTo(const Told& t, std::ostream* out) {
  *out << "kind " << int(t.kind) << " rows " << t.first << "-" << t.last << " every " << t.every
       << " times " << t.times << " (" << t.stitches << ")";
}
std::vector<Told> stepsIn(const Part& part) {
  std::vector<Told> out;
  for (const Step& s : part.steps)
    out.push_back({s.kind, s.first, s.last, s.every, s.times, s.stitches.value()});
  return out;
}
using Steps = std::vector<Told>;

TEST(Steps, TheHemHasACastOnAndEvenRows) {
  const PieceSteps told = PieceMaker(10, {}).told();
  ASSERT_EQ(told.parts.size(), 2u);
  EXPECT_EQ(told.parts[0].kind, PartKind::Hem);
  EXPECT_EQ(stepsIn(told.parts[0]), (Steps{{StepKind::CastOn, 0, 0, 0, 1, 40},
                                           {StepKind::RibRow, 1, 1, 0, 1, 40},
                                           {StepKind::RibRow, 2, 2, 0, 1, 40},
                                           {StepKind::RibOn, 3, 4, 0, 1, 40}}));
  EXPECT_EQ(told.castOnLeft, -20);
  EXPECT_DOUBLE_EQ(told.parts[0].height, 1);
  EXPECT_EQ(stepsIn(told.parts[1]), (Steps{{StepKind::Even, 5, 10, 0, 1, 40}}));
}

TEST(Steps, EqualDistancesAreOneStep) {
  const PieceSteps told = PieceMaker(40, both({7, 9, 11, 15, 19, 23}, ActKind::Decrease)).told();
  EXPECT_EQ(stepsIn(told.parts[1]), (Steps{{StepKind::Even, 5, 6, 0, 1, 40},
                                           {StepKind::Row, 7, 7, 0, 1, 38},
                                           {StepKind::Repeat, 8, 11, 2, 2, 34},
                                           {StepKind::Repeat, 12, 23, 4, 3, 28},
                                           {StepKind::Even, 24, 40, 0, 1, 28}}));
  EXPECT_EQ(told.parts[1].steps[2].like, 7);
  EXPECT_EQ(told.parts[1].steps[3].like, 7);
}

TEST(Steps, FarApartIsToldAsEvenRowsAndARow) {
  const PieceSteps told = PieceMaker(40, both({7, 27}, ActKind::Increase)).told();
  EXPECT_EQ(stepsIn(told.parts[1]), (Steps{{StepKind::Even, 5, 6, 0, 1, 40},
                                           {StepKind::Row, 7, 7, 0, 1, 42},
                                           {StepKind::Even, 8, 26, 0, 1, 42},
                                           {StepKind::Row, 27, 27, 0, 1, 44},
                                           {StepKind::Even, 28, 40, 0, 1, 44}}));
}

TEST(Steps, BindOffsAtBothEdgesAreOneStep) {
  Acts acts = each({7, 9, 11}, ActKind::BindOff, EdgeSide::Right, 3, Shapes::Armhole);
  append(acts, each({8, 10}, ActKind::BindOff, EdgeSide::Left, 3, Shapes::Armhole));
  append(acts, each({12}, ActKind::BindOff, EdgeSide::Left, 2, Shapes::Armhole));
  const PieceSteps told = PieceMaker(13, acts).told();
  EXPECT_EQ(told.parts[1].kind, PartKind::Main);
  EXPECT_EQ(told.parts[2].kind, PartKind::Upper);
  EXPECT_EQ(stepsIn(told.parts[2]),
            (Steps{{StepKind::BindOffRows, 7, 11, 0, 1, 25}, {StepKind::Row, 12, 13, 0, 1, 23}}));
  EXPECT_DOUBLE_EQ(told.parts[2].steps[1].fromUnderarm, 7 * 0.25);
  EXPECT_FALSE(told.parts[2].together);
}

TEST(Steps, BindOffsAtOneEdgeTakeTheEvenRowWithThem) {
  const Acts acts = each({8, 10, 12}, ActKind::BindOff, EdgeSide::Left, 3, Shapes::Armhole);
  EXPECT_EQ(stepsIn(PieceMaker(20, acts).told().parts[2]),
            (Steps{{StepKind::BindOffEvery, 8, 13, 2, 3, 31}, {StepKind::Even, 14, 20, 0, 1, 31}}));
  EXPECT_EQ(stepsIn(PieceMaker(12, acts).told().parts[2]),
            (Steps{{StepKind::BindOffEvery, 8, 12, 2, 3, 31}}));
}

TEST(Steps, TheLastStitchesAreBoundOffAlone) {
  const Acts acts = each({7, 9, 11, 13}, ActKind::BindOff, EdgeSide::Right, 10, Shapes::Shoulder);
  EXPECT_EQ(stepsIn(PieceMaker(13, acts).told().parts[2]),
            (Steps{{StepKind::BindOffEvery, 7, 12, 2, 3, 10}, {StepKind::Row, 13, 13, 0, 1, 0}}));
}

TEST(Steps, OneEvenRowBetweenBelongsToTheRowBefore) {
  const Acts acts{at(7, ActKind::Decrease, EdgeSide::Right),
                  at(9, ActKind::Decrease, EdgeSide::Left),
                  at(12, ActKind::Decrease, EdgeSide::Left, 1)};
  EXPECT_EQ(stepsIn(PieceMaker(12, acts, 6).told().parts[1]),
            (Steps{{StepKind::Row, 7, 8, 0, 1, 39},
                   {StepKind::Row, 9, 9, 0, 1, 38},
                   {StepKind::Repeat, 10, 12, 3, 1, 37}}));
}

TEST(Steps, EdgesShapedForDifferentEndsAreMergedByRow) {
  Acts acts = each({7, 11, 15}, ActKind::Decrease, EdgeSide::Right, 1, Shapes::Armhole);
  append(acts, each({8, 10, 15}, ActKind::Decrease, EdgeSide::Left, 1, Shapes::Neck));
  const PieceSteps told = PieceMaker(16, acts, 6).told();
  EXPECT_EQ(told.parts[1].first(), 7);
  const Part& merged = told.parts[2];
  EXPECT_TRUE(merged.together);
  EXPECT_EQ(merged.right, std::vector{Shapes::Armhole});
  EXPECT_EQ(merged.left, std::vector{Shapes::Neck});
  EXPECT_EQ(stepsIn(merged), (Steps{{StepKind::Row, 8, 8, 0, 1, 38},
                                    {StepKind::Repeat, 9, 10, 2, 1, 37},
                                    {StepKind::Row, 11, 11, 0, 1, 36},
                                    {StepKind::Even, 12, 14, 0, 1, 36},
                                    {StepKind::Row, 15, 16, 0, 1, 34}}));
}

TEST(Steps, AFacingEndsWithItsFold) {
  PieceMaker maker(10, {}, 8);
  maker.piece.foldRow = Rows(7);
  const PieceSteps told = maker.told();
  EXPECT_EQ(stepsIn(told.parts[0]), (Steps{{StepKind::CastOn, 0, 0, 0, 1, 40},
                                           {StepKind::Facing, 1, 6, 0, 1, 40},
                                           {StepKind::Fold, 7, 7, 0, 1, 40},
                                           {StepKind::Even, 8, 8, 0, 1, 40}}));
  EXPECT_DOUBLE_EQ(told.parts[0].steps[1].fromFold, 0);
  EXPECT_DOUBLE_EQ(told.parts[0].steps[3].fromFold, 2 * 0.25);
  EXPECT_DOUBLE_EQ(told.parts[1].steps[0].fromFold, 4 * 0.25);
}

// Every turn is a line of its own, with the row that leads away from it; what waits is counted.
TEST(Steps, EveryTurnIsTold) {
  const Acts acts{{Rows(7), ActKind::Wait, EdgeSide::Left, Stitches(4), Shapes::Bust},
                  {Rows(9), ActKind::Wait, EdgeSide::Left, Stitches(4), Shapes::Bust, Stitches(4)},
                  at(11, ActKind::TakeUp, EdgeSide::Left, 8, Shapes::Bust)};
  const PieceSteps told = PieceMaker(14, acts, 6).told();
  EXPECT_EQ(stepsIn(told.parts[1]), (Steps{{StepKind::Row, 7, 8, 0, 1, 36},
                                           {StepKind::Row, 9, 10, 0, 1, 32},
                                           {StepKind::Row, 11, 11, 0, 1, 40},
                                           {StepKind::Even, 12, 14, 0, 1, 40}}));
  std::vector<int> waiting;
  for (const Step& step : told.parts[1].steps)
    waiting.push_back(step.waiting.value());
  EXPECT_EQ(waiting, (std::vector{4, 8, 0, 0}));
  EXPECT_EQ(told.parts[1].steps[1].actions.front().from, Stitches(4));
}

TEST(Steps, ASpreadRowAndButtonholesAreTold) {
  const Acts acts{
      at(7, ActKind::IncreaseEvenly, EdgeSide::Right, 20, Shapes::Cuff),
      {Rows(11), ActKind::Buttonhole, EdgeSide::Left, Stitches(3), Shapes::Opening, Stitches(2)}};
  const PieceSteps told = PieceMaker(12, acts, 6).told();
  EXPECT_EQ(stepsIn(told.parts[1]), (Steps{{StepKind::Row, 7, 7, 0, 1, 60},
                                           {StepKind::Even, 8, 10, 0, 1, 60},
                                           {StepKind::Row, 11, 11, 0, 1, 60},
                                           {StepKind::Even, 12, 12, 0, 1, 60}}));
  EXPECT_TRUE(told.parts[1].shapes.empty()); // neither is at an edge
}

TEST(Steps, AnEmptyPieceHasNone) {
  EXPECT_TRUE(stepsOf(KnitPiece{}, kSize).parts.empty());
}

} // namespace
} // namespace scye::steps_told
