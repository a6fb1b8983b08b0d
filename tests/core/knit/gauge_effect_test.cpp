// What an uncertain gauge does, by knitting the same counts in stitches and rows of another size:
// the edges are read back from the row tables and measured anew.
#include "garment/derived.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

#include <cmath>

namespace scye::gauge_effect {
namespace {

// An edge of a piece as the row table has it, by the mean of its three measures.
double edgeOf(const KnitPiece& piece, EdgeSide side, Rows end, double flatTop,
              const StitchSize& size) {
  const Rows begin = piece.underarmRow + Rows(side == EdgeSide::Left ? 1 : 0);
  std::vector<double> positions;
  for (const RowLine& line : piece.rows) {
    if (line.section == (side == EdgeSide::Right ? SectionId::Left : SectionId::Right)) continue;
    if (line.row >= begin - Rows(1))
      positions.push_back(side == EdgeSide::Right ? line.rightEdge : line.leftEdge);
  }
  return edgeLength(edgeFromColumn(positions, side, begin, end, flatTop), size).mean();
}

double capMinusArmhole(const KnitGarment& k, const StitchSize& size) {
  const KnitPiece &back = *k.piece(PieceId::Back), &sleeve = *k.piece(PieceId::Sleeve);
  const KnitPiece* half = k.piece(PieceId::RightFront);
  const KnitPiece& front = half ? *half : *k.piece(PieceId::Front);
  const double crown = crownHalfStitches(k.cap.front.crown, k.lattice.selvedge);
  return edgeOf(sleeve, EdgeSide::Right, sleeve.crownRow, crown, size) +
         edgeOf(sleeve, EdgeSide::Left, sleeve.crownRow, crown, size) -
         edgeOf(back, EdgeSide::Right, back.shoulderRow, 0, size) -
         edgeOf(front, EdgeSide::Left, front.shoulderRow + Rows(1), 0, size);
}

TEST(GaugeEffect, isWhatAnotherSizeOfStitchDoesToTheSameCounts) {
  test::RandomDesigns random(test::propertySeed(2601));
  int compared = 0;
  for (int i = 0; i < 80; ++i) {
    Design d = random.plausible();
    d.set(Field::SwatchStitches, 20 + random.index(14)).set(Field::SwatchWidth, 10);
    d.set(Field::SwatchRows, 28 + random.index(14)).set(Field::SwatchHeight, 12);
    const Derived made = derive(d);
    if (!made.gaugeEffect || !made.knit.capKnitted || !made.knit.impossible.empty()) continue;
    SCOPED_TRACE(i);
    const GaugeEffect& effect = *made.gaugeEffect;
    const StitchSize size = made.draft.sizes.stitch;
    ASSERT_TRUE(made.gauge.across && made.gauge.along);
    const double wider = made.gauge.across->size.reach(), taller = made.gauge.along->size.reach();
    // Lengths are as many stitches or rows as before, each larger by what 90 of 100 readings stay
    // below.
    const double bust = made.draft.sizes.finished(Field::Bust);
    EXPECT_NEAR(effect.bust, bust / size.width * (size.width + wider) - bust, 1e-6 * bust);
    const double hem = made.draft.bodice.at.underarm - made.draft.bodice.at.fold;
    EXPECT_NEAR(effect.hemToUnderarm, hem / size.height * (size.height + taller) - hem, 1e-6 * hem);
    const double sleeve = made.draft.sleeve.length;
    EXPECT_NEAR(effect.sleeveLength, sleeve / size.height * (size.height + taller) - sleeve,
                1e-6 * sleeve);
    // The swatch that brings the bust within a centimetre: its reading error, half a stitch in the
    // whole count, is then a centimetre of the bust.
    EXPECT_NEAR(kReadingError * size.width / effect.swatchForBust * bust, 1, 1e-6);
    const double now = capMinusArmhole(made.knit, size);
    EXPECT_NEAR(now, (made.knit.right.cap - made.knit.right.armhole).mean(), 1e-9);
    const double byWidth = capMinusArmhole(made.knit, {size.width + wider, size.height}) - now;
    const double byHeight = capMinusArmhole(made.knit, {size.width, size.height + taller}) - now;
    EXPECT_NEAR(effect.match, std::hypot(byWidth, byHeight), 1e-9);
    ++compared;
  }
  EXPECT_GT(compared, 40);
}

} // namespace
} // namespace scye::gauge_effect
