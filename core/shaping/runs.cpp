#include "shaping/runs.h"

#include <algorithm>
#include <cmath>

namespace scye {

namespace {

EventKind eventKind(ShapingKind kind) {
  switch (kind) {
  case ShapingKind::BindOff:
    return EventKind::BindOff;
  case ShapingKind::Increase:
    return EventKind::Increase;
  case ShapingKind::Decrease:
    break;
  }
  return EventKind::Decrease;
}

} // namespace

Stitches Schedule::taken() const {
  Stitches sum{0};
  for (const Run& run : runs)
    sum += run.kind == ShapingKind::Increase ? -run.total() : run.total();
  return sum;
}

Rows Schedule::shapedRows() const {
  Rows sum{0};
  for (const Run& run : runs)
    sum += run.rows();
  return sum;
}

std::vector<EdgeEvent> runEvents(const std::vector<Run>& runs, Rows start, Rows bindOffLater) {
  std::vector<EdgeEvent> events;
  Rows row = start;
  for (const Run& run : runs) {
    row += run.rest;
    const Rows later = run.kind == ShapingKind::BindOff ? bindOffLater : Rows(0);
    const Stitches change = run.kind == ShapingKind::Increase ? -run.stitches : run.stitches;
    for (int i = 0; i < run.times; ++i) {
      row += run.every;
      events.push_back({row + later, change, eventKind(run.kind)});
    }
  }
  return events;
}

KnittedEdge knittedEdge(const Schedule& schedule, EdgeSide side, Rows firstRow, Stitches selvedge) {
  const bool left = side == EdgeSide::Left, cap = schedule.crown > Stitches(0);
  const bool underarm = schedule.underarm > Stitches(0);
  KnittedEdge edge{.begin = firstRow + Rows(left && underarm ? 1 : 0),
                   .end = firstRow + schedule.rows + Rows(left && !cap ? 1 : 0),
                   .events = runEvents(schedule.runs, firstRow, Rows(left ? 1 : 0)),
                   .flatTop = cap ? crownHalfStitches(schedule.crown, selvedge) : 0};
  if (underarm)
    edge.events.insert(edge.events.begin(), {edge.begin, schedule.underarm, EventKind::Underarm});
  return edge;
}

EdgeLength edgeLength(const Schedule& schedule, EdgeSide side, const StitchSize& size,
                      Stitches selvedge) {
  return edgeLength(knittedEdge(schedule, side, Rows(0), selvedge), size);
}

std::vector<Run> joined(std::vector<Run> runs) {
  std::vector<Run> out;
  for (const Run& run : runs) {
    if (run.times <= 0) continue;
    const bool same = !out.empty() && out.back().kind == run.kind &&
                      out.back().stitches == run.stitches && out.back().every == run.every &&
                      run.rest == Rows(0);
    if (same)
      out.back().times += run.times;
    else
      out.push_back(run);
  }
  return out;
}

int ShapingStyle::plainStep(const StitchSize& size) const {
  const auto within = [&](double cm) { return int(std::floor(cm / size.width + 1e-9)); };
  return std::max({2, within(maxStep), std::min(3, within(widestStep))});
}

int ShapingStyle::widestBindOff(const StitchSize& size) const {
  return std::max(2, int(std::floor(wider * widestStep / size.width + 1e-9)));
}

ShapingStyle ShapingStyle::widened(int by, int more) const {
  ShapingStyle style = *this;
  style.wider *= by, style.maxSteps *= more;
  return style;
}

} // namespace scye
