#include "knit/acts.h"

#include <algorithm>
#include <cstdlib>
#include <tuple>

namespace scye {

void append(Acts& to, const Acts& more) {
  to.insert(to.end(), more.begin(), more.end());
}

void sortActs(Acts& acts) {
  const auto order = [](const Act& a) {
    const bool turns = a.kind == ActKind::Rest || a.kind == ActKind::Rejoin;
    return std::tuple(a.row, turns ? 0 : 1, a.side == EdgeSide::Right ? 0 : 1);
  };
  std::stable_sort(acts.begin(), acts.end(),
                   [&](const Act& a, const Act& b) { return order(a) < order(b); });
}

Acts between(const Acts& acts, int first, int last) {
  Acts out;
  for (const Act& a : acts)
    if (a.row >= first && a.row <= last) out.push_back(a);
  return out;
}

Acts edgeActs(const KnittedEdge& edge, EdgeSide side, Shapes shapes) {
  Acts acts;
  for (const EdgeEvent& e : edge.events) {
    const bool grows = e.change < Stitches(0);
    const ActKind kind = grows                           ? ActKind::Increase
                         : e.kind == EventKind::Decrease ? ActKind::Decrease
                                                         : ActKind::BindOff;
    acts.push_back({e.row, kind, side, grows ? -e.change : e.change,
                    e.kind == EventKind::Underarm ? Shapes::Underarm : shapes});
  }
  return acts;
}

Acts seamActs(const std::vector<SeamPlace>& places, int ribRows, EdgeSide side, Shapes shapes,
              int& outward) {
  Acts acts;
  outward = 0;
  int pending = 0; // stitches outward still to be worked
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    pending += places[i + 1].outward - places[i].outward;
    if (pending == 0) continue;
    const ShapingKind kind = pending > 0 ? ShapingKind::Increase : ShapingKind::Decrease;
    const EvenShaping even = shapeEvenly({.kind = kind,
                                          .changes = std::abs(pending),
                                          .firstRow = std::max(places[i].row, ribRows) + 1,
                                          .lastRow = places[i + 1].row});
    const std::vector<int> rows = changeRows(even);
    for (const int row : rows)
      acts.push_back(
          {row, pending > 0 ? ActKind::Increase : ActKind::Decrease, side, Stitches(1), shapes});
    const int worked = pending > 0 ? int(rows.size()) : -int(rows.size());
    pending -= worked;
    outward -= worked;
  }
  return acts;
}

} // namespace scye
