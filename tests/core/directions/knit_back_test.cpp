// Text aside: what is told as steps, knitted by someone who knows only the steps, is the piece.
#include "core/directions/random_pieces.h"
#include "directions/directions.h"
#include "directions/virtual_knitter.h"

#include <gtest/gtest.h>

namespace scye::knit_back {
namespace {

void expectKnitsBack(const KnitPiece& piece, const StitchSize& size) {
  const Knitted knitted = knit(stepsOf(piece, size));
  EXPECT_TRUE(knitted.snags.empty()) << pieceKey(piece.id) << ", row " << knitted.snags.front().row
                                     << ", snag " << int(knitted.snags.front().snag);
  ASSERT_EQ(knitted.rows.size(), piece.rows.size()) << pieceKey(piece.id);
  for (std::size_t i = 0; i < piece.rows.size(); ++i)
    ASSERT_EQ(knitted.rows[i], piece.rows[i])
        << pieceKey(piece.id) << " " << sectionKey(piece.rows[i].section) << " row "
        << piece.rows[i].row.value() << ": " << actionText(knitted.rows[i]) << " instead of "
        << actionText(piece.rows[i]);
}

TEST(KnitBack, GarmentsAreTheirRowTables) {
  test::RandomDesigns designs(test::propertySeed(31));
  for (int i = 0; i < 1000 && !testing::Test::HasFatalFailure(); ++i) {
    SCOPED_TRACE(i);
    const KnitGarment garment = knitGarment(draftGarment(designs.plausible()));
    for (const KnitPiece& piece : garment.pieces)
      expectKnitsBack(piece, garment.lattice.size);
  }
}

TEST(KnitBack, InventedPiecesAreTheirRowTables) {
  test::RandomPieces pieces(test::propertySeed(32));
  for (int i = 0; i < 10000 && !testing::Test::HasFatalFailure(); ++i) {
    SCOPED_TRACE(i);
    expectKnitsBack(pieces.next(), {0.45, 0.33});
  }
}

// Every row stands in one step; a step's measures are those of its last row.
TEST(KnitBack, StepsFollowTheRowsWithoutGaps) {
  test::RandomPieces pieces(test::propertySeed(33));
  for (int i = 0; i < 2000; ++i) {
    const KnitPiece piece = pieces.next();
    std::size_t row = 0;
    for (const Part& part : stepsOf(piece, {0.45, 0.33}).parts)
      for (const Step& step : part.steps) {
        EXPECT_EQ(step.section, part.section);
        EXPECT_DOUBLE_EQ(step.fromCastOn, 0.33 * step.last);
        for (int r = step.first; r <= step.last; ++r, ++row) {
          ASSERT_LT(row, piece.rows.size());
          ASSERT_EQ(piece.rows[row].row, Rows(r));
          ASSERT_EQ(piece.rows[row].section, step.section);
        }
        ASSERT_EQ(piece.rows[row - 1].stitches(), step.stitches);
        ASSERT_EQ(piece.rows[row - 1].waiting, step.waiting);
      }
    ASSERT_EQ(row, piece.rows.size());
  }
}

} // namespace
} // namespace scye::knit_back
