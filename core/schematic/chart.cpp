#include "schematic/chart.h"

#include "schematic/chart_drawing.h"

#include <algorithm>

namespace scye {
namespace {

constexpr int kLeastFolded = 16; // columns or rows: fewer are not worth a break
constexpr int kKept = 3;         // on either side of it

bool folds(ChartFold fold, int items, int large) {
  return fold == ChartFold::Always || (fold == ChartFold::Large && items > large);
}

void noteSymbols(SymbolsUsed& used, const ChartGrid& grid) {
  for (const ChartMark& m : grid.marks)
    used[std::size_t(m.symbol)] = true;
}

// Without its legend.
Chart drawn(const KnitPiece& piece, const StitchSize& size, const Phrases& phrases,
            const ChartOptions& options) {
  const ChartMetrics m = ChartMetrics::of(size, options);
  Chart chart = laidOut(piece, size, options);
  Group group;
  group.id = pieceKey(piece.id);
  group.title = phrases.say("piece." + group.id);
  group.piece = piece.id;
  const int rows = chart.grid.rows, columns = chart.grid.columns;
  if (rows > 0) {
    const Span allColumns{0, columns}, allRows{0, rows};
    const ChartField field{chart.grid, chart.columns, chart.rows,
                           m,          phrases,       {allColumns, allRows, allColumns, allRows}};
    drawRowLabels(group, field);
    drawCells(group, field);
    drawChartText(group, piece, field);
  }
  if (options.lit && rows > 0) {
    const double low = chart.rows.at(std::clamp(options.lit->from - 1, 0, rows));
    const double high = chart.rows.at(std::clamp(options.lit->to - 1, 0, rows)),
                 x = chart.columns.end();
    if (high > low)
      group.strokes.push_back(
          {Path::polyline({{0, low}, {x, low}, {x, high}, {0, high}, {0, low}}), Role::Lit, false});
  }
  chart.picture.title = group.title;
  chart.picture.groups.push_back(std::move(group));
  return chart;
}

double legendWidth(double charts, const ChartMetrics& m) {
  return std::max(charts, 45 * m.text);
}

} // namespace

ChartMetrics ChartMetrics::of(const StitchSize& size, const ChartOptions& options) {
  ChartMetrics m;
  m.width = options.cellWidth;
  m.height = size.width > 0 ? options.cellWidth * size.height / size.width : options.cellWidth;
  m.text = options.textHeight > 0 ? options.textHeight : 0.78 * m.height;
  return m;
}

Chart laidOut(const KnitPiece& piece, const StitchSize& size, const ChartOptions& options) {
  const ChartMetrics m = ChartMetrics::of(size, options);
  Chart chart;
  chart.grid = chartGrid(piece.rows);
  const ChartGrid& grid = chart.grid;
  std::vector<Span> columns, rows;
  if (folds(options.fold, grid.columns, kFoldColumns))
    columns = cutsIn(alikeColumns(grid, kLeastFolded), kKept, std::max(2, piece.rib.multiple));
  if (folds(options.fold, grid.rows, kFoldRows))
    rows = cutsIn(
        evenRows(grid, {piece.hemRows.value(), piece.foldRow.value() - 1, piece.foldRow.value()},
                 kLeastFolded),
        kKept, 2);
  // They change neither which columns are alike nor which rows are even.
  for (const ChartMark& mark : purlMarks(piece, grid))
    chart.grid.marks.push_back(mark);
  chart.columns = ChartAxis(grid.columns, m.width, std::move(columns), 2 * m.text);
  chart.rows = ChartAxis(grid.rows, m.height, std::move(rows), 2 * m.text);
  chart.picture.textHeight = m.text;
  chart.picture.detail = std::min(m.width, m.height);
  return chart;
}

Chart pieceChart(const KnitPiece& piece, const StitchSize& size, const Phrases& phrases,
                 const ChartOptions& options) {
  Chart chart = drawn(piece, size, phrases, options);
  if (chart.grid.rows == 0) return chart;
  const ChartMetrics m = ChartMetrics::of(size, options);
  SymbolsUsed used{};
  noteSymbols(used, chart.grid);
  chart.picture.groups.push_back(
      chartLegend(used, m, Vec2(0, -4 * m.text), legendWidth(chart.columns.end(), m), phrases));
  return chart;
}

Picture chartPicture(const KnitPiece& piece, const StitchSize& size, const Phrases& phrases,
                     const ChartOptions& options) {
  return pieceChart(piece, size, phrases, options).picture;
}

Picture garmentCharts(const KnitGarment& garment, const Phrases& phrases,
                      const ChartOptions& options) {
  const ChartMetrics m = ChartMetrics::of(garment.lattice.size, options);
  Picture picture;
  picture.title = phrases.say("chart.title");
  picture.textHeight = m.text;
  picture.detail = std::min(m.width, m.height);
  SymbolsUsed used{};
  double top = 0, widest = 0;
  for (const KnitPiece& piece : garment.pieces) {
    Chart chart = drawn(piece, piece.fabric(garment.lattice.size), phrases, options);
    if (chart.grid.rows == 0) continue;
    noteSymbols(used, chart.grid);
    widest = std::max(widest, chart.columns.end());
    const Box box = chart.picture.box();
    for (Group& group : chart.picture.groups) {
      moveGroup(group, Vec2(0, top - box.high.y()));
      picture.groups.push_back(std::move(group));
    }
    top -= box.size().y() + 3 * m.text;
  }
  if (!picture.groups.empty())
    picture.groups.push_back(chartLegend(used, m, Vec2(0, top), legendWidth(widest, m), phrases));
  return picture;
}

} // namespace scye
