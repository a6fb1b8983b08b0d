#include "shaping/even_shaping.h"

#include <algorithm>

namespace scye {

EvenShaping shapeEvenly(const EvenRequest& request) {
  EvenShaping out;
  const int parity = request.oddRightSide ? 1 : 0;
  const auto isRightSide = [&](int row) { return ((row % 2) + 2) % 2 == parity; };
  const int first = isRightSide(request.firstRow) ? request.firstRow : request.firstRow + 1;
  out.start = first - 2;
  if (request.changes <= 0) return out;
  const int slots = std::max(0, (request.lastRow - out.start) / 2);
  const int changes = std::min(request.changes, slots);
  if (changes == 0) {
    out.fits = false;
    return out;
  }
  const int closer = slots / changes, wider = slots % changes; // spacing in right-side rows
  out.fits = changes == request.changes && 2 * closer >= request.atLeast.value();
  const auto run = [&](int spacing, int times) {
    return Run{request.kind, Stitches(1), Rows(2 * spacing), times};
  };
  // One line, and the rows left over worked even at the end, where that is within a stitch of even.
  if (wider * changes <= slots) {
    out.runs = {run(closer, changes)};
    return out;
  }
  // The greater part first: what remains comes at the far end.
  out.runs = {run(closer, changes - wider), run(closer + 1, wider)};
  if (wider > changes - wider) std::swap(out.runs[0], out.runs[1]);
  out.runs = joined(out.runs);
  return out;
}

std::vector<int> changeRows(const EvenShaping& shaping) {
  std::vector<int> rows;
  for (const EdgeEvent& event : runEvents(shaping.runs, shaping.start, 0))
    rows.push_back(event.row);
  return rows;
}

std::vector<Run> shoulderSteps(Stitches stitches, int steps, LargerSteps larger) {
  const int n = stitches.value(), count = std::min(std::max(steps, 1), n);
  if (count <= 0) return {};
  const int base = n / count, more = n % count;
  const auto run = [](int k, int times) {
    return Run{ShapingKind::BindOff, Stitches(k), Rows(2), times};
  };
  std::vector<Run> runs{run(base + 1, more), run(base, count - more)};
  if (larger == LargerSteps::Last) std::swap(runs[0], runs[1]);
  return joined(runs);
}

} // namespace scye
