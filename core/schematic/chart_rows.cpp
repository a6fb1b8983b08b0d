#include "schematic/chart_drawing.h"

#include <algorithm>
#include <map>

namespace scye {
namespace {

// Stitches after a row, of those sections in which their number has changed.
struct Counts {
  std::optional<int> body, right, left;
};

std::map<int, Counts> changedCounts(const ChartGrid& grid) {
  std::map<int, Counts> counts;
  SectionId section = SectionId::Body;
  int before = grid.castOn.size();
  for (const ChartLine& l : grid.lines) {
    const int n = l.kept.size();
    if (n > 0 && (l.section != section || n != before)) {
      Counts& here = counts[l.row];
      (l.section == SectionId::Body    ? here.body
       : l.section == SectionId::Right ? here.right
                                       : here.left) = n;
    }
    section = l.section, before = n;
  }
  return counts;
}

std::string labelText(int row, const Counts& counts, const Phrases& phrases) {
  const auto say = [&](const char* key, int stitches) {
    return phrases.say(key, {numberParam("row", row), numberParam("stitches", stitches)});
  };
  if (counts.right && counts.left)
    return phrases.say("chart.row.both",
                       {numberParam("row", row), numberParam("right", *counts.right),
                        numberParam("left", *counts.left)});
  if (counts.right) return say("chart.row.right", *counts.right);
  if (counts.left) return say("chart.row.left", *counts.left);
  return say("chart.row", counts.body.value_or(0));
}

} // namespace

void drawRowLabels(Group& group, const ChartGrid& grid, const ChartAxis& columns,
                   const ChartAxis& rows, const ChartMetrics& metrics, const Phrases& phrases) {
  const double h = metrics.text;
  const std::map<int, Counts> counts = changedCounts(grid);
  enum Rank : int { Counted, Busy, Quiet };
  std::vector<int> rank(std::size_t(grid.rows) + 1, Quiet);
  for (const ChartLine& l : grid.lines)
    if (!l.told->acts.empty()) rank[l.row] = Busy;
  for (const auto& [row, n] : counts)
    rank[row] = Counted;

  for (const bool rightSide : {true, false}) {
    std::vector<int> wanted;
    for (int row = rightSide ? 1 : 2; row <= grid.rows; row += 2)
      if (!rows.cutAt(row - 1)) wanted.push_back(row);
    // Of counts that are too near to one another the later one is what the next row starts from.
    std::stable_sort(wanted.begin(), wanted.end(), [&](int a, int b) {
      return rank[a] != rank[b] ? rank[a] < rank[b] : rank[a] == Counted && a > b;
    });
    std::vector<double> taken; // middles of rows that have their label
    for (const int row : wanted) {
      const double y = rows.middle(row - 1);
      if (std::any_of(taken.begin(), taken.end(),
                      [&](double other) { return std::abs(y - other) < 1.06 * h; }))
        continue;
      taken.push_back(y);
      const auto told = counts.find(row);
      const bool counted = told != counts.end();
      group.labels.push_back({{rightSide ? columns.end() + 0.4 * h : -0.4 * h, y - 0.36 * h},
                              counted ? labelText(row, told->second, phrases) : std::to_string(row),
                              counted ? Role::Measure : Role::Note,
                              h,
                              rightSide ? Anchor::Start : Anchor::End,
                              0});
    }
  }
}

} // namespace scye
