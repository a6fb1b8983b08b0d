#include "schematic/knitted.h"

#include "garment/derived.h"
#include "garments.h"
#include "pictures.h"
#include "schematic/schematic.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

Box boxOf(const Path& path) {
  Box box;
  box.add(path);
  return box;
}

// A sleeve cannot be widened to the elbow, nor a full one narrowed to the upper arm, by more than a
// stitch at each end of every second row: where it is, it may stay narrower than it is drafted.
bool shapedAllItCan(const KnitPiece& piece) {
  for (const ActKind kind : {ActKind::Increase, ActKind::Decrease}) {
    std::vector<int> rows;
    for (const RowLine& line : piece.rows)
      for (const Act& a : line.acts)
        if (a.shapes == Shapes::Sleeve && a.kind == kind && a.side == EdgeSide::Right)
          rows.push_back(line.row.value());
    const auto far =
        std::adjacent_find(rows.begin(), rows.end(), [](int x, int y) { return y - x > 2; });
    if (rows.size() > 2 && far == rows.end()) return true;
  }
  return false;
}

TEST(KnittedOutline, LiesOverTheDraftToAStitchAndAFewRows) {
  for (const test::Made& m : test::some(51, 80)) {
    const double w = m.knit.lattice.size.width, h = m.knit.lattice.size.height;
    const bool inPattern = m.draft.sizes[Field::PatternMultiple] > 1;
    for (const KnitPiece& piece : m.knit.pieces) {
      const Piece* drafted = m.draft.piece(piece.id);
      if (!drafted || inPattern) continue;
      const Path outline = knittedOutline(piece, m.knit.lattice.size, edgeFinish(m.draft, m.knit));
      ASSERT_FALSE(outline.empty());
      EXPECT_LT((outline.end() - outline.start()).norm(), 1e-9);
      const Box is = boxOf(outline), was = drafted->box();
      EXPECT_NEAR(is.low.y(), 0, 1e-12);
      if (shapedAllItCan(piece)) {
        EXPECT_LT(is.size().x(), was.size().x() + 2.02 * w);
      } else {
        EXPECT_NEAR(is.low.x(), was.low.x(), 1.01 * w) << pieceKey(piece.id);
        EXPECT_NEAR(is.high.x(), was.high.x(), 1.01 * w) << pieceKey(piece.id);
      }
      // The last shoulder step is as high as the slope there; the cap is solved again in whole
      // stitches.
      const double slack =
          piece.id == PieceId::Sleeve ? 0.06 * was.high.y() : m.draft.sizes[Field::ShoulderDrop];
      EXPECT_NEAR(is.high.y(), was.high.y(), slack + 4 * h) << pieceKey(piece.id);
    }
  }
}

// A sewn edge is one selvedge further out than its seam line (DESIGN: lattice of seam lines).
TEST(KnittedOutline, LeavesOutTheSelvedges) {
  for (const int selvedge : {0, 1, 2}) {
    Design design;
    design.set(Field::Bust, 92)
        .set(Field::Selvedge, selvedge)
        .choose(Choice::SideSeam, SideSeam::Straight);
    const GarmentDraft draft = draftGarment(design);
    const KnitGarment k = knitGarment(draft);
    const KnitPiece& back = *k.piece(PieceId::Back);
    const Path outline = knittedOutline(back, k.lattice.size, edgeFinish(draft, k));
    double widest = 0;
    for (const RowLine& l : back.rows)
      widest = std::max(widest, l.rightEdge - l.leftEdge);
    EXPECT_NEAR(boxOf(outline).size().x(), (widest - 2 * selvedge) * k.lattice.size.width, 1e-9);
  }
}

// A piece of 20 stitches, 1 x 1 cm each, selvedges of one.
Path outlineOf(std::vector<Act> acts, int last, int neckRow = -1) {
  KnitPiece piece;
  piece.id = PieceId::Front;
  piece.neckRow = Rows(neckRow);
  piece.sections = {{SectionId::Undivided, Rows(0), Rows(last), -10, 10, std::move(acts)}};
  piece.rows = workedRows(piece.sections);
  return knittedOutline(piece, {1, 1}, {Stitches(1), Stitches(1), Stitches(0)});
}
std::vector<Vec2> corners(const Path& path) {
  std::vector<Vec2> points{path.start()};
  for (const Cubic& c : path.segments())
    points.push_back(c.end());
  return points;
}

// Turned 4 and 8 stitches before the right edge, whose seam line is x = 9: the notch is as deep as
// the turns.
TEST(KnittedOutline, HasANotchWhereShortRowsAreTurnedOverTheBust) {
  const Path outline =
      outlineOf({{Rows(4), ActKind::Wait, EdgeSide::Right, Stitches(4), Shapes::Bust},
                 {Rows(6), ActKind::Wait, EdgeSide::Right, Stitches(4), Shapes::Bust, Stitches(4)},
                 {Rows(8), ActKind::TakeUp, EdgeSide::Right, Stitches(8), Shapes::Bust}},
                10);
  EXPECT_EQ(corners(outline), (std::vector<Vec2>{{9, 0},
                                                 {9, 3},
                                                 {6, 3},
                                                 {6, 5},
                                                 {2, 5},
                                                 {2, 7},
                                                 {9, 7},
                                                 {9, 10},
                                                 {-9, 10},
                                                 {-9, 0},
                                                 {9, 0}}));
}

