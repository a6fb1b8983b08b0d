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

// The purl cells of the rows below the body, where the stitch they are knitted in is known: of a
// rib or seed stitch that fits its count, of garter rows, and of the row along which a facing is
// folded.
[[nodiscard]] std::vector<ChartMark> purlMarks(const KnitPiece& piece, const ChartGrid& grid);

// Row numbers on the side where the row starts, each with the stitches after it where their number
// has changed: one label a row. Where the letters have no room for all, those with a count come
// before rows in which something else happens, and these before the others.
void drawRowLabels(Group& group, const ChartGrid& grid, const ChartAxis& columns,
                   const ChartAxis& rows, const ChartMetrics& metrics, const Phrases& phrases);
// Cells, symbols, outline and breaks, the chart's lower left corner at (0, 0). Their words stay
// clear of the labels that are there.
void drawCells(Group& group, const ChartGrid& grid, const ChartAxis& columns, const ChartAxis& rows,
               const ChartMetrics& metrics, const Phrases& phrases);
// Grey made of fine lines: toner keeps to a line, where an even grey breaks up into dots or smears.
void drawNoStitch(Group& group, const Box& box, double textHeight);
void drawSymbol(Group& group, ChartSymbol symbol, const Box& cell);
// Rib, stitch numbers along the cast-on, heading; beyond the labels that are there.
void drawChartText(Group& group, const KnitPiece& piece, const ChartGrid& grid,
                   const ChartAxis& columns, const ChartAxis& rows, const ChartMetrics& metrics,
                   const Phrases& phrases);
// Below and to the right of `corner`, in lines of at most `width`.
[[nodiscard]] Group chartLegend(const SymbolsUsed& used, const ChartMetrics& metrics,
                                const Vec2& corner, double width, const Phrases& phrases);

} // namespace scye
