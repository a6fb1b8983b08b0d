#include "schematic/chart_tiles.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace scye {
namespace {

constexpr double kLargestCells = 1.7, kSmallestCells = 2, kCellStep = 1.05; // of the least
constexpr double kHurry = 0.05;                                             // cm more at every try
constexpr int kTries = 40;                         // to leave enough room beside the cells
constexpr double kSame = 1e-6;                     // cm
constexpr double kCrossArm = 0.3;                  // cm
constexpr double kMapHigh = 1.7, kMapShare = 0.35; // of the room's width

// How much beside the cells is not theirs, cm.
struct Around {
  double across = 0, upward = 0;
};

Path rectangle(const Vec2& low, const Vec2& high) {
  return Path::polyline({low, {high.x(), low.y()}, high, {low.x(), high.y()}, low});
}

// Draws the parts of one chart.
class PartDrawer {
public:
  PartDrawer(const KnitPiece& piece, const Chart& chart, const ChartMetrics& m,
             const Phrases& phrases, double width)
      : piece_(piece), chart_(chart), m_(m), phrases_(phrases), width_(width) {}

  [[nodiscard]] Picture draw(const std::vector<ChartWindow>& windows, std::size_t index) const {
    const ChartField field{chart_.grid, chart_.columns, chart_.rows, m_, phrases_, windows[index]};
    Picture picture;
    Group group;
    group.id = pieceKey(piece_.id);
    group.title = phrases_.say("piece." + group.id);
    group.piece = piece_.id;
    drawRowLabels(group, field);
    drawCells(group, field);
    joints(group, field);
    drawChartText(group, piece_, field);
    picture.title = group.title;
    picture.textHeight = m_.text;
    picture.detail = std::min(m_.width, m_.height);
    const Box box = group.box();
    const double left = std::min(box.low.x(), 0.5 * (box.low.x() + box.high.x() - width_));
    picture.groups.push_back(std::move(group));
    picture.groups.push_back(chartLegend(symbolsIn(field.window), m_,
                                         {left, box.low.y() - 0.8 * m_.text}, width_, phrases_));
    if (field.window.part) {
      for (const Vec2& at : crosses(windows, field.window))
        picture.groups.push_back(cross(at));
      head(picture, windows, index, {left, box.high.y() + 0.8 * m_.text});
    }
    return picture;
  }

private:
  [[nodiscard]] Vec2 place(int column, int row) const {
    return {chart_.columns.at(column), chart_.rows.at(row)};
  }

  [[nodiscard]] SymbolsUsed symbolsIn(const ChartWindow& window) const {
    SymbolsUsed used{};
    for (const ChartMark& mark : chart_.grid.marks) {
      const Span columns = common(mark.columns, window.columns);
      bool seen = false;
      for (int c = columns.from; c < columns.to; ++c)
        seen |= chart_.columns.cutAt(c) == nullptr;
      if (seen && window.rows.has(mark.row - 1) && !chart_.rows.cutAt(mark.row - 1))
        used[std::size_t(mark.symbol)] = true;
    }
    return used;
  }

  void joints(Group& group, const ChartField& field) const {
    const ChartWindow& w = field.window;
    const auto line = [&](const Vec2& a, const Vec2& b) {
      group.strokes.push_back({Path::polyline({a, b}), Role::Guide, false});
    };
    for (const auto& [own, shown] :
         {std::pair(w.ownColumns.from, w.columns.from), {w.ownColumns.to, w.columns.to}})
      if (own != shown) line(place(own, w.rows.from), place(own, w.rows.to));
    for (const auto& [own, shown] :
         {std::pair(w.ownRows.from, w.rows.from), {w.ownRows.to, w.rows.to}})
      if (own != shown) line(place(w.columns.from, own), place(w.columns.to, own));
  }

  // Where the corners of parts lie that more than one of them shows.
  [[nodiscard]] std::vector<Vec2> crosses(const std::vector<ChartWindow>& windows,
                                          const ChartWindow& here) const {
    const auto shows = [](const ChartWindow& w, int column, int row) {
      return w.columns.from <= column && column <= w.columns.to && w.rows.from <= row &&
             row <= w.rows.to;
    };
    std::vector<Vec2> at;
    for (const ChartWindow& w : windows)
      for (const int column : {w.ownColumns.from, w.ownColumns.to})
        for (const int row : {w.ownRows.from, w.ownRows.to}) {
          if (!shows(here, column, row)) continue;
          const bool shared = std::any_of(windows.begin(), windows.end(), [&](const auto& other) {
            return !(other == here) && shows(other, column, row);
          });
          const Vec2 p = place(column, row);
          const bool there = std::any_of(at.begin(), at.end(),
                                         [&](const Vec2& q) { return (p - q).norm() < 1e-9; });
          if (shared && !there) at.push_back(p);
        }
    return at;
  }

