#include "schematic/chart_axis.h"

#include <algorithm>

namespace scye {

ChartAxis::ChartAxis(int items, double itemSize, std::vector<Span> cuts, double cutSize)
    : cuts_(std::move(cuts)) {
  at_.reserve(std::size_t(items) + 1);
  auto cut = cuts_.begin();
  for (int i = 0; i < items; ++i) {
    while (cut != cuts_.end() && cut->to <= i)
      ++cut;
    const bool out = cut != cuts_.end() && cut->has(i);
    at_.push_back(at_.back() + (out ? cutSize / cut->size() : itemSize));
  }
}

const Span* ChartAxis::cutAt(int item) const {
  const auto cut =
      std::find_if(cuts_.begin(), cuts_.end(), [&](const Span& s) { return s.has(item); });
  return cut == cuts_.end() ? nullptr : &*cut;
}

bool ChartAxis::inCut(int boundary) const {
  return std::any_of(cuts_.begin(), cuts_.end(),
                     [&](const Span& s) { return s.from < boundary && boundary < s.to; });
}

std::vector<Span> ChartAxis::drawn() const {
  std::vector<Span> out;
  int from = 0;
  for (const Span& cut : cuts_) {
    if (cut.from > from) out.push_back({from, cut.from});
    from = cut.to;
  }
  if (items() > from) out.push_back({from, items()});
  return out;
}

std::optional<int> ChartAxis::itemAt(double position) const {
  if (position < at_.front() || position >= at_.back()) return std::nullopt;
  return int(std::upper_bound(at_.begin(), at_.end(), position) - at_.begin()) - 1;
}

std::vector<Span> cutsIn(const std::vector<Span>& runs, int keep, int repeat) {
  std::vector<Span> cuts;
  for (const Span& run : runs) {
    const int out = (run.size() - 2 * keep) / repeat * repeat;
    if (out > 0) cuts.push_back({run.from + keep, run.from + keep + out});
  }
  return cuts;
}

} // namespace scye
