#include "making_up/pick_up.h"

#include "support/made.h"
#include "support/random_designs.h"

#include <gmock/gmock.h>

#include <cmath>
#include <numeric>

namespace scye::pick_up {
namespace {

struct Made : test::Made {
  PickUps pick;
};
Made made(const Design& design) {
  const test::Made m = test::made(design);
  return {m, pickUps(m.draft, m.knit)};
}
Design gauge(double stitches, double rows) {
  return Design()
      .set(Field::Bust, 92)
      .set(Field::SwatchWidth, 10 * kCmPerInch)
      .set(Field::SwatchHeight, 10 * kCmPerInch)
      .set(Field::SwatchStitches, 10 * stitches)
      .set(Field::SwatchRows, 10 * rows);
}
Design jacket(BandMade band) {
  return gauge(5, 7).choose(Choice::Garment, Garment::Jacket).choose(Choice::BandMade, band);
}

// Common practice, as printed patterns have it: 5 stitches for 7 rows at 5 x 7 to the inch (the
// gauge of 1918's "A Serviceable Sweater"), 3 for 4 where rows are three quarters as high as
// stitches are wide.
TEST(PickUpRatio, isTheGaugesInSmallNumbers) {
  const auto ratio = [](double stitches, double rows) {
    const PickUpRatio r = pickUpRatio({kCmPerInch / stitches, kCmPerInch / rows});
    return std::pair(r.stitches, r.rows);
  };
  EXPECT_EQ(ratio(5, 7), std::pair(5, 7));
  EXPECT_EQ(ratio(6, 8), std::pair(3, 4));
  EXPECT_EQ(ratio(5.5, 7), std::pair(4, 5)); // 0.786: 4 for 5 is 1.8 % off
  EXPECT_EQ(ratio(8, 8), std::pair(1, 1));
}

TEST(PickUps, countsAlongAFrontEdgeFollowTheRatio) {
  const Made m = made(jacket(BandMade::PickedUp));
  const KnitPiece& front = *m.knit.piece(PieceId::RightFront);
  EXPECT_EQ(m.pick.band.rows, front.neckRow.value() - 1);
  EXPECT_NEAR(m.pick.band.stitches, m.pick.band.rows * 5.0 / 7, 2.5);
  EXPECT_EQ(m.pick.band.stitches % 4, 2) << "2x2 rib begins and ends alike";
  EXPECT_FALSE(m.pick.band.withNeck);
  EXPECT_NEAR(m.pick.neck.bandTop, m.draft.sizes[Field::ButtonBand] / m.knit.lattice.size.width,
              0.5);
}

TEST(PickUps, aFacingIsNotPartOfTheEdge) {
  const Made m = made(jacket(BandMade::PickedUp).choose(Choice::Hem, HemMade::Faced));
  const KnitPiece& front = *m.knit.piece(PieceId::RightFront);
  ASSERT_GT(front.foldRow, Rows(0));
  EXPECT_EQ(m.pick.band.rows, (front.neckRow - Rows(1) - front.foldRow).value());
}

TEST(PickUps, aBandThatIsKnittedOnIsNotPickedUp) {
  for (const Design& design : {jacket(BandMade::KnittedOn), gauge(5, 7)}) {
    const Made m = made(design);
    EXPECT_EQ(m.pick.band.stitches, 0);
    EXPECT_EQ(m.pick.buttonholes.count, 0);
    EXPECT_EQ(m.pick.neck.bandTop, 0);
  }
}

// A square neck: one for each stitch across, rows by the gauge. The back bound off straight: its
// stitches.
TEST(PickUps, boundOffStitchesAreTakenOneByOne) {
  const Made m = made(gauge(5, 7)
                          .choose(Choice::Neckline, Neckline::Square)
                          .choose(Choice::BackNeck, BackNeck::Straight));
  const Lattice& l = m.knit.lattice;
  const int across = l.back.neck(true).value();
  EXPECT_DOUBLE_EQ(m.pick.neck.backLength, across * l.size.width);
  EXPECT_EQ(m.pick.neck.back, across);
  const KnitPiece& front = *m.knit.piece(PieceId::Front);
  const int rows = (front.lastRow() - front.neckRow).value(); // either side
  EXPECT_NEAR(m.pick.neck.frontLength,
              l.front.neck(true).value() * l.size.width + 2 * rows * l.size.height, 1e-9);
}

// As long as the neck is drawn: the chords along the steps follow the curve.
TEST(PickUps, neckEdgesAreAboutAsLongAsDrafted) {
  for (const Neckline neck :
       {Neckline::Round, Neckline::Vee, Neckline::Square, Neckline::Boat, Neckline::High})
    for (const Garment garment : {Garment::Pullover, Garment::Jacket}) {
      const Made m =
          made(gauge(6.5, 8).choose(Choice::Neckline, neck).choose(Choice::Garment, garment));
      const auto drafted = [](const std::vector<PieceEdge>& half) {
        for (const PieceEdge& e : half)
          if (e.kind == EdgeKind::Neck) return e.path.length();
        return 0.0;
      };
      const double fronts = garment == Garment::Jacket ? 1 : 2;
      EXPECT_NEAR(m.pick.neck.frontLength, fronts * drafted(m.draft.bodice.frontHalf), 2.5)
          << int(neck);
      EXPECT_NEAR(m.pick.neck.backLength, 2 * drafted(m.draft.bodice.backHalf), 2.5) << int(neck);
    }
}

// At most half a repeat is changed to suit rib, and left is as right.
TEST(PickUps, totalsFitRibAndTheEdge) {
  test::RandomDesigns random(test::propertySeed(95));
  int necks = 0, bands = 0;
  for (int i = 0; i < 400; ++i) {
    const Made m = made(random.plausible());
    const NeckPickUp& n = m.pick.neck;
    if (n.total() == 0) continue;
    ++necks;
    const double w = m.knit.lattice.size.width;
    EXPECT_GT(n.back, 0);
    EXPECT_GT(n.front, 0);
    const RibStitch& rib = m.knit.lattice.rib;
    EXPECT_EQ((n.total() + (m.pick.band.withNeck ? 2 * m.pick.band.stitches : 0)) % rib.multiple,
              n.round ? 0 : rib.flatRest() % rib.multiple);
    const double edge = n.backLength + (n.twoFronts ? 2 : 1) * n.frontLength;
    EXPECT_NEAR(n.total() - 2 * n.bandTop, edge / w, 1.6 + 0.5 * std::max(4, rib.multiple)) << i;
    if (n.twoFronts || m.draft.sizes[Field::BackOpening] > 3) {
      EXPECT_FALSE(n.round);
    }
    if (m.pick.band.stitches == 0) continue;
    ++bands;
    EXPECT_NEAR(m.pick.band.stitches * w, m.pick.band.rows * m.knit.lattice.size.height,
                0.02 * m.pick.band.rows * m.knit.lattice.size.height + 2.6 * w);
  }
  EXPECT_GT(necks, 300);
  EXPECT_GT(bands, 50);
}

// Common practice: evenly spaced to a stitch, 1.5 cm in from either end.
TEST(BandButtonholes, areEvenToAStitchAndUseUpTheBand) {
  for (int band = 10; band <= 160; ++band)
    for (int wanted = 1; wanted <= 12; ++wanted) {
      const BandButtonholes b = bandButtonholes(band, wanted, kCmPerInch / 5);
      ASSERT_LE(b.count, wanted);
      ASSERT_GT(b.count, 0);
      ASSERT_EQ(int(b.between.size()), b.count - 1);
      ASSERT_EQ(b.before + b.after + b.count * b.stitches +
                    std::accumulate(b.between.begin(), b.between.end(), 0),
                band);
      if (b.between.empty()) continue;
      const auto [low, high] = std::minmax_element(b.between.begin(), b.between.end());
      ASSERT_LE(*high - *low, 1);
      ASSERT_GE(*low, 2);
      ASSERT_TRUE(std::is_sorted(b.between.rbegin(), b.between.rend()));
      ASSERT_EQ(b.before, 3); // 1.5 cm at 5 stitches to the inch
      ASSERT_EQ(b.after, 3);
    }
}

TEST(BandButtonholes, fewerWhereThereIsNoRoom) {
  EXPECT_EQ(bandButtonholes(6, 3, kCmPerInch / 5).count, 0);
  EXPECT_EQ(bandButtonholes(20, 12, kCmPerInch / 5).count, 3); // 3 each and 2 between in 14
}

TEST(BandButtonholes, lieOnTheSideThatIsUsual) {
  Design design = jacket(BandMade::PickedUp);
  EXPECT_EQ(made(design).pick.buttonholes.piece, PieceId::RightFront);
  EXPECT_EQ(made(design.choose(Choice::Figure, Figure::Man)).pick.buttonholes.piece,
            PieceId::LeftFront);
  EXPECT_EQ(made(design.choose(Choice::ButtonSide, ButtonSide::Right)).pick.buttonholes.piece,
            PieceId::RightFront);
}

} // namespace
} // namespace scye::pick_up
