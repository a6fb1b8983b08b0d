#include "schematic/chart_drawing.h"
#include "schematic/dimension.h"

#include <algorithm>

namespace scye {
namespace {

constexpr double kLegendCell = 1.6; // letters' heights

class TextWriter {
public:
  TextWriter(Group& group, const KnitPiece& piece, const ChartGrid& grid, const ChartAxis& columns,
             const ChartAxis& rows, const ChartMetrics& m, const Phrases& phrases)
      : group_(group), piece_(piece), grid_(grid), x_(columns), y_(rows), phrases_(phrases),
        h_(m.text), numberWidth_(textWidth(std::to_string(grid.rows), m.text)) {
    for (const Label& l : group.labels)
      beyond_ = std::min(beyond_, labelBox(l).low.x());
  }

  void run() {
    hem();
    stitchNumbers();
    const double top = y_.end() + 1.2 * h_;
    label({0, top}, phrases_.say("chart.reading"), Role::Note, Anchor::Start);
    label({0, top + 1.9 * h_}, group_.title, Role::Caption, Anchor::Start, 1.5 * h_);
  }

private:
  void label(const Vec2& at, std::string text, Role role, Anchor anchor, double height = 0) {
    group_.labels.push_back({at, std::move(text), role, height > 0 ? height : h_, anchor, 0});
  }
  [[nodiscard]] double baseline(int row) const { return y_.middle(row - 1) - 0.36 * h_; }

  // Rib, or a facing up to its fold.
  void hem() {
    const int fold = piece_.foldRow;
    if (fold > grid_.rows || piece_.hemRows > grid_.rows) return;
    if (fold <= 0)
      bracket(piece_.hemRows, "chart.rib");
    else
      bracket(fold - 1, "chart.facing"), foldLine(fold);
  }

  void bracket(int rows, const char* key) {
    if (rows <= 0) return;
    const double x = bracketAt(), tick = 0.4 * h_, top = y_.at(rows);
    group_.strokes.push_back(
        {Path::polyline({{x + tick, 0}, {x, 0}, {x, top}, {x + tick, top}}), Role::Measure, false});
    Dimensions(group_, h_)
        .label(
            {{}, phrases_.say(key, {numberParam("rows", rows)}), Role::Note, h_, Anchor::Start, 90},
            {{x - 0.4 * h_, 0}, {beyondLabels(), 0}});
  }

  // Across the row that is purled, from its edge to the word.
  void foldLine(int row) {
    const auto lines = grid_.in(row);
    if (lines.empty()) return;
    const double y = y_.middle(row - 1), x = bracketAt();
    group_.strokes.push_back(
        {Path::polyline({{x, y}, {x_.at(lines.back()->cells.to), y}}), Role::Measure, false});
    Dimensions(group_, h_)
        .label({{}, phrases_.say("chart.fold"), Role::Note, h_, Anchor::End, 0},
               {{x - 0.4 * h_, baseline(row)},
                {beyondLabels(), baseline(row)},
                {beyondLabels() - 1.8 * h_, baseline(row)}});
  }

  [[nodiscard]] double bracketAt() const { return -1.0 * h_ - numberWidth_; }
  [[nodiscard]] double beyondLabels() const { return std::min(bracketAt(), beyond_) - 0.8 * h_; }

  void stitchNumbers() {
    double free = 1e300; // what lies to the left of it has room
    for (int n = 10; n <= grid_.castOn.size(); n += 10) {
      const int column = grid_.castOn.to - n;
      const std::string text = std::to_string(n);
      const double x = x_.middle(column), half = 0.5 * textWidth(text, h_) + 0.2 * h_;
      // Beside the chart stand the rows' numbers.
      const bool beyond = x - half < -0.4 * h_ || x + half > x_.end() + 0.4 * h_;
      if (x_.cutAt(column) || x + half > free || beyond) continue;
      free = x - half;
      label({x, -1.1 * h_}, text, Role::Note, Anchor::Middle);
    }
    label({0.5 * (x_.at(grid_.castOn.from) + x_.at(grid_.castOn.to)), -2.4 * h_},
          phrases_.say("chart.castOn", {numberParam("stitches", grid_.castOn.size())}),
          Role::Measure, Anchor::Middle);
  }

  Group& group_;
  const KnitPiece& piece_;
  const ChartGrid& grid_;
  const ChartAxis &x_, &y_;
  const Phrases& phrases_;
  double h_, numberWidth_;
  double beyond_ = 0; // left end of the labels that are there
};

} // namespace

void drawChartText(Group& group, const KnitPiece& piece, const ChartGrid& grid,
                   const ChartAxis& columns, const ChartAxis& rows, const ChartMetrics& metrics,
                   const Phrases& phrases) {
  TextWriter(group, piece, grid, columns, rows, metrics, phrases).run();
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
