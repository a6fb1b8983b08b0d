// Columns or rows of a chart along one direction of the picture, with stretches left out. An item
// left out takes no more than its share of the cut's width, so that every boundary has a place and
// a pointer over the cut still finds an item. Positions in cm.
#pragma once

#include "schematic/chart_grid.h"

#include <vector>

namespace scye {

class ChartAxis {
public:
  ChartAxis() = default;
  // `cuts`: items left out, by place and apart from one another.
  ChartAxis(int items, double itemSize, std::vector<Span> cuts, double cutSize);

  [[nodiscard]] int items() const { return int(at_.size()) - 1; }
  [[nodiscard]] double at(int boundary) const { return at_[std::size_t(boundary)]; }
  [[nodiscard]] double middle(int item) const { return 0.5 * (at(item) + at(item + 1)); }
  [[nodiscard]] double end() const { return at_.back(); }
  [[nodiscard]] const std::vector<Span>& cuts() const { return cuts_; }
  [[nodiscard]] const Span* cutAt(int item) const;
  [[nodiscard]] bool inCut(int boundary) const;  // strictly: no line is drawn there
  [[nodiscard]] std::vector<Span> drawn() const; // the stretches between the cuts
  [[nodiscard]] std::optional<int> itemAt(double position) const;

private:
  std::vector<double> at_{0};
  std::vector<Span> cuts_;
};

// The middle of each run is left out, `keep` items stay on either side; a multiple of `repeat`
// goes, so that right-side and wrong-side rows go on alternating, and so do the columns of a rib.
[[nodiscard]] std::vector<Span> cutsIn(const std::vector<Span>& runs, int keep, int repeat);

} // namespace scye
