#include "directions/virtual_knitter.h"

#include <gmock/gmock.h>

namespace scye::virtual_knitter {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

Step castOn(int k) {
  Step step;
  step.kind = StepKind::CastOn;
  step.actions = {{ActKind::CastOn, EdgeSide::Right, Stitches(k), Shapes::Hem}};
  step.stitches = Stitches(k);
  return step;
}
Step step(StepKind kind, int first, int last, int stitches, std::vector<Action> actions = {}) {
  Step s;
  s.kind = kind, s.first = first, s.last = last, s.stitches = Stitches(stitches);
  s.actions = std::move(actions);
  return s;
}
Step in(SectionId section, Step s) {
  s.section = section;
  return s;
}
Action act(ActKind kind, EdgeSide side, int k) {
  return {kind, side, Stitches(k), Shapes::Side};
}

std::vector<int> counts(const Knitted& knitted) {
  std::vector<int> out;
  for (const RowLine& line : knitted.rows)
    out.push_back(line.stitches().value());
  return out;
}
std::vector<Snag> snags(const Knitted& knitted) {
  std::vector<Snag> out;
  for (const SnagAt& s : knitted.snags)
    out.push_back(s.snag);
  return out;
}

constexpr EdgeSide R = EdgeSide::Right, L = EdgeSide::Left;

TEST(VirtualKnitter, RepeatsOnTheRowsThatAreNamed) {
  Step repeat =
      step(StepKind::Repeat, 2, 7, 6, {act(ActKind::Decrease, R, 1), act(ActKind::Decrease, L, 1)});
  repeat.every = 3, repeat.times = 2, repeat.like = 1;
  const Knitted knitted = knit({castOn(10), step(StepKind::Even, 1, 1, 10), repeat}, -5);
  EXPECT_THAT(counts(knitted), ElementsAre(10, 10, 10, 10, 8, 8, 8, 6));
  EXPECT_THAT(snags(knitted), IsEmpty());
  EXPECT_EQ(knitted.rows.back().leftEdge, -3);
  EXPECT_EQ(knitted.rows.back().rightEdge, 3);
}

TEST(VirtualKnitter, BindsOffAtTheEdgeWhereTheRowBegins) {
  const Knitted knitted =
      knit({castOn(20), step(StepKind::BindOffRows, 1, 3, 14, {act(ActKind::BindOff, R, 2)})}, 0);
  EXPECT_THAT(counts(knitted), ElementsAre(20, 18, 16, 14));
  EXPECT_EQ(knitted.rows.back().leftEdge, 2);
  EXPECT_EQ(knitted.rows.back().rightEdge, 16);
  EXPECT_THAT(snags(knitted), IsEmpty());
}

TEST(VirtualKnitter, BindsOffEverySecondRow) {
  Step every = step(StepKind::BindOffEvery, 1, 4, 14, {act(ActKind::BindOff, R, 3)});
  every.every = 2, every.times = 2;
  EXPECT_THAT(counts(knit({castOn(20), every}, 0)), ElementsAre(20, 17, 17, 14, 14));
}

TEST(VirtualKnitter, KnitsTheRightSideFirstAndTakesTheOtherUp) {
  const Knitted knitted =
      knit({castOn(20), step(StepKind::Even, 1, 2, 20),
            in(SectionId::Right, step(StepKind::Row, 3, 4, 8, {act(ActKind::Rest, L, 12)})),
            in(SectionId::Left, step(StepKind::Row, 3, 3, 7,
                                     {act(ActKind::Rejoin, R, 12), act(ActKind::BindOff, R, 5)}))},
           -10);
  EXPECT_THAT(snags(knitted), IsEmpty());
  EXPECT_THAT(counts(knitted), ElementsAre(20, 20, 20, 8, 8, 7));
  EXPECT_EQ(knitted.rows[3].leftEdge, 2);
  EXPECT_EQ(knitted.rows[5].leftEdge, -10);
  EXPECT_EQ(knitted.rows[5].rightEdge, -3);
}

Action turn(EdgeSide side, int k, int from) {
  return {ActKind::Wait, side, Stitches(k), Shapes::Bust, Stitches(from)};
}
Step waiting(int k, Step s) {
  s.waiting = Stitches(k);
  return s;
}

// A right-side row ends at the left edge.
TEST(VirtualKnitter, TurnsBeforeTheEdgeAndTakesUpWhatWaits) {
  const Knitted knitted =
      knit({castOn(20), waiting(4, step(StepKind::Row, 1, 1, 16, {turn(L, 4, 0)})),
            waiting(7, step(StepKind::Row, 2, 2, 13, {turn(R, 3, 0)})),
            waiting(9, step(StepKind::Row, 3, 3, 11, {turn(L, 2, 4)})),
            waiting(6, step(StepKind::Row, 4, 4, 14, {act(ActKind::TakeUp, R, 3)})),
            step(StepKind::Row, 5, 5, 20, {act(ActKind::TakeUp, L, 6)})},
           -10);
  EXPECT_THAT(snags(knitted), IsEmpty());
  EXPECT_THAT(counts(knitted), ElementsAre(20, 16, 13, 11, 14, 20));
  EXPECT_EQ(knitted.rows[3].leftEdge, -4);
  EXPECT_EQ(knitted.rows[3].rightEdge, 7);
  EXPECT_EQ(knitted.rows[3].waiting, Stitches(9));
  EXPECT_EQ(knitted.rows[5].leftEdge, -10);
  EXPECT_EQ(knitted.rows[5].rightEdge, 10);
  EXPECT_EQ(knitted.rows[5].waiting, Stitches(0));
}

TEST(VirtualKnitter, HoldsWhatWaitsWithItsHalf) {
  Action rest = act(ActKind::Rest, L, 8), rejoin = act(ActKind::Rejoin, R, 8);
  rest.from = rejoin.from = Stitches(3);
  const Knitted knitted =
      knit({castOn(20), waiting(3, step(StepKind::Row, 1, 1, 17, {turn(L, 3, 0)})),
            waiting(3, step(StepKind::Even, 2, 2, 17)),
            in(SectionId::Right, step(StepKind::Row, 3, 3, 9, {rest})),
            waiting(3, in(SectionId::Left, step(StepKind::Row, 3, 3, 8, {rejoin}))),
            in(SectionId::Left, step(StepKind::Row, 4, 4, 8))},
           0);
  // At the end of row 3 of the left side stitches wait to which the row should have gone.
  EXPECT_THAT(snags(knitted), ElementsAre(Snag::OverWaiting, Snag::CountDiffers));
  EXPECT_EQ(knitted.rows[3].waiting, Stitches(0));
  EXPECT_EQ(knitted.rows[4].waiting, Stitches(3));
}

TEST(VirtualKnitter, SpreadsHalfToEachEdge) {
  const Knitted knitted =
      knit({castOn(9), step(StepKind::Row, 1, 1, 15, {act(ActKind::IncreaseEvenly, R, 6)})}, 0);
  EXPECT_THAT(snags(knitted), IsEmpty());
  EXPECT_EQ(knitted.rows[1].leftEdge, -3);
  EXPECT_EQ(knitted.rows[1].rightEdge, 12);
}

TEST(VirtualKnitter, AButtonholeLeavesTheCount) {
  Action hole = act(ActKind::Buttonhole, R, 3);
  hole.from = Stitches(2);
  const Knitted knitted = knit({castOn(9), step(StepKind::Row, 1, 1, 9, {hole})}, 0);
  EXPECT_THAT(snags(knitted), IsEmpty());
  EXPECT_EQ(knitted.rows[1].acts.front().from, Stitches(2));
}

TEST(VirtualKnitter, SaysWhereAShortRowCannotBeFollowed) {
  const auto rows = [](std::vector<Step> steps) {
    steps.insert(steps.begin(), castOn(10));
    return snags(knit(steps, 0));
  };
  const Step first = waiting(3, step(StepKind::Row, 1, 1, 7, {turn(L, 3, 0)}));
  const Step back = waiting(3, step(StepKind::Even, 2, 2, 7));
  EXPECT_THAT(rows({first, back}), IsEmpty());
  // At the beginning of its row there is no turn; fewer than wait cannot be taken up, nor more.
  EXPECT_THAT(rows({waiting(3, step(StepKind::Row, 1, 1, 7, {turn(R, 3, 0)}))}),
              ElementsAre(Snag::NotAtEnd));
  for (const int k : {2, 4})
    EXPECT_THAT(rows({first, back, step(StepKind::Row, 3, 3, 7 + k, {act(ActKind::TakeUp, L, k)})}),
                ElementsAre(Snag::NothingHeld));
  // The next turn lies before the one before it, and leaves something to work.
  EXPECT_THAT(rows({first, back, waiting(5, step(StepKind::Row, 3, 3, 5, {turn(L, 2, 0)}))}),
              ElementsAre(Snag::CountDiffers));
  EXPECT_THAT(rows({first, back, waiting(10, step(StepKind::Row, 3, 3, 0, {turn(L, 7, 3)}))}),
              ElementsAre(Snag::TooFew));
  // No row goes on to what waits, and no edge is shaped where it waits.
  EXPECT_THAT(rows({first, back, waiting(3, step(StepKind::Even, 3, 3, 7))}),
              ElementsAre(Snag::OverWaiting));
  EXPECT_THAT(
      rows({first, waiting(3, step(StepKind::Row, 2, 2, 6, {act(ActKind::Decrease, L, 1)}))}),
      ElementsAre(Snag::OverWaiting));
  // What waits is told.
  EXPECT_THAT(rows({step(StepKind::Row, 1, 1, 7, {turn(L, 3, 0)})}),
              ElementsAre(Snag::CountDiffers));
}

TEST(VirtualKnitter, SaysWhereThereAreTooFewStitches) {
  const auto row = [](int stitches, Action action) {
    return snags(knit({castOn(10), step(StepKind::Row, 1, 1, stitches, {action})}, 0));
  };
  EXPECT_THAT(row(18, act(ActKind::IncreaseEvenly, R, 8)), IsEmpty());
  EXPECT_THAT(row(20, act(ActKind::IncreaseEvenly, R, 10)), ElementsAre(Snag::TooFew));
  EXPECT_THAT(row(13, act(ActKind::IncreaseEvenly, R, 3)), IsEmpty());
  for (const auto& [from, room] : {std::pair(0, false), {1, true}, {6, true}, {7, false}}) {
    Action hole = act(ActKind::Buttonhole, L, 3);
    hole.from = Stitches(from);
    EXPECT_EQ(row(10, hole).empty(), room) << from;
  }
}

TEST(VirtualKnitter, SaysWhereItCannotFollow) {
  const Step even = step(StepKind::Even, 1, 2, 10);
  EXPECT_THAT(snags(knit({even}, 0)),
              ElementsAre(Snag::RowMissing, Snag::NotCastOn, Snag::NotCastOn, Snag::CountDiffers));
  EXPECT_THAT(snags(knit({castOn(10), step(StepKind::Even, 2, 2, 10)}, 0)),
              ElementsAre(Snag::RowMissing));
  EXPECT_THAT(snags(knit({castOn(10), step(StepKind::Even, 1, 2, 9)}, 0)),
              ElementsAre(Snag::CountDiffers));
  const auto row = [](int stitches, Action action) {
    return knit({castOn(10), step(StepKind::Row, 1, 1, stitches, {action})}, 0);
  };
  EXPECT_THAT(snags(row(7, act(ActKind::BindOff, L, 3))), ElementsAre(Snag::NotAtStart));
  EXPECT_THAT(snags(row(-1, act(ActKind::BindOff, R, 11))), ElementsAre(Snag::TooFew));
  EXPECT_THAT(snags(row(0, act(ActKind::Rest, L, 10))), ElementsAre(Snag::TooFew));
  EXPECT_THAT(snags(row(10, act(ActKind::Rejoin, R, 4))), ElementsAre(Snag::NothingHeld));
  EXPECT_THAT(snags(row(1, act(ActKind::Close, R, 9))), ElementsAre(Snag::CountDiffers));
}

} // namespace
} // namespace scye::virtual_knitter