TEST(KnittedOutline, AShoulderByShortRowsHasTheStepsOfItsTurns) {
  const Path outline =
      outlineOf({{Rows(3), ActKind::Wait, EdgeSide::Left, Stitches(3), Shapes::Shoulder},
                 {Rows(4), ActKind::Wait, EdgeSide::Right, Stitches(3), Shapes::Shoulder},
                 {Rows(5), ActKind::TakeUp, EdgeSide::Left, Stitches(3), Shapes::Shoulder},
                 {Rows(6), ActKind::TakeUp, EdgeSide::Right, Stitches(3), Shapes::Shoulder},
                 {Rows(7), ActKind::Close, EdgeSide::Right, Stitches(20), Shapes::Neck}},
                7, 7);
  EXPECT_EQ(corners(outline),
            (std::vector<Vec2>{
                {9, 0}, {9, 3}, {6, 3}, {6, 6}, {-6, 6}, {-6, 2}, {-9, 2}, {-9, 0}, {9, 0}}));
}

// A straight neck is the end of an undivided piece; both of its edges are sewn up to there.
TEST(KnittedOutline, AnUndividedPieceEndsStraightAcross) {
  const Path outline =
      outlineOf({{Rows(5), ActKind::BindOff, EdgeSide::Right, Stitches(4), Shapes::Shoulder},
                 {Rows(6), ActKind::BindOff, EdgeSide::Left, Stitches(4), Shapes::Shoulder},
                 {Rows(7), ActKind::Close, EdgeSide::Right, Stitches(12), Shapes::Neck}},
                7, 7);
  EXPECT_EQ(corners(outline),
            (std::vector<Vec2>{
                {9, 0}, {9, 4}, {5, 4}, {5, 6}, {-5, 6}, {-5, 5}, {-9, 5}, {-9, 0}, {9, 0}}));
}

TEST(KnittedOutline, ASpreadRowWidensBothSides) {
  const Path outline = outlineOf(
      {{Rows(3), ActKind::IncreaseEvenly, EdgeSide::Right, Stitches(10), Shapes::Cuff}}, 6);
  EXPECT_EQ(corners(outline),
            (std::vector<Vec2>{
                {9, 0}, {9, 2}, {14, 2}, {14, 6}, {-14, 6}, {-14, 2}, {-9, 2}, {-9, 0}, {9, 0}}));
}

double chordsOf(const KnittedEdge& edge, const StitchSize& size, double flat) {
  return knittedChords(edge, size, flat).length();
}

// The chords drawn are those that are measured: DESIGN, length of a knitted edge.
TEST(KnittedChords, AreAsLongAsTheEdgeOfTheRowTable) {
  for (const test::Made& m : test::some(52, 80))
    for (const KnitPiece& piece : m.knit.pieces) {
      const bool sleeve = piece.crownRow >= Rows(0);
      for (const EdgeSide side : {EdgeSide::Right, EdgeSide::Left}) {
        KnittedEdge edge = seamEdge(piece, side, sleeve ? piece.crownRow : piece.shoulderRow);
        edge.flatTop = sleeve ? 3.5 : 0;
        const StitchSize& size = m.knit.lattice.size;
        EXPECT_NEAR(chordsOf(edge, size, edge.flatTop * size.width), edgeLength(edge, size).chord,
                    1e-9);
      }
    }
}

// The search measures schedules. With decreases on every row the left edge may bind off and
// decrease in one and the same row, which a row table holds as one change; such designs are looked
// at above only.
TEST(KnittedChords, AreAsLongAsTheSearchSays) {
  for (const test::Made& m : test::some(52, 80)) {
    if (m.draft.design.yes(Choice::EveryRow)) continue;
    const KnitGarment& k = m.knit;
    const StitchSize& size = k.lattice.size;
    const KnitPiece& back = *k.piece(PieceId::Back);
    EXPECT_NEAR(chordsOf(seamEdge(back, EdgeSide::Right, back.shoulderRow), size, 0),
                k.backArmhole.right.chord, 1e-9);
    EXPECT_NEAR(chordsOf(seamEdge(back, EdgeSide::Left, back.shoulderRow + Rows(1)), size, 0),
                k.backArmhole.left.chord, 1e-9);
    if (!k.capKnitted) continue;
    const KnitPiece& sleeve = *k.piece(PieceId::Sleeve);
    const Stitches crown = sleeve.rows.back().acts.back().stitches;
    const double half = crownHalfStitches(crown, k.lattice.selvedge) * size.width;
    EXPECT_NEAR(chordsOf(seamEdge(sleeve, EdgeSide::Right, sleeve.crownRow), size, half) +
                    chordsOf(seamEdge(sleeve, EdgeSide::Left, sleeve.crownRow), size, half),
                k.right.cap.chord, 1e-9);
  }
}

TEST(KnittedPictures, ShowTheOutlineOnceAPieceAndTheChordsOnBothSides) {
  const test::Made m = test::some(53, 1).front();
  SchematicOptions o;
  EXPECT_TRUE(test::strokesOf(pieceSchematic(m.draft, builtinPhrases(), o), Role::Knitted).empty());
  o.knitted = &m.knit;
  EXPECT_EQ(test::strokesOf(pieceSchematic(m.draft, builtinPhrases(), o), Role::Knitted).size(),
            m.draft.pieces.size());
  EXPECT_EQ(test::strokesOf(fitComparison(m.draft, builtinPhrases(), o), Role::Knitted).size(), 4u);
}

} // namespace
} // namespace scye
