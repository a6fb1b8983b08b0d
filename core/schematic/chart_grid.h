// A knitted piece as rows of cells, read from its row table alone: which columns of the chart each
// row fills, and which symbols stand in it. Columns count from the left, rows from 1; the cast-on
// is the chart's lower edge. Stitches bound off in a row stand in that row; what is decreased or
// increased shows as one symbol, one stitch in from the edge, in the row as it is after the work;
// so do the stitches of a row that is spread, where the directions put them. Stitches that wait
// beyond a turn have no cells: the edge steps in, and out again in the row that takes them up.
// Exact.
#pragma once

#include "knit/row_table.h"

#include <optional>
#include <vector>

namespace scye {

struct Span {
  int from = 0, to = 0; // from <= i < to
  [[nodiscard]] int size() const { return to - from; }
  [[nodiscard]] bool has(int i) const { return from <= i && i < to; }
  bool operator==(const Span&) const = default;
};
// Empty where they have nothing in common.
[[nodiscard]] Span common(const Span& a, const Span& b);

// The marks of the Craft Yarn Council's published knit chart symbols, from memory: an empty cell
// (knit on RS, purl on WS), a level bar (purl on RS, knit on WS), a stroke leaning right (k2tog) or
// left (ssk), M, an arc (bind off), grey (no stitch). Of our own: a hook open to where the work
// goes on (the turn of a short row, in the last cell that is worked), and a closed arc over each
// stitch of a buttonhole.
enum class ChartSymbol : std::uint8_t {
  Purl,
  LeansRight,
  LeansLeft,
  MakeOne,
  BindOff,
  TurnRight,
  TurnLeft,
  Buttonhole
};
inline constexpr int kChartSymbols = int(ChartSymbol::Buttonhole) + 1;

struct ChartMark {
  ChartSymbol symbol;
  int row = 0;
  Span columns;
  bool operator==(const ChartMark&) const = default;
};

struct ChartLine {
  SectionId section = SectionId::Undivided;
  int row = 0;
  Span cells;                    // as drawn, with the stitches bound off in this row
  Span kept;                     // after it
  const RowLine* told = nullptr; // the line of the row table
};

struct ChartGrid {
  int columns = 0, rows = 0;
  Span castOn;
  std::vector<ChartLine> lines; // body, right, left; by row in each
  std::vector<ChartMark> marks; // by line
  [[nodiscard]] std::vector<const ChartLine*> in(int row) const; // from the left; one or two
};

// `table` must outlive the grid. An empty table gives an empty grid.
[[nodiscard]] ChartGrid chartGrid(const RowTable& table);

// Columns that are the same as their neighbours in every row: at least `least` in a run.
[[nodiscard]] std::vector<Span> alikeColumns(const ChartGrid& grid, int least);
// Rows (counted from 0, so that row 1 is 0) in which nothing happens: at least `least` in a run
// that does not reach across any of the boundaries `kept` (the end of the rib; both sides of a
// fold).
[[nodiscard]] std::vector<Span> evenRows(const ChartGrid& grid, const std::vector<int>& kept,
                                         int least);

} // namespace scye
