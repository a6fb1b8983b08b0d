#include "shaping/even_shaping.h"

#include <algorithm>

namespace scye {

EvenShaping shapeEvenly(const EvenRequest& request) {
  EvenShaping out;
  const int parity = request.oddRightSide ? 1 : 0;
  const auto isRightSide = [&](Rows row) { return ((row % 2) + 2) % 2 == parity; };
  const Rows first = request.firstRow + Rows(isRightSide(request.firstRow) ? 0 : 1);
  out.start = first - Rows(2);
  if (request.changes <= 0) return out;
  const int slots = std::max(0, (request.lastRow - out.start).value() / 2);
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

std::vector<Rows> changeRows(const EvenShaping& shaping) {
  std::vector<Rows> rows;
  for (const EdgeEvent& event : runEvents(shaping.runs, shaping.start, Rows(0)))
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

std::vector<EvenIncrease> evenIncreases(Stitches before, Stitches more) {
  const int gaps = more.value() + 1, after = std::max(1, before.value() / gaps);
  const int wider = std::max(0, before.value() - gaps * after);
  const int middle = more.value() - wider;
  if (middle <= 0) return {{after + 1, more.value()}};
  std::vector<EvenIncrease> runs;
  for (const EvenIncrease& run :
       {EvenIncrease{after + 1, (wider + 1) / 2}, {after, middle}, {after + 1, wider / 2}})
    if (run.times > 0) runs.push_back(run);
  return runs;
}

} // namespace scye
