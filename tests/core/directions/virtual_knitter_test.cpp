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
Action act(ActKind kind, EdgeSide side, int k) { return {kind, side, Stitches(k), Shapes::Side}; }

std::vector<int> counts(const Knitted& knitted) {
  std::vector<int> out;
  for (const RowLine& line : knitted.rows) out.push_back(line.stitches().value());
  return out;
}
std::vector<Snag> snags(const Knitted& knitted) {
  std::vector<Snag> out;
  for (const SnagAt& s : knitted.snags) out.push_back(s.snag);
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
