#include "schematic/chart_drawing.h"
#include "schematic/clip.h"
#include "schematic/dimension.h"

#include <algorithm>

namespace scye {
namespace {

constexpr double kNoStitchStep = 0.55; // letters' heights from line to line, across

// One edge of a section, stair by stair, from the bottom of its first line to the top of its last.
std::vector<Vec2> stairs(const ChartGrid& grid, const ChartAxis& x, const ChartAxis& y,
                         SectionId section, bool right) {
  std::vector<Vec2> points;
  for (const ChartLine& l : grid.lines) {
    if (l.section != section) continue;
    const double at = x.at(right ? l.cells.to : l.cells.from);
    if (!points.empty() && points.back().x() == at)
      points.back().y() = y.at(l.row);
    else
      points.insert(points.end(), {Vec2(at, y.at(l.row - 1)), Vec2(at, y.at(l.row))});
  }
  return points;
}

class CellDrawer {
public:
  CellDrawer(Group& group, const ChartGrid& grid, const ChartAxis& columns, const ChartAxis& rows,
             double text)
      : group_(group), grid_(grid), x_(columns), y_(rows), text_(text) {
    spans_.resize(std::size_t(grid.rows));
    for (const ChartLine& l : grid.lines)
      spans_[l.row - 1][l.section == SectionId::Left ? 1 : 0] = l.cells;
  }

  void run() {
    const Path shape = chartOutline(grid_, x_, y_);
    Box all;
    all.add(Vec2(0, 0));
    all.add(Vec2(x_.end(), y_.end()));
    drawNoStitch(group_, all, text_);
    group_.strokes.push_back({shape, Role::Fabric, true});
    for (const bool ten : {false, true}) {
      for (int row = 0; row <= grid_.rows; ++row)
        if (!y_.inCut(row) && (row % 10 == 0) == ten)
          across(row, ten ? Role::TenCells : Role::Cell);
      for (int column = 0; column <= grid_.columns; ++column)
        if (!x_.inCut(column) && tenth(column) == ten)
          upward(column, ten ? Role::TenCells : Role::Cell);
    }
    for (const ChartMark& m : grid_.marks)
      for (int c = m.columns.from; c < m.columns.to; ++c)
        if (!x_.cutAt(c) && !y_.cutAt(m.row - 1)) {
          Box cell;
          cell.add(Vec2(x_.at(c), y_.at(m.row - 1)));
          cell.add(Vec2(x_.at(c + 1), y_.at(m.row)));
          drawSymbol(group_, m.symbol, cell);
        }
    group_.strokes.push_back({shape, Role::Outline, false});
  }

private:
  using RowSpans = std::array<Span, 2>;

  void line(const Vec2& a, const Vec2& b, Role role) {
    group_.strokes.push_back({Path::polyline({a, b}), role, false});
  }

  // Counted from the right end of the cast-on, where the first right-side row begins.
  [[nodiscard]] bool tenth(int column) const { return (grid_.castOn.to - column) % 10 == 0; }

  // The boundary below item `row`, wherever the row below or above it has cells; broken at the
  // cuts.
  void across(int row, Role role) {
    for (int side = 0; side < 2; ++side) {
      Span both = row < grid_.rows ? spans_[row][side] : Span{};
      const Span under = row > 0 ? spans_[row - 1][side] : Span{};
      if (both.size() == 0)
        both = under;
      else if (under.size() > 0)
        both = {std::min(both.from, under.from), std::max(both.to, under.to)};
      if (both.size() == 0) continue;
      for (const Span& s : x_.drawn()) {
        const int from = std::max(s.from, both.from), to = std::min(s.to, both.to);
        if (from < to) line({x_.at(from), y_.at(row)}, {x_.at(to), y_.at(row)}, role);
      }
    }
  }

  void upward(int column, Role role) {
    const auto touches = [&](int row) {
      return std::any_of(spans_[row].begin(), spans_[row].end(), [&](const Span& s) {
        return s.size() > 0 && s.from <= column && column <= s.to;
      });
    };
    for (const Span& s : y_.drawn())
      for (int from = s.from; from < s.to;) {
        int to = from;
        while (to < s.to && touches(to))
          ++to;
        if (to > from) line({x_.at(column), y_.at(from)}, {x_.at(column), y_.at(to)}, role);
        from = to + 1;
      }
  }

