#include "schematic/chart_tiles.h"

#include "garments.h"

#include <gtest/gtest.h>

#include <map>
#include <set>

namespace scye::test {
namespace {

constexpr double kLetters = 0.25, kSixPoints = 6 * 2.54 / 72; // cm
const Vec2 kRooms[] = {{17.8, 25.6}, {26.5, 16.9}, {18.4, 23.8}, {24.7, 17.5}};

struct Tiled {
  const KnitPiece* piece;
  StitchSize size;
  Vec2 room;
  ChartParts parts;
  Chart chart; // with its axes in the parts' cells
};

// Some garments' charts on upright and turned pages.
void forCharts(unsigned seed, int garments, const std::function<void(const Tiled&)>& look) {
  int n = 0;
  for (const Made& made : some(seed, garments))
    for (const KnitPiece& piece : made.knit.pieces) {
      const StitchSize size = piece.fabric(made.knit.lattice.size);
      const Vec2 room = kRooms[n++ % 4];
      Tiled t{&piece, size, room, chartParts(piece, size, builtinPhrases(), room, kLetters), {}};
      ChartOptions options;
      options.cellWidth = t.parts.cell.x();
      options.textHeight = kLetters;
      t.chart = laidOut(piece, size, options);
      SCOPED_TRACE(std::string(pieceKey(piece.id)) + " of garment " + std::to_string(n));
      ASSERT_FALSE(t.parts.parts.empty());
      look(t);
    }
}

// Distances between neighbouring lines of cells, as they are drawn.
double leastCell(const Picture& picture, const Chart& chart) {
  std::set<double> xs, ys;
  for (const Stroke& s : picture.groups.front().strokes) {
    if (s.role != Role::Cell && s.role != Role::TenCells) continue;
    if (s.path.segments().size() != 1) continue; // the zigzag of a break
    const Vec2 a = s.path.start(), b = s.path.segments().front().end();
    if (std::abs(a.x() - b.x()) < 1e-9) xs.insert(std::round(a.x() * 1e6) / 1e6);
    if (std::abs(a.y() - b.y()) < 1e-9) ys.insert(std::round(a.y() * 1e6) / 1e6);
  }
  EXPECT_TRUE(xs.size() > 1 && ys.size() > 1) << chart.grid.columns;
  double least = 1e9;
  for (const auto& lines : {xs, ys})
    for (auto at = std::next(lines.begin()); at != lines.end(); ++at)
      least = std::min(least, *at - *std::prev(at));
  return least;
}

TEST(ChartTiles, NoCellIsTooSmallAndNoPartLargerThanItsPage) {
  int inParts = 0;
  forCharts(71, 14, [&](const Tiled& t) {
    inParts += t.parts.parts.size() > 1;
    for (const ChartPart& part : t.parts.parts) {
      EXPECT_GE(10 * leastCell(part.picture, t.chart), kLeastDetailMm - 1e-4);
      const Vec2 size = part.picture.box().size();
      EXPECT_LE(size.x(), t.room.x() + 1e-6);
      EXPECT_LE(size.y(), t.room.y() + 1e-6);
      for (const Group& group : part.picture.groups)
        for (const Label& label : group.labels)
          EXPECT_GE(label.height, kSixPoints - 1e-9) << label.text;
    }
  });
  EXPECT_GT(inParts, 20);
}

TEST(ChartTiles, EveryStitchIsInOnePartAndNoPartHasFew) {
  forCharts(72, 14, [&](const Tiled& t) {
    std::map<std::size_t, int> stitches;
    int all = 0;
    for (const ChartLine& l : t.chart.grid.lines)
      for (int c = l.cells.from; c < l.cells.to; ++c) {
        if (t.chart.columns.cutAt(c) || t.chart.rows.cutAt(l.row - 1)) continue;
        int found = 0;
        for (std::size_t i = 0; i < t.parts.parts.size(); ++i) {
          const ChartWindow& w = t.parts.parts[i].window;
          if (!w.ownColumns.has(c) || !w.ownRows.has(l.row - 1)) continue;
          ++found, ++all, ++stitches[i];
        }
        ASSERT_EQ(found, 1) << "row " << l.row << ", column " << c;
      }
    ASSERT_EQ(stitches.size(), t.parts.parts.size()) << "a part without stitches";
    for (const auto& [part, n] : stitches)
      EXPECT_GT(n, 0.12 * all / double(t.parts.parts.size())) << "part " << part + 1;
  });
}

TEST(ChartTiles, JointsLieBetweenCellsAndHaveTheSameCrossesOnBothSides) {
  int joints = 0;
  forCharts(73, 10, [&](const Tiled& t) {
    const auto crossesOf = [](const ChartPart& part) {
      std::vector<Vec2> at;
      for (const Group& g : part.picture.groups)
        if (g.id == "register") at.push_back(0.5 * (g.box().low + g.box().high));
      return at;
    };
    const auto& parts = t.parts.parts;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const ChartWindow& a = parts[i].window;
      for (const int column : {a.columns.from, a.columns.to, a.ownColumns.from, a.ownColumns.to})
        EXPECT_FALSE(t.chart.columns.inCut(column));
      for (const int row : {a.rows.from, a.rows.to, a.ownRows.from, a.ownRows.to})
        EXPECT_FALSE(t.chart.rows.inCut(row));
      for (std::size_t k = i + 1; k < parts.size(); ++k) {
        const ChartWindow& b = parts[k].window;
        const bool beside = (a.ownColumns.to == b.ownColumns.from) && a.ownRows == b.ownRows;
        const bool above =
            a.ownRows.to == b.ownRows.from && common(a.ownColumns, b.ownColumns).size() > 0;
        if (!beside && !above) continue;
        ++joints;
        const Span shared = beside ? common(a.columns, b.columns) : common(a.rows, b.rows);
        EXPECT_GE(shared.size(), kSharedCells);
        int same = 0;
        for (const Vec2& p : crossesOf(parts[i]))
          for (const Vec2& q : crossesOf(parts[k]))
            same += (p - q).norm() < 1e-9;
        EXPECT_GE(same, 2) << i + 1 << " and " << k + 1;
      }
    }
  });
  EXPECT_GT(joints, 20);
}

// Read from the labels: odd rows on the right, even ones on the left, of every row that is drawn.
TEST(ChartTiles, EveryRowOfAPartHasItsNumberWhereItStarts) {
  forCharts(74, 10, [&](const Tiled& t) {
    for (const ChartPart& part : t.parts.parts) {
      const ChartWindow& w = part.window;
      std::set<int> wanted, found;
      for (const ChartLine& l : t.chart.grid.lines)
        if (w.rows.has(l.row - 1) && common(l.cells, w.columns).size() > 0 &&
            !t.chart.rows.cutAt(l.row - 1))
          wanted.insert(l.row);
      const double left = t.chart.columns.at(w.columns.from),
                   right = t.chart.columns.at(w.columns.to);
      for (const Label& label : part.picture.groups.front().labels) {
        const int row = std::atoi(label.text.c_str());
        if (label.angle != 0 || !wanted.contains(row)) continue;
        const double middle = label.at.y() + 0.36 * label.height;
        if (t.chart.rows.itemAt(middle) != row - 1) continue;
        if (row % 2 == 1 ? label.at.x() > right : label.at.x() < left) found.insert(row);
      }
      EXPECT_EQ(wanted, found);
    }
  });
}

TEST(ChartTiles, ThePartsOfAGarmentAreToldAndShownOnTheMap) {
  forCharts(75, 4, [&](const Tiled& t) {
    const std::size_t all = t.parts.parts.size();
    for (std::size_t i = 0; i < all; ++i) {
      const Picture& picture = t.parts.parts[i].picture;
      const auto map = std::find_if(picture.groups.begin(), picture.groups.end(),
                                    [](const Group& g) { return g.id == "map"; });
      ASSERT_EQ(map != picture.groups.end(), all > 1);
      if (all == 1) continue;
      const std::string told = "part " + std::to_string(i + 1) + " of " + std::to_string(all);
      const auto& labels = picture.groups.front().labels;
      EXPECT_TRUE(std::any_of(labels.begin(), labels.end(),
                              [&](const Label& l) { return l.text.ends_with(told); }));
      int bold = 0;
      for (const Label& l : map->labels)
        bold += l.role == Role::Caption && l.text == std::to_string(i + 1);
      EXPECT_EQ(bold, 1);
    }
  });
}

} // namespace
} // namespace scye::test
