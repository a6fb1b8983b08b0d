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

// Cells, symbols, outline and breaks, the chart's lower left corner at (0, 0).
void drawCells(Group& group, const ChartGrid& grid, const ChartAxis& columns, const ChartAxis& rows,
               const ChartMetrics& metrics, const Phrases& phrases);
void drawSymbol(Group& group, ChartSymbol symbol, const Box& cell);
// Row numbers, stitch counts, rib, stitch numbers along the cast-on, heading.
void drawChartText(Group& group, const KnitPiece& piece, const ChartGrid& grid,
                   const ChartAxis& columns, const ChartAxis& rows, const ChartMetrics& metrics,
                   const Phrases& phrases);
// Below and to the right of `corner`, in lines of at most `width`.
[[nodiscard]] Group chartLegend(const SymbolsUsed& used, const ChartMetrics& metrics,
                                const Vec2& corner, double width, const Phrases& phrases);

} // namespace scye
