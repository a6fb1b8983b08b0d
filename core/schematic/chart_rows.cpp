#include "schematic/chart_drawing.h"

#include <algorithm>
#include <map>

namespace scye {
namespace {

// Stitches after a row, of those sections in which their number has changed.
struct Counts {
  std::optional<int> body, right, left;
};

// Of those sections that have cells in these columns.
std::map<int, Counts> changedCounts(const ChartGrid& grid, const Span& columns) {
  std::map<int, Counts> counts;
  SectionId section = SectionId::Undivided;
  int before = grid.castOn.size();
  for (const ChartLine& l : grid.lines) {
    const int n = l.kept.size();
    const bool here = common(l.cells, columns).size() > 0;
    if (here && n > 0 && (l.section != section || n != before)) {
      Counts& told = counts[l.row];
      (l.section == SectionId::Undivided ? told.body
       : l.section == SectionId::Right   ? told.right
                                         : told.left) = n;
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

double ChartField::beside() const {
  constexpr double kCross = 0.4; // cm
  return std::max(0.4 * metrics.text, window.part ? kCross : 0);
}

void drawRowLabels(Group& group, const ChartField& field) {
  const double h = field.metrics.text;
  const std::map<int, Counts> counts = changedCounts(field.grid, field.window.columns);
  enum Rank : int { Counted, Busy, Quiet, Absent };
  std::vector<int> rank(std::size_t(field.grid.rows) + 1, Absent);
  for (const ChartLine& l : field.grid.lines)
    if (common(l.cells, field.window.columns).size() > 0) rank[l.row] = Quiet;
  for (const ChartLine& l : field.grid.lines)
    if (rank[l.row] == Quiet && !l.told->acts.empty()) rank[l.row] = Busy;
  for (const auto& [row, n] : counts)
    if (rank[row] != Absent) rank[row] = Counted;

  for (const bool rightSide : {true, false}) {
    std::vector<int> wanted;
    for (int row = field.window.rows.from + 1; row <= field.window.rows.to; ++row)
      if ((row % 2 == 1) == rightSide && rank[row] != Absent && !field.rows.cutAt(row - 1))
        wanted.push_back(row);
    // Of counts that are too near to one another the later one is what the next row starts from.
    std::stable_sort(wanted.begin(), wanted.end(), [&](int a, int b) {
      return rank[a] != rank[b] ? rank[a] < rank[b] : rank[a] == Counted && a > b;
    });
    std::vector<double> taken; // middles of rows that have their label
    for (const int row : wanted) {
      const double y = field.rows.middle(row - 1);
      if (std::any_of(taken.begin(), taken.end(),
                      [&](double other) { return std::abs(y - other) < 1.06 * h; }))
        continue;
      taken.push_back(y);
      const auto told = counts.find(row);
      const bool counted = told != counts.end();
      const double x = rightSide ? field.right() + field.beside() : field.left() - field.beside();
      group.labels.push_back(
          {{x, y - 0.36 * h},
           counted ? labelText(row, told->second, field.phrases) : std::to_string(row),
           counted ? Role::Measure : Role::Note,
           h,
           rightSide ? Anchor::Start : Anchor::End,
           0});
    }
  }
}

} // namespace scye
