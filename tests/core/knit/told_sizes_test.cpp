// Sizes that are told of a knitted piece, and where its stitch pattern lies, read off the row
// tables.
#include "garment/derived.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

const Rounded* told(const KnitGarment& k, const std::string& key) {
  const auto at = std::find_if(k.rounded.begin(), k.rounded.end(),
                               [&](const Rounded& r) { return r.key == key; });
  return at == k.rounded.end() ? nullptr : &*at;
}

// What is spread over a row above a rib, all of it and as much as lies at its right edge.
struct Added {
  int all = 0, right = 0;
};
Added addedAbove(const KnitPiece& piece, int row) {
  Added added;
  for (const RowLine& line : piece.rows)
    for (const Act& a : line.acts)
      if (a.kind == ActKind::IncreaseEvenly && a.shapes == Shapes::Hem && line.row.value() > row) {
        const int k = a.stitches.value();
        added.all += k;
        added.right += a.from == Stitches(0) ? k / 2 : a.side == EdgeSide::Right ? k : 0;
      }
  return added;
}

// The widths in cm that a piece has in the rows about a height, between its seams; in a rib with
// the stitches that are added above it.
std::vector<double> widthsAbout(const KnitPiece& piece, double height, const Lattice& l) {
  std::vector<double> widths;
  for (const RowLine& line : piece.rows)
    if (line.section == SectionId::Undivided &&
        std::abs(l.size.up(line.row) - height) <= 2 * l.size.height)
      widths.push_back((line.rightEdge - line.leftEdge + addedAbove(piece, line.row.value()).all -
                        2 * l.selvedge.value()) *
                       l.size.width);
  return widths;
}

TEST(ToldSizes, areReadWhereThePartLies) {
  test::RandomDesigns random(test::propertySeed(2311));
  int waists = 0, elbows = 0;
  for (int i = 0; i < 150; ++i) {
    Design d = random.plausible();
    d.choose(Choice::SideSeam, SideSeam::Shaped).choose(Choice::SleeveLine, SleeveLine::Fitted);
    const GarmentDraft g = draftGarment(d);
    const KnitGarment k = knitGarment(g);
    const auto among = [&](const Rounded& size, const KnitPiece& piece, double height) {
      const std::vector<double> widths = widthsAbout(piece, height, k.lattice);
      EXPECT_TRUE(std::any_of(widths.begin(), widths.end(),
                              [&](double w) { return std::abs(w - size.knitted) < 1e-9; }))
          << size.key << " in design " << i;
    };
    const KnitPiece* back = k.piece(PieceId::Back);
    if (const Rounded* waist = told(k, "waist"); back && waist)
      among(*waist, *back, g.bodice.at.waist), ++waists;
    const KnitPiece* sleeve = k.piece(PieceId::Sleeve);
    if (const Rounded* elbow = told(k, "elbow"); sleeve && elbow)
      among(*elbow, *sleeve, g.sleeve.length - 0.5 * g.sizes.finished(Field::SleeveToUnderarm)),
          ++elbows;
  }
  EXPECT_GT(waists, 60);
  EXPECT_GT(elbows, 60);
}

// A jacket in a pattern of 12 stitches and 5 more: from band to selvedge, and across the back, the
// repeats are whole, and what the directions say comes before the first one leads to one.
TEST(PatternRepeats, liePlainlyBetweenBandAndSelvedge) {
  constexpr int kMultiple = 12, kExtra = 5;
  test::RandomDesigns random(test::propertySeed(2312));
  for (int i = 0; i < 60; ++i) {
    Design d = random.plausible();
    d.choose(Choice::Garment, Garment::Jacket);
    const BandMade made = i % 2 ? BandMade::PickedUp : BandMade::KnittedOn;
    d.choose(Choice::BandMade, made);
    d.set(Field::PatternMultiple, kMultiple).set(Field::PatternExtra, kExtra);
    const Derived derived = derive(d);
    const KnitGarment& k = derived.knit;
    const Lattice& l = k.lattice;
    const Stitches atFront = made == BandMade::PickedUp ? l.pickUp : l.band;
    for (std::size_t p = 0; p < k.pieces.size(); ++p) {
      const KnitPiece& piece = k.pieces[p];
      const bool right = piece.id == PieceId::RightFront, left = piece.id == PieceId::LeftFront;
      if (piece.id != PieceId::Back && !right && !left) continue;
      const auto begun = [&](Rows row) { return row >= Rows(0) && row < piece.underarmRow; };
      if (begun(piece.neckRow) || begun(piece.splitRow)) continue; // narrower by then
      const auto below = std::find_if(piece.rows.begin(), piece.rows.end(), [&](const RowLine& r) {
        return r.row == piece.underarmRow - Rows(1);
      });
      ASSERT_NE(below, piece.rows.end());
      const int stitches = int(std::lround(below->rightEdge - below->leftEdge));
      const Stitches beside = right || left ? l.selvedge + atFront : 2 * l.selvedge;
      EXPECT_EQ((stitches - beside.value()) % kMultiple, kExtra) << i;
      // A right-side row is worked from the right edge. Repeats begin beside what finishes it,
      // counted from where that edge is at the bust.
      const double start = piece.rows.front().rightEdge + addedAbove(piece, 0).right,
                   bust = below->rightEdge;
      const int before = int(std::lround(start - bust)) + (right ? atFront : l.selvedge).value();
      const int said = derived.directions.patternAfter.at(p).value();
      EXPECT_EQ(((before - said) % kMultiple + kMultiple) % kMultiple, 0) << i;
      EXPECT_LT(said, kMultiple);
    }
  }
}

} // namespace
} // namespace scye
