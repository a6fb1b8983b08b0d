#include "schematic/chart_axis.h"

#include "knit/knit_garment.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

#include <map>

namespace scye {
namespace {

// One column as a string, a letter a row: what a knitter sees in it. Shares nothing with the
// folding.
std::vector<std::string> columnTexts(const ChartGrid& grid) {
  std::vector<std::string> texts(std::size_t(grid.columns),
                                 std::string(std::size_t(grid.rows), ' '));
  for (const ChartLine& l : grid.lines)
    for (int c = l.cells.from; c < l.cells.to; ++c)
      texts[c][l.row - 1] = '.';
  for (const ChartMark& m : grid.marks)
    for (int c = m.columns.from; c < m.columns.to; ++c)
      texts[c][m.row - 1] = "/\\MO><B"[int(m.symbol)];
  return texts;
}

std::vector<KnitGarment> someGarments(std::uint64_t seed, int count) {
  test::RandomDesigns designs(test::propertySeed(seed));
  std::vector<KnitGarment> garments;
  for (int i = 0; i < count; ++i)
    garments.push_back(knitGarment(draftGarment(designs.plausible())));
  return garments;
}

TEST(ChartGrid, HasACellForEveryStitchOfEveryRow) {
  for (const KnitGarment& k : someGarments(31, 40))
    for (const KnitPiece& piece : k.pieces) {
      const ChartGrid grid = chartGrid(piece.rows);
      std::map<std::pair<SectionId, int>, int> cells, marked;
      for (const ChartLine& l : grid.lines)
        cells[{l.section, l.row}] += l.cells.size();
      for (const RowLine& l : piece.rows) {
        if (l.row == Rows(0)) {
          EXPECT_EQ(grid.castOn.size(), l.stitches().value());
          continue;
        }
        int boundOff = 0;
        for (const Act& a : l.acts)
          if (a.kind == ActKind::BindOff || a.kind == ActKind::Close)
            boundOff += a.stitches.value();
        EXPECT_EQ((cells[{l.section, l.row.value()}]), l.stitches().value() + boundOff)
            << "row " << l.row.value();
      }
    }
}

TEST(ChartGrid, MarksWhatIsWorkedOneStitchInFromTheEdge) {
  int looked = 0;
  for (const KnitGarment& k : someGarments(32, 40))
    for (const KnitPiece& piece : k.pieces) {
      const ChartGrid grid = chartGrid(piece.rows);
      std::size_t next = 0;
      for (const ChartLine& l : grid.lines)
        for (const Act& a : l.told->acts) {
          if (a.kind == ActKind::Rest || a.kind == ActKind::Rejoin || a.kind == ActKind::TakeUp ||
              a.kind == ActKind::Hold)
            continue;
          if (a.kind == ActKind::IncreaseEvenly) {
            next += std::size_t(a.stitches.value());
            continue;
          }
          ASSERT_LT(next, grid.marks.size());
          const ChartMark& m = grid.marks[next++];
          EXPECT_EQ(m.row, l.row);
          EXPECT_EQ(m.columns.size(), a.kind == ActKind::Wait ? 1 : a.stitches.value());
          const bool right = a.side == EdgeSide::Right;
          const int in = right ? l.kept.to - m.columns.to : m.columns.from - l.kept.from;
          if (m.symbol == ChartSymbol::BindOff) {
            // Outside of what is kept, on the side where the row begins.
            EXPECT_TRUE(right ? m.columns.from >= l.kept.to : m.columns.to <= l.kept.from);
          } else if (a.kind == ActKind::Wait) {
            EXPECT_EQ(in, 0); // the last stitch that is worked
            EXPECT_EQ(m.symbol, right ? ChartSymbol::TurnRight : ChartSymbol::TurnLeft);
          } else if (a.kind == ActKind::Buttonhole) {
            EXPECT_EQ(in, a.from.value());
          } else if (l.kept.size() > m.columns.size()) {
            EXPECT_EQ(in, 1);
          }
          // A right edge slants to the left, a left edge to the right.
          if (a.kind == ActKind::Decrease) {
            EXPECT_EQ(m.symbol, right ? ChartSymbol::LeansLeft : ChartSymbol::LeansRight);
          }
          ++looked;
        }
      EXPECT_EQ(next, grid.marks.size());
    }
  EXPECT_GT(looked, 1000);
}

// A strip of 12 stitches with these acts.
RowTable strip(std::vector<Act> acts, int last) {
  return workedRows({{SectionId::Undivided, Rows(0), Rows(last), 0, 12, std::move(acts)}});
}

TEST(ChartGrid, WhatWaitsHasNoCellsUntilItIsTakenUp) {
  const RowTable rows =
      strip({{Rows(1), ActKind::Wait, EdgeSide::Left, Stitches(3), Shapes::Bust},
             {Rows(3), ActKind::Wait, EdgeSide::Left, Stitches(2), Shapes::Bust, Stitches(3)},
             {Rows(5), ActKind::TakeUp, EdgeSide::Left, Stitches(5), Shapes::Bust}},
            6);
  const ChartGrid grid = chartGrid(rows);
  EXPECT_EQ(grid.columns, 12);
  std::vector<int> from;
  for (const ChartLine& l : grid.lines) {
    from.push_back(l.cells.from);
    EXPECT_EQ(l.cells.to, 12);
    EXPECT_EQ(l.cells.size(), l.told->stitches().value());
  }
  EXPECT_EQ(from, (std::vector{3, 3, 5, 5, 0, 0}));
  EXPECT_EQ(grid.marks, (std::vector<ChartMark>{{ChartSymbol::TurnLeft, 1, {3, 4}},
                                                {ChartSymbol::TurnLeft, 3, {5, 6}}}));
  // Columns that wait together are alike, and those that always work.
  EXPECT_EQ(alikeColumns(grid, 2), (std::vector<Span>{{0, 3}, {6, 12}}));
}

// "M1 after every 3 sts, 2 times" in 9 stitches: the new ones are the 4th and the 8th in the order
// of the work, which is from the right on a right-side row.
TEST(ChartGrid, ASpreadRowHasItsNewStitchesWhereTheyAreWorked) {
  const auto columns = [](int before, int more, int row) {
    std::vector<int> out;
    const RowTable rows = workedRows(
        {{SectionId::Undivided,
          Rows(0),
          Rows(row),
          0,
          double(before),
          {{Rows(row), ActKind::IncreaseEvenly, EdgeSide::Right, Stitches(more), Shapes::Cuff}}}});
    for (const ChartMark& m : chartGrid(rows).marks) {
      EXPECT_EQ(m.symbol, ChartSymbol::MakeOne);
      EXPECT_EQ(m.columns.size(), 1);
      out.push_back(m.columns.from);
    }
    return out;
  };
  EXPECT_EQ(columns(9, 2, 1), (std::vector{7, 3}));
  EXPECT_EQ(columns(9, 2, 2), (std::vector{3, 7}));
  EXPECT_EQ(columns(10, 2, 2), (std::vector{4, 8}));
}

TEST(ChartGrid, AButtonholeLiesInItsBand) {
  for (const EdgeSide side : {EdgeSide::Right, EdgeSide::Left}) {
    const RowTable rows =
        strip({{Rows(1), ActKind::Buttonhole, side, Stitches(3), Shapes::Opening, Stitches(2)}}, 2);
    const Span columns = side == EdgeSide::Right ? Span{7, 10} : Span{2, 5};
    EXPECT_EQ(chartGrid(rows).marks,
              (std::vector<ChartMark>{{ChartSymbol::Buttonhole, 1, columns}}));
  }
}

TEST(ChartGrid, FoldsOnlyColumnsThatReadTheSame) {
  std::size_t folded = 0;
  for (const KnitGarment& k : someGarments(33, 25))
    for (const KnitPiece& piece : k.pieces) {
      const ChartGrid grid = chartGrid(piece.rows);
      const auto texts = columnTexts(grid);
      for (const Span& run : alikeColumns(grid, 2)) {
        ++folded;
        for (int c = run.from + 1; c < run.to; ++c)
          ASSERT_EQ(texts[c], texts[run.from]) << c;
      }
    }
  EXPECT_GT(folded, 100u);
}

TEST(ChartGrid, FoldsOnlyRowsInWhichNothingHappens) {
  std::size_t folded = 0;
  for (const KnitGarment& k : someGarments(34, 25))
    for (const KnitPiece& piece : k.pieces) {
      const ChartGrid grid = chartGrid(piece.rows);
      const int hem = piece.hemRows.value(), fold = piece.foldRow.value();
      for (const Span& run : evenRows(grid, {hem, fold - 1, fold}, 4)) {
        ++folded;
        EXPECT_FALSE(run.from < hem && run.to > hem); // the rib's end is shown
        EXPECT_FALSE(run.has(fold - 1));              // so is a fold
        for (const RowLine& l : piece.rows)
          if (l.row.value() - 1 >= run.from && l.row.value() - 1 < run.to) {
            EXPECT_TRUE(l.acts.empty()) << "row " << l.row.value();
          }
      }
    }
  EXPECT_GT(folded, 100u);
}

TEST(ChartGrid, OfNothingIsNothing) {
  const ChartGrid grid = chartGrid({});
  EXPECT_EQ(grid.columns, 0);
  EXPECT_TRUE(alikeColumns(grid, 2).empty());
  EXPECT_TRUE(evenRows(grid, {}, 2).empty());
}

TEST(ChartAxis, FindsEveryItemAgainAndLeavesOutTheCut) {
  const ChartAxis axis(40, 0.5, {{10, 30}}, 1.2);
  EXPECT_NEAR(axis.end(), 20 * 0.5 + 1.2, 1e-12);
  for (int i = 0; i < 40; ++i)
    EXPECT_EQ(axis.itemAt(axis.middle(i)), i);
  EXPECT_EQ(axis.itemAt(-0.1), std::nullopt);
  EXPECT_EQ(axis.itemAt(axis.end() + 0.1), std::nullopt);
  EXPECT_EQ(axis.drawn(), (std::vector<Span>{{0, 10}, {30, 40}}));
  EXPECT_FALSE(axis.inCut(10));
  EXPECT_TRUE(axis.inCut(11));
  EXPECT_FALSE(axis.inCut(30));
}

TEST(ChartAxis, CutsAnEvenNumberAndKeepsBothEnds) {
  EXPECT_EQ(cutsIn({{5, 26}}, 3, 2), (std::vector<Span>{{8, 22}}));
  EXPECT_TRUE(cutsIn({{5, 12}}, 3, 2).empty());
  EXPECT_EQ(cutsIn({{5, 26}}, 3, 4), (std::vector<Span>{{8, 20}}));
}

} // namespace
} // namespace scye
