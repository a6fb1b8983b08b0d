#include "shaping/edge_length.h"

#include "shaping/corridor.h"

#include <algorithm>
#include <cmath>

namespace scye {

EdgeLength edgeLength(const KnittedEdge& edge, const StitchSize& size) {
  const double w = size.width;
  EdgeLength sum;
  double flats = edge.flatTop;
  Rows standing = edge.begin; // the last row an event was worked in
  double before = 0;          // and its change
  const auto piece = [&](double change, Rows row) {
    const double up = size.up(row - standing);
    sum += {slant(before * w, up), slant(change * w, up), slant(0.5 * (before + change) * w, up)};
    standing = row, before = change;
  };
  for (const EdgeEvent& event : edge.events) {
    if (event.kind == EventKind::Underarm)
      flats += std::abs(event.change.value()), standing = event.row;
    else
      piece(event.change.value(), event.row);
  }
  piece(0, edge.end);
  return sum + EdgeLength{flats * w, flats * w, flats * w};
}

double crownHalfStitches(Stitches crown, Stitches selvedge) {
  return 0.5 * (crown - 2 * selvedge).value();
}

KnittedEdge edgeFromColumn(std::span<const double> positions, EdgeSide side, Rows begin, Rows end,
                           double flatTop) {
  KnittedEdge edge{.begin = begin, .end = end, .events = {}, .flatTop = flatTop};
  const double inward = side == EdgeSide::Right ? -1 : 1;
  for (std::size_t i = 1; i < positions.size(); ++i) {
    const Rows row = begin + Rows(int(i) - 1);
    if (row >= end) break;
    const int change = int(std::lround(inward * (positions[i] - positions[i - 1])));
    if (change == 0) continue;
    const EventKind kind = row == begin  ? EventKind::Underarm
                           : change < 0  ? EventKind::Increase
                           : change == 1 ? EventKind::Decrease
                                         : EventKind::BindOff;
    edge.events.push_back({row, Stitches(change), kind});
  }
  return edge;
}

double edgeDeviation(const KnittedEdge& edge, Rows firstRow, Rows rows, const Path& reference,
                     const StitchSize& size) {
  const int steps = (rows.value() + 1) / 2;
  const std::vector<StepBand> bands = stepBands(reference, size, steps);
  double worst = 0;
  int taken = 0;
  auto next = edge.events.begin();
  for (int j = 0; j < steps; ++j) {
    for (; next != edge.events.end() && next->row <= firstRow + Rows(2 * j + 1); ++next)
      if (next->kind != EventKind::Underarm) taken += next->change.value();
    worst = std::max(worst, bands[j].outside(taken));
  }
  return worst;
}

} // namespace scye
