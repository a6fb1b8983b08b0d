#include "knit/acts.h"

#include <algorithm>
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

Acts between(const Acts& acts, Rows first, Rows last) {
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

Acts seamActs(const std::vector<SeamPlace>& places, Rows ribRows, EdgeSide side, Shapes shapes,
              Stitches& outward) {
  Acts acts;
  outward = Stitches(0);
  Stitches pending; // outward still to be worked
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    pending += places[i + 1].outward - places[i].outward;
    if (pending == Stitches(0)) continue;
    const bool grows = pending > Stitches(0);
    const ShapingKind kind = grows ? ShapingKind::Increase : ShapingKind::Decrease;
    const EvenShaping even = shapeEvenly({.kind = kind,
                                          .changes = abs(pending).value(),
                                          .firstRow = std::max(places[i].row, ribRows) + Rows(1),
                                          .lastRow = places[i + 1].row});
    const std::vector<Rows> rows = changeRows(even);
    for (const Rows row : rows)
      acts.push_back(
          {row, grows ? ActKind::Increase : ActKind::Decrease, side, Stitches(1), shapes});
    const Stitches worked(grows ? int(rows.size()) : -int(rows.size()));
    pending -= worked;
    outward -= worked;
  }
  return acts;
}

} // namespace scye