  Group& group_;
  const ChartGrid& grid_;
  const ChartAxis &x_, &y_;
  double text_;
  std::vector<RowSpans> spans_; // by row: body or right side, left side
};

// A break: two zigzag lines beside what was left out.
Path zigzag(const Vec2& from, const Vec2& to, const Vec2& sideways, double step) {
  std::vector<Vec2> points{from};
  const double length = (to - from).norm();
  const int teeth = std::max(2, 2 * int(length / (2 * step)));
  for (int i = 1; i < teeth; ++i)
    points.push_back(from + (to - from) * i / teeth + (i % 2 ? sideways : Vec2(0, 0)));
  points.push_back(to);
  return Path::polyline(points);
}

Span widestOf(const std::vector<Span>& spans) {
  return *std::max_element(spans.begin(), spans.end(),
                           [](const Span& a, const Span& b) { return a.size() < b.size(); });
}

// The rows, counted from 0, that fill all of these columns.
std::vector<Span> rowsOver(const ChartGrid& grid, const Span& columns) {
  std::vector<char> full(std::size_t(grid.rows), 0);
  for (const ChartLine& l : grid.lines)
    full[l.row - 1] |= l.cells.from <= columns.from && columns.to <= l.cells.to;
  std::vector<Span> runs;
  for (int row = 0; row < grid.rows; ++row) {
    if (!full[row]) continue;
    if (runs.empty() || runs.back().to != row) runs.push_back({row, row});
    runs.back().to = row + 1;
  }
  return runs;
}

class BreakDrawer {
public:
  BreakDrawer(Group& group, const ChartField& field)
      : group_(group), f_(field), h_(field.metrics.text), words_(group, field.metrics.text) {
    for (const Label& l : group.labels)
      numbers_.add(labelBox(l));
  }

  void run() {
    for (const Span& cut : f_.columns.cuts())
      if (common(cut, f_.window.columns) == cut) columnsLeftOut(cut);
    for (const Span& cut : f_.rows.cuts())
      if (common(cut, f_.window.rows) == cut) rowsLeftOut(cut);
  }

private:
  void label(const std::vector<Vec2>& places, std::string text, double angle) {
    words_.label({{}, std::move(text), Role::Note, h_, Anchor::Middle, angle}, places);
  }
  void stroke(Path path) { group_.strokes.push_back({std::move(path), Role::TenCells, false}); }
  [[nodiscard]] double tooth() const { return 0.18 * h_; }

  void columnsLeftOut(const Span& cut) {
    const ChartAxis &x = f_.columns, &y = f_.rows;
    // Only where there are stitches in it.
    std::vector<Span> stretches;
    for (const Span& drawn : y.drawn())
      for (const Span& rows : rowsOver(f_.grid, cut)) {
        const Span s = common(common(drawn, rows), f_.window.rows);
        if (s.size() <= 0) continue;
        stretches.push_back(s);
        for (const auto& [boundary, sign] : {std::pair(cut.from, 1), std::pair(cut.to, -1)})
          stroke(zigzag({x.at(boundary), y.at(s.from)}, {x.at(boundary), y.at(s.to)},
                        Vec2(sign * tooth(), 0), 0.5 * f_.metrics.height));
      }
    if (stretches.empty()) return;
    const Span s = widestOf(stretches);
    // Where all the rows together are lower than the words are long they stand beyond the row
    // numbers.
    const std::string text = f_.phrases.say("chart.alike", {numberParam("stitches", cut.size())});
    const double half = 0.5 * textWidth(text, h_);
    const bool inside = 2 * half <= f_.top() - f_.bottom();
    label({{inside ? 0.5 * (x.at(cut.from) + x.at(cut.to)) + 0.35 * h_
                   : std::min(f_.left(), numbers_.low.x()) - h_,
            std::max(f_.bottom() + half,
                     std::min(0.5 * (y.at(s.from) + y.at(s.to)), f_.top() - half))}},
          text, 90);
  }

  void rowsLeftOut(const Span& cut) {
    const ChartAxis &x = f_.columns, &y = f_.rows;
    std::vector<Span> cells; // of both sides of a neck
    for (const ChartLine* l : f_.grid.in(cut.from + 1))
      if (const Span here = common(l->cells, f_.window.columns); here.size() > 0)
        cells.push_back(here);
    if (cells.empty()) return;
    const double baseline = 0.5 * (y.at(cut.from) + y.at(cut.to)) - 0.35 * h_;
    const auto middle = [&](const Span& s) {
      return Vec2(0.5 * (x.at(s.from) + x.at(s.to)), baseline);
    };
    std::vector<Vec2> places{middle(widestOf(cells))};
    for (const Span& line : cells)
      for (const Span& drawn : x.drawn()) {
        const Span s = common(drawn, line);
        if (s.size() <= 0) continue;
        places.push_back(middle(s));
        for (const auto& [boundary, sign] : {std::pair(cut.from, 1), std::pair(cut.to, -1)})
          stroke(zigzag({x.at(s.from), y.at(boundary)}, {x.at(s.to), y.at(boundary)},
                        Vec2(0, sign * tooth()), 0.5 * f_.metrics.width));
      }
    const std::string text = f_.phrases.say(
        "chart.even", {numberParam("first", cut.from + 1), numberParam("last", cut.to)});
    // Letters too large for all of these: beyond the numbers on the right.
    const double half = 0.5 * textWidth(text, h_);
    std::erase_if(places, [&](const Vec2& at) {
      return at.x() < f_.left() + half || at.x() + half > f_.right();
    });
    // Else wherever it has room across, or beside the gap, where no row has its number.
    if (f_.right() - f_.left() >= 2 * half)
      places.push_back(
          {std::clamp(middle(widestOf(cells)).x(), f_.left() + half, f_.right() - half), baseline});
    places.push_back({f_.right() + f_.beside() + half, baseline});
    places.push_back({std::max(f_.right(), numbers_.high.x()) + h_ + half, baseline});
    label(places, text, 0);
  }

