#include "schematic/chart_drawing.h"
#include "schematic/dimension.h"

#include <algorithm>

namespace scye {
namespace {

constexpr double kLegendCell = 1.6; // letters' heights

class TextWriter {
public:
  TextWriter(Group& group, const KnitPiece& piece, const ChartField& field)
      : group_(group), piece_(piece), f_(field), h_(field.metrics.text),
        numberWidth_(textWidth(std::to_string(field.grid.rows), h_)), beyond_(field.left()) {
    for (const Label& l : group.labels)
      beyond_ = std::min(beyond_, labelBox(l).low.x());
  }

  void run() {
    hem();
    stitchNumbers();
    if (f_.window.part) return;
    const double top = f_.top() + 1.2 * h_;
    label({0, top}, f_.phrases.say("chart.reading"), Role::Note, Anchor::Start);
    label({0, top + 1.9 * h_}, group_.title, Role::Caption, Anchor::Start, 1.5 * h_);
  }

private:
  void label(const Vec2& at, std::string text, Role role, Anchor anchor, double height = 0) {
    group_.labels.push_back({at, std::move(text), role, height > 0 ? height : h_, anchor, 0});
  }
  [[nodiscard]] double baseline(int row) const { return f_.rows.middle(row - 1) - 0.36 * h_; }

  // Rib, or a facing up to its fold; beside the left end of its rows.
  void hem() {
    const int fold = piece_.foldRow.value(), hem = piece_.hemRows.value();
    if (fold > f_.grid.rows || hem > f_.grid.rows) return;
    if (f_.window.columns.from > f_.grid.castOn.from) return;
    if (fold <= 0)
      bracket(hem, "chart.rib");
    else
      bracket(fold - 1, "chart.facing"), foldLine(fold);
  }

  void bracket(int rows, const char* key) {
    const Span here = common({0, rows}, f_.window.rows);
    if (common(here, f_.window.ownRows).size() <= 0) return;
    const double x = bracketAt(), tick = 0.4 * h_, low = f_.rows.at(here.from),
                 top = f_.rows.at(here.to);
    group_.strokes.push_back(
        {Path::polyline({{x + tick, low}, {x, low}, {x, top}, {x + tick, top}}), Role::Measure,
         false});
    Dimensions(group_, h_)
        .label({{},
                f_.phrases.say(key, {numberParam("rows", rows)}),
                Role::Note,
                h_,
                Anchor::Start,
                90},
               {{x - 0.4 * h_, low}, {beyondLabels(), low}});
  }

  // Across the row that is purled, from its edge to the word.
  void foldLine(int row) {
    const auto lines = f_.grid.in(row);
    if (lines.empty() || !f_.window.ownRows.has(row - 1)) return;
    const double y = f_.rows.middle(row - 1), x = bracketAt();
    const int end = std::min(lines.back()->cells.to, f_.window.columns.to);
    group_.strokes.push_back(
        {Path::polyline({{x, y}, {f_.columns.at(end), y}}), Role::Measure, false});
    Dimensions(group_, h_)
        .label({{}, f_.phrases.say("chart.fold"), Role::Note, h_, Anchor::End, 0},
               {{x - 0.4 * h_, baseline(row)},
                {beyondLabels(), baseline(row)},
                {beyondLabels() - 1.8 * h_, baseline(row)}});
  }

  [[nodiscard]] double bracketAt() const {
    return f_.left() - 0.6 * h_ - f_.beside() - numberWidth_;
  }
  [[nodiscard]] double beyondLabels() const { return std::min(bracketAt(), beyond_) - 0.8 * h_; }

