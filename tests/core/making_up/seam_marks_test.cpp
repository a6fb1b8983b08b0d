#include "making_up/seam_marks.h"

#include "support/made.h"
#include "support/random_designs.h"

#include <gmock/gmock.h>

namespace scye::seam_marks {
namespace {

struct Made : test::Made {
  std::vector<SeamMarks> sides;
};
Made made(const Design& design) {
  const test::Made m = test::made(design);
  return {m, seamMarks(m.draft, m.knit)};
}
Design gathered() {
  return Design().set(Field::Bust, 90).choose(Choice::CapTop, CapTop::Gathered);
}
const ArmholeFit& fitOf(const Made& m, const SeamMarks& side) {
  return side.wearersLeft ? m.knit.left : m.knit.right;
}

TEST(SeamMarks, easeBetweenMarksAddsUpToTheWhole) {
  test::RandomDesigns random(test::propertySeed(91));
  int checked = 0;
  for (int i = 0; i < 250; ++i) {
    const Made m = made(random.plausible());
    for (std::size_t pair = 0; pair + 1 < m.sides.size(); pair += 2) {
      double whole = 0;
      for (const SeamMarks& side : {m.sides[pair], m.sides[pair + 1]}) {
        const std::size_t last = side.marks.size() - 1;
        whole += betweenMarks(side, 0, last).ease;
        const std::size_t middle = last / 2;
        const BetweenMarks a = betweenMarks(side, 0, middle), b = betweenMarks(side, last, middle),
                           all = betweenMarks(side, 0, last);
        EXPECT_NEAR(a.ease + b.ease, all.ease, 1e-9);
        EXPECT_NEAR(a.cap + b.cap, all.cap, 1e-9);
        EXPECT_NEAR(all.cap - all.armhole, all.ease, 1e-9);
        EXPECT_EQ(betweenMarks(side, middle, middle).ease, 0);
        double sum = 0;
        for (const SeamMark& mark : side.marks)
          sum += mark.ease;
        EXPECT_NEAR(sum, all.ease, 1e-9);
      }
      const ArmholeFit& fit = fitOf(m, m.sides[pair]);
      EXPECT_NEAR(whole, (fit.cap - fit.armhole).mean(), 1e-6);
      ++checked;
    }
  }
  EXPECT_GT(checked, 200);
}

// Rows are those of the pieces, as their row tables have them: where the underarm is bound off, and
// where the armhole ends. The front may be longer than the back by the rows over the bust.
TEST(SeamMarks, rowsAreThoseOfThePieceItself) {
  for (const BustShaping bust : {BustShaping::None, BustShaping::ShortRows})
    for (const ShoulderWork shoulders : {ShoulderWork::Steps, ShoulderWork::ShortRows}) {
      const Made m = made(Design()
                              .set(Field::Bust, 100)
                              .set(Field::BustDepth, 4)
                              .choose(Choice::BustShaping, bust)
                              .choose(Choice::ShoulderWork, shoulders));
      ASSERT_EQ(m.knit.lattice.front.longer > Rows(0), bust == BustShaping::ShortRows);
      ASSERT_EQ(m.sides.size(), 4u);
      for (const SeamMarks& side : m.sides) {
        const bool back = side.half == ArmholeHalf::Back;
        const KnitPiece& piece = *m.knit.piece(back ? PieceId::Back : PieceId::Front);
        const int later = back == side.wearersLeft ? 1 : 0; // at a left edge
        EXPECT_EQ(side.marks.front().armhole.row, piece.underarmRow.value() + later);
        EXPECT_EQ(side.marks.front().armhole.up, 0);
        EXPECT_EQ(side.marks.back().armhole.row, piece.shoulderRow.value() + later);
        EXPECT_EQ(side.marks.back().armhole.up, m.knit.lattice.armholeRows().value());
        for (std::size_t i = 1; i < side.marks.size(); ++i) {
          EXPECT_GE(side.marks[i].armhole.row, side.marks[i - 1].armhole.row);
          EXPECT_GE(side.marks[i].cap.along, side.marks[i - 1].cap.along);
        }
      }
    }
}

TEST(SeamMarks, aMarkOnABindOffIsToldInItsStitches) {
  const Made m = made(Design().set(Field::Bust, 92));
  for (const SeamMarks& side : m.sides) {
    const SeamMark& underarm = side.marks.front();
    const int bound = (side.half == ArmholeHalf::Back ? m.knit.lattice.back : m.knit.lattice.front)
                          .underarm.value();
    EXPECT_EQ(underarm.armhole.flat, Flat::Underarm);
    EXPECT_EQ(underarm.cap.flat, Flat::Underarm);
    EXPECT_EQ(underarm.armhole.stitches, bound);
    EXPECT_EQ(underarm.cap.stitches, bound);
    EXPECT_EQ(side.marks.back().cap.flat, Flat::Crown);
    EXPECT_EQ(side.marks.back().armhole.flat, Flat::None);
  }
}

TEST(SeamMarks, theShoulderDividesTheCrown) {
  test::RandomDesigns random(test::propertySeed(92));
  int checked = 0;
  for (int i = 0; i < 250; ++i) {
    const Made m = made(random.plausible());
    for (std::size_t pair = 0; pair + 1 < m.sides.size(); pair += 2) {
      const PinPlace &back = m.sides[pair].marks.back().cap,
                     &front = m.sides[pair + 1].marks.back().cap;
      if (back.flat != Flat::Crown) continue;
      const int crown = fitOf(m, m.sides[pair]).capRight.crown.value();
      EXPECT_EQ(front.flat, Flat::Crown);
      EXPECT_EQ(back.stitches + front.stitches, crown);
      EXPECT_GE(std::min(back.stitches, front.stitches), 0);
      EXPECT_EQ(back.row, front.row);
      ++checked;
    }
  }
  EXPECT_GT(checked, 200);
}

// A symmetric cap in equal armholes is pinned by the middle of its crown (common practice).
TEST(SeamMarks, theMiddleOfASymmetricCrownMeetsTheShoulder) {
  const Made m = made(Design()
                          .set(Field::Bust, 92)
                          .set(Field::BackShare, 0.5)
                          .set(Field::CrossFront, 34)
                          .set(Field::CrossBack, 34));
  ASSERT_EQ(m.sides.size(), 4u);
  const int crown = m.knit.right.capRight.crown.value();
  EXPECT_NEAR(m.sides[0].marks.back().cap.stitches, 0.5 * crown, 1.0);
}

TEST(SeamMarks, gathersBeginOnBothSidesAsWideAsSheSaid) {
  const Made m = made(gathered());
  ASSERT_EQ(m.sides.size(), 4u);
  for (const SeamMarks& side : m.sides) {
    const auto begins = std::count_if(side.marks.begin(), side.marks.end(), [](const SeamMark& k) {
      return k.kind == NotchKind::GathersBegin;
    });
    EXPECT_EQ(begins, 1);
  }
  const DrawnIn d = drawnIn(m.sides[0], m.sides[1]);
  EXPECT_NEAR(d.armhole, m.draft.sizes[Field::GatherWidth], 1e-9);
  const double ease = (m.knit.right.cap - m.knit.right.armhole).mean();
  // All but a centimetre is drawn in; the last of that centimetre lies among the gathers.
  EXPECT_GT(d.cap - d.armhole, ease - 1);
  EXPECT_LT(d.cap - d.armhole, ease);
  EXPECT_NEAR(d.crown, (m.knit.right.capRight.crown.value() - 2) * m.knit.lattice.size.width, 1e-6);
  // The crown is drawn up by what its own part of the gathers takes.
  EXPECT_LT(d.crownDrawn, d.crown);
  EXPECT_GT(d.crownDrawn, d.crown * d.armhole / d.cap - 0.6);
}

TEST(SeamMarks, aSmoothCapDrawsInLittleOfItsCrown) {
  const Made m = made(gathered().choose(Choice::CapTop, CapTop::Smooth).set(Field::CapEase, 1));
  const DrawnIn d = drawnIn(m.sides[0], m.sides[1]);
  EXPECT_EQ(d.armhole, 0);
  EXPECT_EQ(d.cap, 0);
  EXPECT_LT(d.crown - d.crownDrawn, 1);
}

// Printed pick-up rules: 5 stitches for 7 rows at 5 x 7 to the inch; 3 for 4 where 4 rows are as
// high as 3 stitches are wide (common practice).
TEST(SmallestRatio, isTheOneKnittersSay) {
  EXPECT_EQ(smallestRatio(5.0 / 7), (std::pair(5, 7)));
  EXPECT_EQ(smallestRatio(3.0 / 4), (std::pair(3, 4)));
  EXPECT_EQ(smallestRatio(1.0), (std::pair(1, 1)));
  EXPECT_EQ(smallestRatio(2.0 / 3), (std::pair(2, 3)));
}

} // namespace
} // namespace scye::seam_marks
