#include "schematic/chart_split.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr int kMoreBands = 2; // than there must be, where that saves parts

Span grown(const Span& own, const Span& within, const ChartAxis& axis) {
  Span shown = own;
  for (int i = 0; i < kSharedCells && shown.from > within.from && !axis.cutAt(shown.from - 1); ++i)
    --shown.from;
  for (int i = 0; i < kSharedCells && shown.to < within.to && !axis.cutAt(shown.to); ++i)
    ++shown.to;
  return shown;
}

// As equal in length as whole items allow, in `count` parts; joints never in a cut.
std::vector<Span> equalParts(const Span& of, int count, const ChartAxis& axis) {
  std::vector<Span> parts;
  int from = of.from;
  for (int i = 1; i <= count; ++i) {
    const double target = axis.at(of.from) + lengthOf(of, axis) * i / count;
    int best = of.to;
    for (int at = from + 1; at < of.to && i < count; ++at)
      if (!axis.inCut(at) && std::abs(axis.at(at) - target) < std::abs(axis.at(best) - target))
        best = at;
    if (best > from) parts.push_back({from, best});
    from = best;
  }
  return parts;
}

// The fewest equal parts that fit, each with what it shares and what stands beside it; nothing
// where not even single items do.
using Beside = std::function<double(const Span& shown)>; // cm
std::optional<std::vector<Span>> fewestParts(const Span& of, const ChartAxis& axis, double most,
                                             const Beside& beside, int atLeast = 1) {
  for (int count = atLeast; count <= std::max(atLeast, of.size()); ++count) {
    std::vector<Span> parts = equalParts(of, count, axis);
    const bool fit = std::all_of(parts.begin(), parts.end(), [&](const Span& part) {
      const Span shown = grown(part, of, axis);
      const double length = lengthOf(shown, axis);
      return length <= most && length + beside(shown) <= most;
    });
    if (fit) return parts;
  }
  return std::nullopt;
}

// The columns that have cells in these rows, by place and apart from one another.
std::vector<Span> filledColumns(const ChartGrid& grid, const Span& rows) {
  std::vector<char> filled(std::size_t(grid.columns), 0);
  for (const ChartLine& l : grid.lines)
    if (rows.has(l.row - 1))
      std::fill(filled.begin() + l.cells.from, filled.begin() + l.cells.to, 1);
  return runsIn(filled);
}

// Of a band of rows. Both sides of a neck apart where that needs no more parts than across it.
std::optional<std::vector<Span>> columnsOf(const ChartGrid& grid, const Span& rows,
                                           const ChartAxis& axis, double most,
                                           const Beside& beside) {
  const std::vector<Span> filled = filledColumns(grid, rows);
  if (filled.empty()) return std::vector<Span>{};
  auto across = fewestParts({filled.front().from, filled.back().to}, axis, most, beside);
  if (filled.size() == 1 || !across || across->size() == 1) return across;
  std::vector<Span> apart;
  for (const Span& span : filled) {
    const auto parts = fewestParts(span, axis, most, beside);
    if (!parts) return std::nullopt;
    apart.insert(apart.end(), parts->begin(), parts->end());
  }
  return apart.size() <= across->size() ? apart : across;
}

// By bands from the bottom, from the left in each; nothing where the room is too small.
std::optional<std::vector<ChartWindow>> windowsFor(const Chart& chart,
                                                   const std::vector<Span>& bands, double wide,
                                                   const BesideCells& besideCells) {
  const Span allRows{0, chart.grid.rows}, allColumns{0, chart.grid.columns};
  std::vector<ChartWindow> windows;
  for (const Span& band : bands) {
    const Span shown = grown(band, allRows, chart.rows);
    const auto columns =
        columnsOf(chart.grid, band, chart.columns, wide,
                  [&](const Span& columnsShown) { return besideCells(columnsShown, shown); });
    if (!columns) return std::nullopt;
    for (std::size_t i = 0; i < columns->size(); ++i) {
      const Span part = (*columns)[i];
      Span joined = part; // to its neighbours
      if (i > 0 && (*columns)[i - 1].to == part.from) joined.from = 0;
      if (i + 1 < columns->size() && (*columns)[i + 1].from == part.to)
        joined.to = chart.grid.columns;
      windows.push_back({grown(part, joined, chart.columns), shown, part, band, true});
    }
  }
  if (windows.size() == 1) windows.front() = {allColumns, allRows, allColumns, allRows, false};
  return windows;
}

} // namespace

double lengthOf(const Span& s, const ChartAxis& axis) {
  return axis.at(s.to) - axis.at(s.from);
}

std::vector<Span> runsIn(const std::vector<char>& filled) {
  std::vector<Span> runs;
  for (int i = 0; i < int(filled.size()); ++i) {
    if (!filled[std::size_t(i)]) continue;
    if (runs.empty() || runs.back().to != i) runs.push_back({i, i});
    runs.back().to = i + 1;
  }
  return runs;
}

std::optional<std::vector<ChartWindow>> fewestWindows(const Chart& chart, const Vec2& most,
                                                      const BesideCells& besideCells) {
  const Span rows{0, chart.grid.rows};
  std::optional<std::vector<ChartWindow>> best;
  int bandsAtLeast = 1;
  for (int more = 0; more <= kMoreBands; ++more) {
    const auto bands = fewestParts(
        rows, chart.rows, most.y(), [](const Span&) { return 0.0; }, bandsAtLeast);
    if (!bands) break;
    bandsAtLeast = int(bands->size()) + 1;
    auto windows = windowsFor(chart, *bands, most.x(), besideCells);
    if (windows && (!best || windows->size() < best->size())) best = std::move(windows);
  }
  return best;
}

} // namespace scye
