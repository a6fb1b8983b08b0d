// Counts for ribs, counted off by hand, and what their change does to a piece.
#include "knit/rib.h"
#include "support/made.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

namespace scye::rib {
namespace {

using enum RibKind;
using enum RibSides;

int castOn(RibKind kind, RibSides sides, int selvedge, int stitches, int own = 1) {
  const RibStitch rib = ribStitch(kind, own);
  return ribCastOn(rib, ribEnds(rib, sides, Stitches(selvedge)), Stitches(stitches)).value();
}

// "2x2 rib: a multiple of 4 plus 2" with one stitch in each seam (common practice).
TEST(Rib, FitsItsMultiple) {
  EXPECT_EQ(castOn(TwoTwo, BothSewn, 1, 118), 118);
  EXPECT_EQ(castOn(TwoTwo, BothSewn, 1, 117), 114);
  EXPECT_EQ(castOn(TwoTwo, BothSewn, 0, 119), 116);
  EXPECT_EQ(castOn(TwoTwo, BothSewn, 2, 119), 116);
  EXPECT_EQ(castOn(OneOne, BothSewn, 1, 47), 46);
  EXPECT_EQ(castOn(OneOne, BothSewn, 1, 46), 46);
  EXPECT_EQ(castOn(ThreeOne, BothSewn, 1, 50),
            50); // k3 ... k2: 3 + 1 + 2 and twelve repeats less 4
  EXPECT_EQ(castOn(TwoTwo, LeftFree, 1, 62), 62);
  EXPECT_EQ(castOn(TwoTwo, RightFree, 1, 63), 62);
  EXPECT_EQ(castOn(Seed, BothSewn, 1, 51), 50);
  EXPECT_EQ(castOn(Garter, BothSewn, 1, 51), 51);
  EXPECT_EQ(castOn(Own, BothSewn, 1, 51, 6), 50);
  EXPECT_EQ(castOn(TwoTwo, BothSewn, 1, 5), 0) << "less than its ends";
  EXPECT_EQ(castOn(Own, BothSewn, 1, 45, 24), 0) << "too much would be lost";
}

// What is spread above a rib is all that distinguishes the piece: its rows above are the same.
TEST(Rib, ChangesNothingAboveIt) {
  test::RandomDesigns random(test::propertySeed(2701));
  int changed = 0;
  for (int i = 0; i < 300; ++i) {
    SCOPED_TRACE(i);
    Design design = random.plausible();
    const test::Made with = test::made(design.choose(Choice::RibChange, RibChange::Evenly));
    const test::Made without = test::made(design.choose(Choice::RibChange, RibChange::None));
    EXPECT_EQ(with.knit.impossible, without.knit.impossible);
    if (with.knit.pieces.size() != without.knit.pieces.size()) continue;
    for (std::size_t p = 0; p < with.knit.pieces.size(); ++p) {
      const KnitPiece &a = with.knit.pieces[p], &b = without.knit.pieces[p];
      const bool sleeve = a.id == PieceId::Sleeve || a.id == PieceId::LeftSleeve;
      if (sleeve && with.draft.sizes.style.sleeve().gathered)
        continue; // its cuff is cast on to fit
      ASSERT_EQ(a.rows.size(), b.rows.size());
      Rows above; // the row in which the change is made
      for (const Act& act : a.sections.front().acts)
        if (act.kind == ActKind::IncreaseEvenly && act.shapes == Shapes::Hem)
          above = act.row, ++changed;
      for (std::size_t r = 0; r < a.rows.size(); ++r) {
        if (a.rows[r].row < above && a.rows[r].section == SectionId::Undivided) continue;
        ASSERT_EQ(a.rows[r].leftEdge, b.rows[r].leftEdge) << r;
        ASSERT_EQ(a.rows[r].rightEdge, b.rows[r].rightEdge) << r;
      }
    }
  }
  EXPECT_GT(changed, 100);
}

} // namespace
} // namespace scye::rib