  [[nodiscard]] static Group cross(const Vec2& at) {
    Group g;
    g.id = "register";
    for (const Vec2& arm : {Vec2(kCrossArm, 0), Vec2(0, kCrossArm)})
      g.strokes.push_back({Path::polyline({at - arm, at + arm}), Role::Outline, false});
    return g;
  }

  // "1-183, 187": the rows that have stitches of its own.
  [[nodiscard]] std::string filledRows(const ChartWindow& w) const {
    std::vector<char> filled(std::size_t(chart_.grid.rows), 0);
    for (const ChartLine& l : chart_.grid.lines)
      if (w.ownRows.has(l.row - 1) && common(l.cells, w.ownColumns).size() > 0)
        filled[std::size_t(l.row - 1)] = 1;
    std::vector<std::string> told;
    for (const Span& rows : runsIn(filled))
      told.push_back(rows.size() == 1
                         ? std::to_string(rows.to)
                         : std::to_string(rows.from + 1) + "-" + std::to_string(rows.to));
    return phrases_.rules().commas(told);
  }

  // What it is a part of on the left, the map on the right; above `corner`.
  void head(Picture& picture, const std::vector<ChartWindow>& windows, std::size_t index,
            const Vec2& corner) const {
    const ChartWindow& w = windows[index];
    const double h = m_.text, wide = kMapShare * width_;
    picture.groups.push_back(map(windows, index, {corner.x() + width_, corner.y()}, wide));
    Group& group = picture.groups.front();
    const auto line = [&](double y, const std::string& text, Role role, double height,
                          double room) {
      const double fits = std::min(height, height * room / textWidth(text, height));
      group.labels.push_back({{corner.x(), y}, text, role, fits, Anchor::Start, 0});
    };
    const double beside = width_ - picture.groups.back().box().size().x() - h;
    line(corner.y() + 4.6 * h,
         phrases_.say("chart.part",
                      {textParam("piece", group.title), numberParam("part", double(index) + 1),
                       numberParam("parts", double(windows.size()))}),
         Role::Caption, 1.2 * h, beside);
    line(corner.y() + 2.8 * h,
         phrases_.say("chart.part.rows",
                      {textParam("shown", filledRows(w)), numberParam("rows", chart_.grid.rows)}),
         Role::Note, h, beside);
    line(corner.y() + 1.4 * h,
         phrases_.say("chart.part.join", {numberParam("cells", 2 * kSharedCells)}), Role::Note, h,
         beside);
    line(corner.y(), phrases_.say("chart.reading"), Role::Note, h, beside);
  }

  // The piece's edge and the parts on it, this one with a bold frame; its right end at `corner`.
  [[nodiscard]] Group map(const std::vector<ChartWindow>& windows, std::size_t index,
                          const Vec2& corner, double mostWide) const {
    Group g;
    g.id = "map";
    g.title = phrases_.say("sheet.map");
    const Vec2 all(chart_.columns.end(), chart_.rows.end());
    double least = 1e9; // height of a part
    for (const ChartWindow& w : windows)
      least = std::min(least, lengthOf(w.ownRows, chart_.rows));
    // High enough for a number in each.
    const double high = std::max(kMapHigh, 1.5 * m_.text * all.y() / least);
    const double scale = std::min(high / all.y(), mostWide / all.x());
    const Vec2 origin(corner.x() - scale * all.x(), corner.y());
    const auto mapped = [&](const Vec2& p) { return Vec2(origin + scale * p); };
    const Path outline = chartOutline(chart_.grid, chart_.columns, chart_.rows);
    std::vector<Vec2> edge{mapped(outline.start())};
    for (const Cubic& c : outline.segments())
      edge.push_back(mapped(c.end()));
    g.strokes.push_back({Path::polyline(edge), Role::Measure, false});
    // Where they are too narrow for all their numbers this one stands alone.
    const double numberWide = textWidth(std::to_string(windows.size()), m_.text);
    const bool numbered = std::all_of(windows.begin(), windows.end(), [&](const auto& w) {
      return numberWide <= scale * lengthOf(w.ownColumns, chart_.columns) &&
             m_.text <= scale * lengthOf(w.ownRows, chart_.rows);
    });
    for (std::size_t i = 0; i < windows.size(); ++i) {
      const ChartWindow& w = windows[i];
      const Vec2 a = mapped(place(w.ownColumns.from, w.ownRows.from)),
                 b = mapped(place(w.ownColumns.to, w.ownRows.to));
      const bool here = i == index;
      g.strokes.push_back({rectangle(a, b), here ? Role::Outline : Role::Guide, false});
      if (here)
        for (const double in : {0.03, 0.06})
          g.strokes.push_back(
              {rectangle(a + Vec2::Constant(in), b - Vec2::Constant(in)), Role::Outline, false});
      if (!numbered && !here) continue;
      const double inside = 0.5 * numberWide, x = 0.5 * (a.x() + b.x());
      g.labels.push_back({{std::max(std::min(x, corner.x() - inside), origin.x() + inside),
                           0.5 * (a.y() + b.y()) - 0.36 * m_.text},
                          std::to_string(i + 1),
                          here ? Role::Caption : Role::Note,
                          m_.text,
                          Anchor::Middle,
                          0});
    }
    return g;
  }