  // Every tenth stitch of the cast-on, counted from its right end; where a piece has grown beyond
  // that end, how far.
  void stitchNumbers() {
    const ChartGrid& grid = f_.grid;
    const double under = f_.bottom() - f_.beside() - 0.7 * h_;
    double free = 1e300; // what lies to the left of it has room
    for (int column = f_.window.columns.to - 1; column >= f_.window.columns.from; --column) {
      const int n = grid.castOn.to - column;
      const bool cast = grid.castOn.has(column);
      if ((cast || n > 0 ? n : n - 1) % 10 != 0 || (!cast && !f_.window.part)) continue;
      const std::string text = n > 0 ? std::to_string(n) : "+" + std::to_string(1 - n);
      const double x = f_.columns.middle(column), half = 0.5 * textWidth(text, h_) + 0.2 * h_;
      // Beside the chart stand the rows' numbers.
      const bool beyond = x - half < f_.left() - f_.beside() || x + half > f_.right() + f_.beside();
      if (f_.columns.cutAt(column) || x + half > free || beyond) continue;
      free = x - half;
      label({x, under}, text, Role::Note, Anchor::Middle);
    }
    const Span cast = common(grid.castOn, f_.window.columns);
    if (f_.window.rows.from > 0 || cast.size() == 0) return;
    label({0.5 * (f_.columns.at(cast.from) + f_.columns.at(cast.to)), under - 1.3 * h_},
          f_.phrases.say("chart.castOn", {numberParam("stitches", grid.castOn.size())}),
          Role::Measure, Anchor::Middle);
  }

  Group& group_;
  const KnitPiece& piece_;
  const ChartField& f_;
  double h_, numberWidth_;
  double beyond_; // left end of the labels that are there
};

} // namespace

void drawChartText(Group& group, const KnitPiece& piece, const ChartField& field) {
  TextWriter(group, piece, field).run();
}

Group chartLegend(const SymbolsUsed& used, const ChartMetrics& m, const Vec2& corner, double width,
                  const Phrases& phrases) {
  Group group;
  group.id = "legend";
  group.title = phrases.say("chart.legend");
  // As large as a cell, or as its letters ask for: 4 mm beside letters of 2.5.
  const double wideCell = std::max(m.width, kLegendCell * m.text);
  const double tallCell = std::max(m.height, kLegendCell * m.text);
  double x = corner.x(), y = corner.y() - tallCell;
  const auto entry = [&](const char* key, Role face, std::optional<ChartSymbol> symbol) {
    const std::string text = phrases.say(key);
    const double wide = wideCell + 0.5 * m.text + textWidth(text, m.text);
    if (x > corner.x() && x + wide > corner.x() + width) x = corner.x(), y -= 1.4 * tallCell;
    Box cell;
    cell.add(Vec2(x, y));
    cell.add(Vec2(x + wideCell, y + tallCell));
    const Path frame =
        Path::polyline({cell.low, {cell.high.x(), y}, cell.high, {x, cell.high.y()}, cell.low});
    if (face == Role::NoStitch)
      drawNoStitch(group, cell, m.text);
    else
      group.strokes.push_back({frame, face, true});
    group.strokes.push_back({frame, Role::TenCells, false});
    if (symbol) drawSymbol(group, *symbol, cell);
    group.labels.push_back({Vec2(cell.high.x() + 0.5 * m.text, y + 0.5 * tallCell - 0.36 * m.text),
                            text, Role::Note, m.text, Anchor::Start, 0});
    x += wide + 1.2 * m.text;
  };
  entry("chart.symbol.knit", Role::Fabric, {});
  static constexpr std::array<const char*, kChartSymbols> kKeys{
      "chart.symbol.purl",     "chart.symbol.leansRight", "chart.symbol.leansLeft",
      "chart.symbol.makeOne",  "chart.symbol.bindOff",    "chart.symbol.turnRight",
      "chart.symbol.turnLeft", "chart.symbol.buttonhole"};
  for (int s = 0; s < kChartSymbols; ++s)
    if (used[s]) entry(kKeys[s], Role::Fabric, ChartSymbol(s));
  entry("chart.symbol.none", Role::NoStitch, {});
  return group;
}

} // namespace scye
