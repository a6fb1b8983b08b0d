// The parts of a chart's picture: cells, symbols, numbers, and the legend. For schematic/chart.cpp.
#pragma once

#include "schematic/chart.h"

#include <array>

namespace scye {

// What is common to a chart and its legend, cm.
struct ChartMetrics {
  double width = 0, height = 0; // of a cell
  double text = 0;
  [[nodiscard]] static ChartMetrics of(const StitchSize& size, const ChartOptions& options);
};

using SymbolsUsed = std::array<bool, kChartSymbols>;

// What of a chart is drawn: all of it, or what one sheet of several shows.
struct ChartWindow {
  Span columns, rows;       // shown; rows counted from 0
  Span ownColumns, ownRows; // without what neighbouring sheets show as their own
  bool part = false;        // of several
  bool operator==(const ChartWindow&) const = default;
};

// What is drawn from. All of it must outlive the drawing.
struct ChartField {
  const ChartGrid& grid;
  const ChartAxis &columns, &rows;
  const ChartMetrics& metrics;
  const Phrases& phrases;
  ChartWindow window;
  [[nodiscard]] double left() const { return columns.at(window.columns.from); }
  [[nodiscard]] double right() const { return columns.at(window.columns.to); }
  [[nodiscard]] double bottom() const { return rows.at(window.rows.from); }
  [[nodiscard]] double top() const { return rows.at(window.rows.to); }
  // From the cells to what is written beside them; wider where crosses stand at joints.
  [[nodiscard]] double beside() const;
};

// The purl cells of the rows below the body, and of a band that is knitted on up to the neck, where
// the stitch they are knitted in is known: of a rib or seed stitch that fits its count, of garter
// rows, and of the row along which a facing is folded.
[[nodiscard]] std::vector<ChartMark> purlMarks(const KnitPiece& piece, const ChartGrid& grid);

// Row numbers on the side where the row starts, each with the stitches after it where their number
// has changed: one label a row that has cells here. Where the letters have no room for all, those
// with a count come before rows in which something else happens, and these before the others.
void drawRowLabels(Group& group, const ChartField& field);
// Cells, symbols, outline and breaks, the whole chart's lower left corner at (0, 0). Their words
// stay clear of the labels that are there.
void drawCells(Group& group, const ChartField& field);
// The piece's edge, once round, stair by stair.
[[nodiscard]] Path chartOutline(const ChartGrid& grid, const ChartAxis& columns,
                                const ChartAxis& rows);
// Grey made of fine lines: toner keeps to a line, where an even grey breaks up into dots or smears.
void drawNoStitch(Group& group, const Box& box, double textHeight);
void drawSymbol(Group& group, ChartSymbol symbol, const Box& cell);
// Rib, stitch numbers below, and where it is no part the heading; beyond the labels that are there.
void drawChartText(Group& group, const KnitPiece& piece, const ChartField& field);
// Below and to the right of `corner`, in lines of at most `width`.
[[nodiscard]] Group chartLegend(const SymbolsUsed& used, const ChartMetrics& metrics,
                                const Vec2& corner, double width, const Phrases& phrases);
// Grid and axes, and a picture without groups. `piece` must outlive it.
[[nodiscard]] Chart laidOut(const KnitPiece& piece, const StitchSize& size,
                            const ChartOptions& options);

} // namespace scye