  const KnitPiece& piece_;
  const Chart& chart_;
  const ChartMetrics& m_;
  const Phrases& phrases_;
  double width_;
};

class Tiler {
public:
  Tiler(const KnitPiece& piece, const StitchSize& size, const Phrases& phrases, const Vec2& room,
        double letters)
      : piece_(piece), size_(size), phrases_(phrases), room_(room), letters_(letters) {}

  [[nodiscard]] ChartParts run() const {
    const double ratio = size_.width > 0 ? size_.height / size_.width : 1;
    const double least = kLeastDetailMm / 10 / std::min(1.0, ratio);
    ChartParts parts = at(least, std::numeric_limits<std::size_t>::max());
    // Better small than not at all, where the room is hardly more than that of the numbers.
    for (double smaller = 1; parts.parts.empty() && smaller < kSmallestCells; smaller *= kCellStep)
      parts = at(least / smaller, std::numeric_limits<std::size_t>::max());
    if (parts.parts.empty()) return parts;
    for (double larger = kLargestCells; larger >= kCellStep; larger /= kCellStep)
      if (ChartParts other = at(least * larger, parts.parts.size()); !other.parts.empty())
        return other;
    return parts;
  }

private:
  // With cells of this width; nothing where it takes more parts than `most`.
  [[nodiscard]] ChartParts at(double cellWidth, std::size_t most) const {
    ChartOptions options;
    options.cellWidth = cellWidth;
    options.textHeight = letters_;
    const ChartMetrics m = ChartMetrics::of(size_, options);
    const Chart chart = laidOut(piece_, size_, options);
    if (chart.grid.rows == 0) return {};
    const PartDrawer drawer(piece_, chart, m, phrases_, room_.x());
    const BesideCells besideCells = [&](const Span& columns, const Span& rows) {
      return numbersOf(chart, m, columns, rows);
    };
    Around around{0, 4 * m.text};
    for (int i = 0; i < kTries; ++i) {
      const auto windows =
          fewestWindows(chart, room_ - Vec2(around.across, around.upward), besideCells);
      if (!windows || windows->size() > most) return {};
      ChartParts all{{m.width, m.height}, {}};
      bool fit = true;
      const double step = kSame + kHurry * i;
      for (std::size_t k = 0; k < windows->size(); ++k) {
        const ChartWindow& w = (*windows)[k];
        all.parts.push_back({w, drawer.draw(*windows, k)});
        const Vec2 over = all.parts.back().picture.box().size() - room_;
        // Other parts come of it only where this one is taken for too large.
        if (over.x() > kSame)
          around.across =
              std::max(around.across, room_.x() + step - lengthOf(w.columns, chart.columns) -
                                          numbersOf(chart, m, w.columns, w.rows));
        if (over.y() > kSame)
          around.upward = std::max(around.upward, room_.y() + step - lengthOf(w.rows, chart.rows));
        fit = fit && over.maxCoeff() <= kSame;
      }
      if (fit) return all;
    }
    return {};
  }

  [[nodiscard]] double numbersOf(const Chart& chart, const ChartMetrics& m, const Span& columns,
                                 const Span& rows) const {
    Group numbers;
    drawRowLabels(
        numbers,
        {chart.grid, chart.columns, chart.rows, m, phrases_, {columns, rows, columns, rows, true}});
    const Box box = numbers.box();
    return box.empty() ? 0 : box.size().x() - lengthOf(columns, chart.columns);
  }

  const KnitPiece& piece_;
  const StitchSize& size_;
  const Phrases& phrases_;
  Vec2 room_;
  double letters_;
};

} // namespace

ChartParts chartParts(const KnitPiece& piece, const StitchSize& size, const Phrases& phrases,
                      const Vec2& room, double letters) {
  return Tiler(piece, size, phrases, room, letters).run();
}

PartsMaker chartPartsOf(const KnitPiece& piece, const StitchSize& size, const Phrases& phrases) {
  return [&piece, size, &phrases](const Vec2& room, double letters) {
    std::vector<Picture> pictures;
    for (ChartPart& part : chartParts(piece, size, phrases, room, letters).parts)
      pictures.push_back(std::move(part.picture));
    return pictures;
  };
}

} // namespace scye
