// What the garments' row tables must hold, whatever the design. The tables are read here by
// themselves; nothing of what made them is asked.
#include "garment/derived.h"
#include "knit/knit_garment.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace scye {
namespace {

Design sound() {
  Design d;
  d.choose(Choice::Washed, YesNo::Yes);
  return d.set(Field::Bust, 94).set(Field::SwatchStitches, 22).set(Field::SwatchRows, 30);
}
Design jacket() {
  return sound().choose(Choice::Garment, Garment::Jacket);
}
KnitGarment knitted(const Design& d) {
  return knitGarment(draftGarment(d));
}

std::vector<Act> acts(const KnitPiece& piece, ActKind kind, Shapes shapes) {
  std::vector<Act> out;
  for (const RowLine& line : piece.rows)
    for (const Act& a : line.acts)
      if (a.kind == kind && a.shapes == shapes) out.push_back(a);
  return out;
}

// A piece is as wide as its drafted width in whole stitches, and has a selvedge at each side.
TEST(KnitGarment, aBackHasAStitchMoreAtEachSideThanItsWidth) {
  for (const double bust : {84.0, 91.3, 97.7, 104.1, 118.6}) {
    Design design = sound();
    const GarmentDraft draft = draftGarment(design.set(Field::Bust, bust));
    const Lattice lattice = latticeOf(draft);
    ASSERT_EQ(lattice.selvedge, Stitches(1));
    const double wanted = 0.5 * draft.sizes.finished(Field::Bust) / lattice.size.width;
    EXPECT_NEAR(lattice.back.bust().value(), wanted + 2, 0.5 + 1e-9) << bust;
  }
}

// Rows in which the edge stitch of a side is worked, from the cast-on up to the underarm bind-off.
int rowsAtSide(const KnitPiece& piece, EdgeSide side) {
  int rows = 0, waiting = 0;
  for (const RowLine& line : piece.rows) {
    // A deep neck divides the piece below the underarm; the other half has the other side.
    if (line.row == Rows(0) ||
        line.section == (side == EdgeSide::Right ? SectionId::Left : SectionId::Right))
      continue;
    for (const Act& a : line.acts) {
      if (a.side != side) continue;
      if (a.kind == ActKind::BindOff && a.shapes == Shapes::Underarm) return rows;
      if (a.kind == ActKind::Wait) waiting += a.stitches.value();
      if (a.kind == ActKind::TakeUp) waiting = 0;
    }
    rows += waiting == 0;
  }
  return rows;
}

const KnitPiece& front(const KnitGarment& k, EdgeSide side) {
  const KnitPiece* whole = k.piece(PieceId::Front);
  return whole ? *whole
               : *k.piece(side == EdgeSide::Right ? PieceId::LeftFront : PieceId::RightFront);
}

// Common practice, and the promise of the schematic: edges that are sewn have equal rows, whatever
// is worked between them.
TEST(GarmentRows, sideSeamsHaveEqualRowsWithShortRowsToo) {
  test::RandomDesigns random(test::propertySeed(2201));
  int withShortRows = 0;
  for (int i = 0; i < 500; ++i) {
    const Design d = random.plausible();
    const KnitGarment k = knitted(d);
    const KnitPiece* back = k.piece(PieceId::Back);
    if (!back || !k.impossible.empty() || k.lattice.back.underarm == Stitches(0) ||
        k.lattice.front.underarm == Stitches(0))
      continue;
    withShortRows += k.lattice.front.longer > Rows(0);
    for (const EdgeSide side : {EdgeSide::Right, EdgeSide::Left})
      ASSERT_EQ(rowsAtSide(*back, side), rowsAtSide(front(k, side), side)) << "design " << i;
  }
  EXPECT_GT(withShortRows, 40);
}

TEST(GarmentRows, shouldersOfBackAndFrontAreAlikeStepByStep) {
  test::RandomDesigns random(test::propertySeed(2202));
  int shortRows = 0;
  for (int i = 0; i < 500; ++i) {
    const KnitGarment k = knitted(random.plausible());
    const KnitPiece* back = k.piece(PieceId::Back);
    if (!back || !k.impossible.empty()) continue;
    shortRows += k.lattice.shoulderShortRows;
    for (const EdgeSide side : {EdgeSide::Right, EdgeSide::Left}) {
      const auto steps = [&](const KnitPiece& piece) {
        std::map<int, int> out; // rows from the first step to the stitches that leave the work
        for (const RowLine& line : piece.rows)
          for (const Act& a : line.acts)
            if (a.side == side && a.shapes == Shapes::Shoulder && a.kind != ActKind::TakeUp)
              out[(line.row - piece.shoulderRow).value()] +=
                  a.kind == ActKind::Wait || !k.lattice.shoulderShortRows ? a.stitches.value() : 0;
        return out;
      };
      const auto b = steps(*back), f = steps(front(k, side));
      for (const auto& [row, stitches] : b)
        ASSERT_TRUE(stitches == 0 || (f.contains(row) && f.at(row) == stitches))
            << "design " << i << " row " << row;
    }
  }
  EXPECT_GT(shortRows, 100);
}

// Both ways of working a slope of 2.5 cm at 3 rows to the cm take 8 rows in 4 steps, alike at both
// shoulders; only short rows end in one bound-off edge (common practice).
TEST(GarmentRows, shortRowsMakeTheSlopeOfStepsAndOneEdge) {
  const Design slope =
      sound().set(Field::ShoulderDrop, 2.5).set(Field::ArmholeDepth, 20.4, Source::Garment);
  const KnitGarment steps = knitted(slope);
  const KnitGarment rows =
      knitted(Design(slope).choose(Choice::ShoulderWork, ShoulderWork::ShortRows));
  const KnitPiece &a = *steps.piece(PieceId::Front), &b = *rows.piece(PieceId::Front);
  const auto off = acts(a, ActKind::BindOff, Shapes::Shoulder),
             waits = acts(b, ActKind::Wait, Shapes::Shoulder);
  const auto closed = acts(b, ActKind::BindOff, Shapes::Shoulder);
  ASSERT_EQ(off.size(), 8u);
  ASSERT_EQ(waits.size(), 6u) << "the last group is worked over with all";
  ASSERT_EQ(closed.size(), 2u);
  EXPECT_EQ(closed[0].stitches, closed[1].stitches);
  EXPECT_EQ(closed[0].stitches, steps.lattice.front.shoulder);
  for (std::size_t i = 0; i < waits.size(); ++i)
    EXPECT_EQ(waits[i].stitches, off[i < 3 ? i : i + 1].stitches);
  EXPECT_EQ(a.lastRow(), b.lastRow());
  // A right edge is left at the end of a WS row, a left one at the end of an RS row.
  for (const Act& w : waits)
    EXPECT_EQ(w.row % 2 == 1, w.side == EdgeSide::Left);
}

TEST(GarmentRows, armholesMatchTheirCapsWithEitherShoulder) {
  for (const ShoulderWork work : {ShoulderWork::Steps, ShoulderWork::ShortRows}) {
    const KnitGarment k = knitted(sound().choose(Choice::ShoulderWork, work));
    EXPECT_LE(std::abs(k.mismatch()), 0.2);
    const KnitPiece& back = *k.piece(PieceId::Back);
    // Length by the row table alone.
    std::vector<double> right;
    for (const RowLine& line : back.rows)
      if (line.section != SectionId::Left && line.row >= back.underarmRow - Rows(1))
        right.push_back(line.rightEdge);
    const KnittedEdge edge =
        edgeFromColumn(right, EdgeSide::Right, back.underarmRow, back.shoulderRow);
    EXPECT_NEAR(edgeLength(edge, k.lattice.size).chord, k.backArmhole.right.chord, 1e-9);
  }
}

TEST(GarmentRows, aStraightBackNeckIsBoundOffInOneRow) {
  for (const ShoulderWork work : {ShoulderWork::Steps, ShoulderWork::ShortRows}) {
    const KnitGarment k = knitted(
        sound().choose(Choice::BackNeck, BackNeck::Straight).choose(Choice::ShoulderWork, work));
    const KnitPiece& back = *k.piece(PieceId::Back);
    ASSERT_EQ(back.sections.size(), 1u);
    EXPECT_EQ(back.rows.back().stitches(), Stitches(0));
    const auto close = acts(back, ActKind::Close, Shapes::Neck);
    ASSERT_EQ(close.size(), 1u);
    const Stitches shoulders = (work == ShoulderWork::ShortRows ? 2 : 0) * k.lattice.back.shoulder;
    EXPECT_EQ(close[0].stitches, k.lattice.back.neck(true) + shoulders);
  }
  // A slit below it still divides the piece.
  const KnitGarment slit =
      knitted(sound().choose(Choice::BackNeck, BackNeck::Straight).set(Field::BackOpening, 8));
  EXPECT_EQ(slit.piece(PieceId::Back)->sections.size(), 3u);
}

// A V neck needs a right-side row for each stitch of its half width (common practice: decreases on
// every 2nd row).
TEST(GarmentRows, aVThatIsTooShallowIsSaid) {
  Design d = sound().choose(Choice::Neckline, Neckline::Vee);
  EXPECT_EQ(findCode(findingsOf(d), "knit.blunt"), nullptr);
  EXPECT_NE(findCode(findingsOf(d.set(Field::FrontNeckDrop, 3)), "knit.blunt"), nullptr);
}

// The facing is as long as it is deep, its fold a purled right-side row, and the body above it as
// long as without one.
TEST(GarmentRows, aFacingIsKnittedBelowTheFold) {
  const KnitGarment plain = knitted(sound().choose(Choice::Hem, HemMade::Plain));
  const KnitGarment faced =
      knitted(sound().choose(Choice::Hem, HemMade::Faced).set(Field::HemDepth, 3));
  const Rows facing = faced.lattice.foldRow - Rows(1);
  EXPECT_NEAR(facing.value() * faced.lattice.size.height, 3, faced.lattice.size.height);
  EXPECT_EQ(faced.lattice.foldRow % 2, 1);
  EXPECT_EQ(faced.lattice.underarmRow - facing, plain.lattice.underarmRow);
  EXPECT_EQ(plain.lattice.hemRows, Rows(0));
}

// Common practice: the short rows over the bust are as many as the front is longer, and end before
// the bust points.
TEST(GarmentRows, shortRowsOverTheBustLengthenTheMiddle) {
  for (const Design& base : {sound(), jacket()}) {
    Design d = base;
    d.choose(Choice::BustShaping, BustShaping::ShortRows)
        .set(Field::BustDepth, 2.6)
        .set(Field::BustReach, 11);
    const KnitGarment k = knitted(d);
    EXPECT_EQ(k.lattice.front.longer, Rows(8)) << "2.6 cm at 3 rows to the cm, in pairs";
    EXPECT_EQ(k.lattice.front.bustTurns, std::vector(4, Stitches(6)))
        << "11 cm at 2.2 stitches to the cm";
    const KnitPiece& piece = front(k, EdgeSide::Right);
    EXPECT_EQ(piece.underarmRow, k.piece(PieceId::Back)->underarmRow + Rows(8));
    int waited = 0;
    for (const RowLine& line : piece.rows)
      waited += line.waiting > Stitches(0);
    EXPECT_EQ(waited, d.as<Garment>() == Garment::Jacket ? 8 : 9)
        << "the right edge follows a row later";
  }
}

// A half front has one wedge, which may reach past its middle: as far as it is drafted.
TEST(GarmentRows, shortRowsOfAHalfFrontReachAsFarAsDrafted) {
  Design d = jacket().choose(Choice::BustShaping, BustShaping::ShortRows);
  d.set(Field::BustDepth, 3).set(Field::BustReach, 17);
  for (const BandMade band : {BandMade::KnittedOn, BandMade::PickedUp}) {
    const GarmentDraft draft = draftGarment(d.choose(Choice::BandMade, band));
    ASSERT_DOUBLE_EQ(draft.bodice.bust.reach, 17);
    const KnitGarment k = knitGarment(draft);
    Stitches reach;
    for (const Stitches turn : k.lattice.front.bustTurns)
      reach += turn;
    EXPECT_NEAR(reach.value() * k.lattice.size.width, 17, 0.5 * k.lattice.size.width);
    EXPECT_TRUE(k.impossible.empty());
  }
}

TEST(GarmentRows, aFullSleeveIsGatheredIntoItsCuff) {
  Design d = sound().choose(Choice::SleeveLine, SleeveLine::Full);
  d.set(Field::CuffGirth, 20).set(Field::FullGirth, 44).set(Field::CuffDepth, 5);
  const KnitGarment k = knitted(d);
  const KnitPiece& sleeve = *k.piece(PieceId::Sleeve);
  const auto spread = acts(sleeve, ActKind::IncreaseEvenly, Shapes::Cuff);
  int more = 0;
  for (const Act& a : spread)
    more += a.stitches.value();
  ASSERT_EQ(spread.size(), 2u) << "more than twice the stitches take two rows";
  EXPECT_EQ(spread[0].row, k.lattice.cuffRows + Rows(1));
  EXPECT_NEAR(sleeve.castOn().value() - 2, 20 * 2.2, 1);
  EXPECT_NEAR(sleeve.castOn().value() + more - 2, 44 * 2.2, 1);
}

// Where a sleeve is too short to reach its fullness below the cap it is cast on wider, and that is
// said.
TEST(GarmentRows, aShortFullSleeveIsWidenedBelowItsCap) {
  Design d = sound().choose(Choice::SleeveLine, SleeveLine::Full);
  d.set(Field::CuffGirth, 8).set(Field::FullGirth, 70);
  for (const double length : {0.5, 1.0, 2.0, 3.0, 5.0}) {
    const KnitGarment k = knitted(d.set(Field::SleeveLength, length));
    const KnitPiece& sleeve = *k.piece(PieceId::Sleeve);
    for (const Act& a : acts(sleeve, ActKind::IncreaseEvenly, Shapes::Cuff))
      EXPECT_LT(a.row, sleeve.underarmRow) << length;
    const bool wide = sleeve.castOn().value() * k.lattice.size.width > 12;
    EXPECT_EQ(wide, length < 3);
    EXPECT_TRUE(std::any_of(k.rounded.begin(), k.rounded.end(), [](const Rounded& r) {
      return std::abs(r.knitted - r.wanted) > r.grain;
    })) << length;
  }
}

struct Holes {
  std::vector<int> rows;
  int neckRow = 0, first = 0; // rows: the neck's first, the last of the hem
};

std::vector<int> numbersOf(const std::vector<Rows>& rows) {
  std::vector<int> numbers;
  for (const Rows row : rows)
    numbers.push_back(row.value());
  return numbers;
}

Holes holesOf(const KnitGarment& k, PieceId id) {
  const KnitPiece& piece = *k.piece(id);
  const Rows hem = piece.foldRow > Rows(0) ? piece.foldRow : piece.hemRows;
  Holes out{{}, piece.neckRow.value(), hem.value()};
  for (const RowLine& line : piece.rows)
    for (const Act& a : line.acts)
      if (a.kind == ActKind::Buttonhole) out.rows.push_back(line.row.value());
  return out;
}

// Common practice: women right over left, men left over right; the first 1.5 cm above the hem, the
// last 1.5 below the neck, evenly between, on right-side rows, two rows clear of the shaping.
TEST(Buttonholes, areSpacedEvenlyOnWholeRows) {
  test::RandomDesigns random(test::propertySeed(2203));
  int jackets = 0;
  for (int i = 0; i < 500; ++i) {
    Design d = random.plausible();
    d.choose(Choice::Garment, Garment::Jacket).choose(Choice::BandMade, BandMade::KnittedOn);
    const KnitGarment k = knitted(d);
    if (!k.impossible.empty() || k.buttonholes.crowded() || k.buttonholes.wanted < 2) continue;
    ++jackets;
    const double h = k.lattice.size.height;
    const PieceId other =
        k.buttonholes.piece == PieceId::LeftFront ? PieceId::RightFront : PieceId::LeftFront;
    ASSERT_TRUE(holesOf(k, other).rows.empty());
    const Holes holes = holesOf(k, k.buttonholes.piece);
    ASSERT_EQ(holes.rows, numbersOf(k.buttonholes.rows));
    const double apart =
        double(holes.rows.back() - holes.rows.front()) / double(holes.rows.size() - 1);
    for (std::size_t n = 0; n < holes.rows.size(); ++n) {
      ASSERT_EQ(holes.rows[n] % 2, 1) << "design " << i;
      ASSERT_LE(std::abs(holes.rows[n] - holes.rows.front() - double(n) * apart), 2)
          << "each within a row of its place";
    }
    std::vector<int> gaps;
    for (std::size_t n = 1; n < holes.rows.size(); ++n)
      gaps.push_back(holes.rows[n] - holes.rows[n - 1]);
    const auto [least, most] = std::minmax_element(gaps.begin(), gaps.end());
    ASSERT_LE(*most - *least, 2) << "from one right-side row to the next, design " << i;
    ASSERT_NEAR((holes.rows.front() - 0.5 - holes.first) * h, 1.5, 1.01 * h) << "design " << i;
    const double below = (holes.neckRow - 1 - (holes.rows.back() - 0.5)) * h;
    ASSERT_GE(holes.neckRow - holes.rows.back(), 3) << "two rows lie between";
    ASSERT_NEAR(below, std::max(1.5, 3.5 * h), 1.01 * h) << "design " << i;
  }
  EXPECT_GT(jackets, 150);
}

// At 3 rows to the cm a hole 1.5 cm above the fold lies halfway between two right-side rows, and so
// do those an even number of rows further on.
TEST(Buttonholes, areEvenWhereTheyFallBetweenRows) {
  Design d =
      jacket().choose(Choice::Hem, HemMade::Faced).choose(Choice::BodyLength, BodyLength::Waist);
  d.clear(Field::Bust);
  const std::vector<int> rows = numbersOf(knitted(d).buttonholes.rows);
  ASSERT_GT(rows.size(), 5u);
  for (std::size_t n = 2; n < rows.size(); ++n)
    EXPECT_LE(std::abs((rows[n] - rows[n - 1]) - (rows[1] - rows[0])), 2) << n;
}

TEST(Buttonholes, lieOnTheSideOfTheirWearer) {
  Design d = jacket();
  EXPECT_EQ(buttonholePiece(styleOf(d)), PieceId::RightFront);
  d.choose(Choice::Figure, Figure::Man);
  EXPECT_EQ(buttonholePiece(styleOf(d)), PieceId::LeftFront);
  EXPECT_EQ(buttonholePiece(styleOf(d.choose(Choice::ButtonSide, ButtonSide::Right))),
            PieceId::RightFront);
}

// A row of buttons puts one at the bust, where a front gapes (common practice).
TEST(Buttonholes, oneLiesAtTheBust) {
  for (const double bust : {84.0, 92.0, 100.0, 112.0})
    for (const double longer : {0.0, 4.0, 8.0}) {
      Design d = jacket().set(Field::Bust, bust).set(Field::ButtonBand, 3);
      d.choose(Choice::BustShaping, BustShaping::ShortRows).set(Field::BustDepth, longer);
      const KnitGarment k = knitted(d);
      const Buttonholes& holes = k.buttonholes;
      ASSERT_GT(holes.bustHole, 0);
      const Rows underarm = k.piece(PieceId::RightFront)->underarmRow;
      const double off = k.lattice.size.up(holes.rows[std::size_t(holes.bustHole - 1)] - underarm);
      EXPECT_LT(std::abs(off), 2) << "cm from the bust line, bust " << bust << ", longer by "
                                  << longer;
    }
}

TEST(Buttonholes, areSaidWhereThereIsNoRoom) {
  Design d = jacket().set(Field::Buttons, 40);
  EXPECT_NE(findCode(findingsOf(d), "buttonholes.crowded"), nullptr);
  EXPECT_EQ(findCode(findingsOf(jacket()), "buttonholes.crowded"), nullptr);
  EXPECT_NE(findCode(findingsOf(jacket().set(Field::ButtonBand, 1)), "buttonholes.narrow"),
            nullptr);
  d = jacket().choose(Choice::BandMade, BandMade::PickedUp);
  EXPECT_TRUE(knitted(d).buttonholes.rows.empty()) << "they are worked in the band itself";
}

} // namespace
} // namespace scye
