#include "schematic/chart_grid.h"

#include "shaping/even_shaping.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// One stitch in from the edge of what is kept, and never outside of it.
Span besideEdge(const Span& kept, EdgeSide side, int count) {
  const int n = std::min(count, kept.size());
  const int in = kept.size() > n ? 1 : 0;
  return side == EdgeSide::Right ? Span{kept.to - in - n, kept.to - in}
                                 : Span{kept.from + in, kept.from + in + n};
}

class GridReader {
public:
  explicit GridReader(const RowTable& table) : table_(table) {}

  ChartGrid run() {
    double high = -1e9;
    low_ = 1e9;
    for (const RowLine& l : table_) {
      low_ = std::min(low_, l.leftEdge), high = std::max(high, l.rightEdge);
      for (const Act& a : l.acts)
        if (boundOff(a)) extend(l, a, high);
    }
    if (table_.empty()) return {};
    grid_.columns = int(std::lround(high - low_));
    for (const RowLine& l : table_)
      read(l);
    return std::move(grid_);
  }

private:
  static bool boundOff(const Act& a) {
    return a.kind == ActKind::BindOff || a.kind == ActKind::Close;
  }

  void extend(const RowLine& l, const Act& a, double& high) {
    if (a.side == EdgeSide::Right)
      high = std::max(high, l.rightEdge + a.stitches.value());
    else
      low_ = std::min(low_, l.leftEdge - a.stitches.value());
  }

  void read(const RowLine& l) {
    const Span kept{int(std::lround(l.leftEdge - low_)), int(std::lround(l.rightEdge - low_))};
    if (l.row == Rows(0)) {
      grid_.castOn = kept;
      return;
    }
    ChartLine line{l.section, l.row.value(), kept, kept, &l};
    for (const Act& a : l.acts)
      mark(a, line);
    grid_.rows = std::max(grid_.rows, line.row);
    grid_.lines.push_back(line);
  }

  void mark(const Act& a, ChartLine& line) {
    const Span kept = line.kept;
    const int k = a.stitches.value();
    const bool right = a.side == EdgeSide::Right;
    const auto put = [&](ChartSymbol symbol, const Span& columns) {
      grid_.marks.push_back({symbol, line.row, columns});
    };
    switch (a.kind) {
    case ActKind::BindOff:
    case ActKind::Close: {
      const Span gone = right ? Span{line.cells.to, line.cells.to + k}
                              : Span{line.cells.from - k, line.cells.from};
      line.cells = {std::min(line.cells.from, gone.from), std::max(line.cells.to, gone.to)};
      put(ChartSymbol::BindOff, gone);
      return;
    }
    case ActKind::Increase:
      put(ChartSymbol::MakeOne, besideEdge(kept, a.side, k));
      return;
    case ActKind::Decrease:
      put(right ? ChartSymbol::LeansLeft : ChartSymbol::LeansRight, besideEdge(kept, a.side, k));
      return;
    case ActKind::Wait:
      put(right ? ChartSymbol::TurnRight : ChartSymbol::TurnLeft,
          right ? Span{kept.to - 1, kept.to} : Span{kept.from, kept.from + 1});
      return;
    case ActKind::IncreaseEvenly:
      spread(kept, line.row, a.stitches);
      return;
    case ActKind::Buttonhole: {
      const int in = a.from.value();
      put(ChartSymbol::Buttonhole,
          right ? Span{kept.to - in - k, kept.to - in} : Span{kept.from + in, kept.from + in + k});
      return;
    }
    case ActKind::Hold: // they wait above the chart's last row
    case ActKind::CastOn:
    case ActKind::Rest:
    case ActKind::Rejoin:
    case ActKind::TakeUp:
      return;
    }
  }

  // The new stitches lie among the others in the order of the work.
  void spread(const Span& kept, int row, Stitches more) {
    int worked = 0;
    for (const EvenIncrease& run : evenIncreases(Stitches(kept.size()) - more, more))
      for (int i = 0; i < run.times; ++i) {
        worked += run.after + 1;
        const int column = row % 2 == 1 ? kept.to - worked : kept.from + worked - 1;
        grid_.marks.push_back({ChartSymbol::MakeOne, row, {column, column + 1}});
      }
  }

  const RowTable& table_;
  double low_ = 0;
  ChartGrid grid_;
};

// Runs of at least `least` items of which each is the same as the one before.
template <class Same>
std::vector<Span> runsOf(int items, int least, Same sameAsBefore) {
  std::vector<Span> runs;
  for (int from = 0; from < items;) {
    int to = from + 1;
    while (to < items && sameAsBefore(to))
      ++to;
    if (to - from >= least) runs.push_back({from, to});
    from = to;
  }
  return runs;
}

} // namespace

Span common(const Span& a, const Span& b) {
  const int from = std::max(a.from, b.from);
  return {from, std::max(from, std::min(a.to, b.to))};
}

std::vector<const ChartLine*> ChartGrid::in(int row) const {
  std::vector<const ChartLine*> found;
  for (const ChartLine& l : lines)
    if (l.row == row) found.push_back(&l);
  std::sort(found.begin(), found.end(),
            [](const ChartLine* a, const ChartLine* b) { return a->cells.from < b->cells.from; });
  return found;
}

ChartGrid chartGrid(const RowTable& table) {
  return GridReader(table).run();
}

std::vector<Span> alikeColumns(const ChartGrid& grid, int least) {
  // A column is told by where its stitches begin and end and by its symbols; the boundary between
  // two columns is plain where no such thing begins or ends at it.
  std::vector<char> plain(std::size_t(grid.columns) + 1, 1);
  const auto mark = [&](const Span& s) { plain[s.from] = plain[s.to] = 0; };
  mark(grid.castOn);
  for (const ChartLine& l : grid.lines)
    mark(l.cells);
  for (const ChartMark& m : grid.marks) {
    mark(m.columns);
    if (m.symbol != ChartSymbol::BindOff)
      for (int c = m.columns.from; c < m.columns.to; ++c)
        plain[c] = 0;
  }
  return runsOf(grid.columns, least, [&](int c) { return plain[c] != 0; });
}

std::vector<Span> evenRows(const ChartGrid& grid, const std::vector<int>& kept, int least) {
  std::vector<char> busy(std::size_t(grid.rows), 0);
  for (const ChartLine& l : grid.lines)
    busy[l.row - 1] |= !l.told->acts.empty();
  // What stands alone in its row ends where the other side of a neck goes on without it.
  std::vector<int> sections(std::size_t(grid.rows), 0);
  for (const ChartLine& l : grid.lines)
    ++sections[l.row - 1];
  return runsOf(grid.rows, least, [&](int r) {
    return std::find(kept.begin(), kept.end(), r) == kept.end() && !busy[r] && !busy[r - 1] &&
           sections[r] == sections[r - 1];
  });
}

} // namespace scye