  Group& group_;
  const ChartField& f_;
  double h_;
  Dimensions words_;
  Box numbers_; // of the rows
};

} // namespace

void drawNoStitch(Group& group, const Box& box, double textHeight) {
  const double step = kNoStitchStep * textHeight, rise = box.size().y();
  for (double x = box.low.x() - rise + 0.5 * step; x < box.high.x(); x += step) {
    const double from = std::max(x, box.low.x()), to = std::min(x + rise, box.high.x());
    if (from < to)
      group.strokes.push_back(
          {Path::polyline({{from, box.low.y() + from - x}, {to, box.low.y() + to - x}}),
           Role::NoStitch, false});
  }
}

void drawSymbol(Group& group, ChartSymbol symbol, const Box& cell) {
  const auto at = [&](double u, double v) {
    return Vec2(cell.low + Vec2(u * cell.size().x(), v * cell.size().y()));
  };
  Path path;
  switch (symbol) {
  case ChartSymbol::Purl:
    path = Path::polyline({at(0.2, 0.5), at(0.8, 0.5)});
    break;
  case ChartSymbol::LeansRight:
    path = Path::polyline({at(0.2, 0.15), at(0.8, 0.85)});
    break;
  case ChartSymbol::LeansLeft:
    path = Path::polyline({at(0.2, 0.85), at(0.8, 0.15)});
    break;
  case ChartSymbol::MakeOne:
    path =
        Path::polyline({at(0.25, 0.2), at(0.25, 0.8), at(0.5, 0.4), at(0.75, 0.8), at(0.75, 0.2)});
    break;
  case ChartSymbol::BindOff:
    path = Path(at(0.12, 0.3));
    path.cubicTo(at(0.2, 0.9), at(0.8, 0.9), at(0.88, 0.3));
    break;
  case ChartSymbol::TurnRight:
  case ChartSymbol::TurnLeft: {
    const auto u = [&](double x) { return symbol == ChartSymbol::TurnRight ? x : 1 - x; };
    path = Path(at(u(0.15), 0.25));
    path.lineTo(at(u(0.5), 0.25));
    path.cubicTo(at(u(0.95), 0.25), at(u(0.95), 0.75), at(u(0.5), 0.75));
    path.lineTo(at(u(0.15), 0.75)).lineTo(at(u(0.35), 0.92));
    break;
  }
  case ChartSymbol::Buttonhole:
    path = Path(at(0.12, 0.3));
    path.cubicTo(at(0.2, 0.9), at(0.8, 0.9), at(0.88, 0.3)).lineTo(at(0.12, 0.3));
    break;
  }
  group.strokes.push_back({std::move(path), Role::Symbol, false});
}

// Counter-clockwise, in and out of the neck where there is one.
Path chartOutline(const ChartGrid& grid, const ChartAxis& columns, const ChartAxis& rows) {
  std::vector<Vec2> points = stairs(grid, columns, rows, SectionId::Undivided, true);
  const auto up = [&](SectionId section, bool right) {
    const std::vector<Vec2> e = stairs(grid, columns, rows, section, right);
    points.insert(points.end(), e.begin(), e.end());
  };
  const auto down = [&](SectionId section, bool right) {
    const std::vector<Vec2> e = stairs(grid, columns, rows, section, right);
    points.insert(points.end(), e.rbegin(), e.rend());
  };
  up(SectionId::Right, true);
  down(SectionId::Right, false);
  up(SectionId::Left, true);
  down(SectionId::Left, false);
  down(SectionId::Undivided, false);
  if (points.empty()) return {};
  points.push_back(points.front());
  return Path::polyline(points);
}

void drawCells(Group& group, const ChartField& field) {
  Group cells;
  CellDrawer(cells, field.grid, field.columns, field.rows, field.metrics.text).run();
  if (field.window.part) {
    Box seen;
    seen.add(Vec2(field.left(), field.bottom()));
    seen.add(Vec2(field.right(), field.top()));
    clipTo(cells, seen);
  }
  group.strokes.insert(group.strokes.end(), std::make_move_iterator(cells.strokes.begin()),
                       std::make_move_iterator(cells.strokes.end()));
  BreakDrawer(group, field).run();
}

} // namespace scye
