#include "making_up/uneven_seam.h"

#include "knit/knit_garment.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

namespace scye::uneven_seam {
namespace {

using Lines = std::vector<SeamLine>;

TEST(SewRows, saysWhatAKnitterWouldSay) {
  EXPECT_EQ(sewRows(120, 126), (Lines{{20, 21, 6}}));
  EXPECT_EQ(sewRows(126, 120), (Lines{{21, 20, 6}}));
  EXPECT_EQ(sewRows(100, 103), (Lines{{34, 35, 1}, {33, 34, 2}}));
  EXPECT_EQ(sewRows(50, 50), (Lines{{1, 1, 50}}));
  EXPECT_EQ(sewRows(10, 20), (Lines{{1, 2, 10}}));
  EXPECT_EQ(sewRows(10, 25), (Lines{{1, 3, 5}, {1, 2, 5}}));
  EXPECT_TRUE(sewRows(0, 12).empty());
}

// The recipe uses up both edges, and is as even as whole rows allow: at most two lines, whose
// groups differ by a row.
TEST(SewRows, sumsExactlyAndEvenly) {
  for (int a = 1; a <= 160; ++a)
    for (int b = 1; b <= 160; ++b) {
      const Lines lines = sewRows(a, b);
      ASSERT_GE(lines.size(), 1u);
      ASSERT_LE(lines.size(), 2u);
      int first = 0, second = 0;
      for (const SeamLine& l : lines) {
        ASSERT_GT(l.times, 0);
        ASSERT_GT(std::min(l.first, l.second), 0);
        first += l.first * l.times, second += l.second * l.times;
      }
      ASSERT_EQ(first, a);
      ASSERT_EQ(second, b);
      if (lines.size() < 2) continue;
      ASSERT_LE(std::abs(lines[0].first - lines[1].first), 1);
      ASSERT_LE(std::abs(lines[0].second - lines[1].second), 1);
    }
}

// The short rows over the bust are not in the side seam: its edge has the rows of the back.
TEST(SeamRows, leaveOutShortRowsThatTurnBeforeTheEdge) {
  const GarmentDraft g = draftGarment(Design()
                                          .set(Field::Bust, 100)
                                          .set(Field::BustDepth, 4)
                                          .choose(Choice::BustShaping, BustShaping::ShortRows));
  const KnitGarment k = knitGarment(g);
  ASSERT_GT(k.lattice.front.longer, Rows(0));
  const KnitPiece &back = *k.piece(PieceId::Back), &front = *k.piece(PieceId::Front);
  for (const EdgeSide side : {EdgeSide::Right, EdgeSide::Left})
    EXPECT_EQ(seamRows(front.rows, side, front.underarmRow),
              seamRows(back.rows, side, back.underarmRow));
  EXPECT_EQ(seamRows(back.rows, EdgeSide::Right, back.underarmRow), back.underarmRow.value() - 1);
}

TEST(SeamRows, ofBackAndFrontAreTheSame) {
  test::RandomDesigns random(test::propertySeed(84));
  for (int i = 0; i < 300; ++i) {
    const KnitGarment k = knitGarment(draftGarment(random.plausible()));
    const KnitPiece* back = k.piece(PieceId::Back);
    if (!back) continue;
    for (const KnitPiece& piece : k.pieces) {
      if (piece.id == PieceId::Sleeve || piece.id == PieceId::LeftSleeve) continue;
      const EdgeSide side = piece.id == PieceId::RightFront ? EdgeSide::Left : EdgeSide::Right;
      EXPECT_EQ(seamRows(piece.rows, side, piece.underarmRow),
                seamRows(back->rows, EdgeSide::Right, back->underarmRow))
          << i;
    }
  }
}

} // namespace
} // namespace scye::uneven_seam
