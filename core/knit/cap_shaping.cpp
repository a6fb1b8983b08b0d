#include "knit/cap_shaping.h"

#include "knit/shaping_cap_search.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace scye {

namespace {

constexpr int kRowsAround = 6;       // of the drafted cap's height
constexpr double kCrownAround = 2.5; // cm of the wanted crown

// What a look at the schedules allows; the next is taken only where something cheaper may lie outside.
struct Look {
  double allowance; // stitches off the curve
  int linesOver;    // beyond the limit
};
constexpr Look kLooks[] = {{1, 0}, {1.5, 1}, {3, 2}, {6, 2}};

int lineLimit(const CapRequest& request) {
  if (request.lineLimit > 0) return request.lineLimit;
  return 10 / request.size.width <= 24 + 1e-9 ? 6 : 8;
}

std::vector<int> leadingBindOffs(const std::vector<Run>& runs) {
  std::vector<int> steps;
  for (const Run& run : runs) {
    if (run.kind != ShapingKind::BindOff) break;
    steps.insert(steps.end(), run.times, run.stitches.value());
  }
  return steps;
}

std::vector<int> rowsNear(double height, double rowHeight, const std::optional<Rows>& fixed) {
  if (fixed) return {fixed->value()};
  const int middle = int(std::lround(height / rowHeight));
  std::vector<int> rows;
  for (int off = 0; off <= kRowsAround; ++off)
    for (const int n : {middle - off, middle + off})
      if (n >= 3 && (rows.empty() || n != rows.back())) rows.push_back(n);
  return rows;
}

// One crown width: the reference solved for it and what to look for.
struct Candidate {
  int crown = 0; // stitches, selvedges included
  CapShape shape;
  double height = 0;
  CapTask task;
  std::vector<StepBand> bands;
};

std::vector<StepBand> bandsOf(const CapShape& shape, double height, const StitchSize& size, int rows) {
  const Cubic curve = capCurve(shape, height);
  Path path(curve.start());
  path.cubicTo(curve.p[1], curve.p[2], curve.p[3]);
  return stepBands(path, size, rows / 2 + 1);
}

// Crown widths near the wanted one that leave a whole number of stitches to each edge.
std::vector<int> crownsNear(const CapRequest& request) {
  if (request.crownStitches) return {request.crownStitches->value()};
  const int sel = 2 * request.selvedge.value();
  const double wanted = request.crown / request.size.width + sel;
  const int most = request.width.value() - 2 * request.underarm.value() - 2;
  std::vector<int> crowns;
  for (int k = std::max(2 + sel, (request.width.value() + sel) % 2 ? 3 + sel : 2 + sel); k <= most; k += 2)
    if (std::abs(k - wanted) * request.size.width <= kCrownAround || std::abs(k - wanted) <= 2)
      crowns.push_back(k);
  std::sort(crowns.begin(), crowns.end(),
            [&](int a, int b) { return std::abs(a - wanted) < std::abs(b - wanted); });
  return crowns;
}

std::optional<Candidate> candidate(const CapRequest& request, int crown) {
  const double w = request.size.width;
  const int sel = request.selvedge.value(), spread = request.width.value() - crown;
  Candidate c;
  c.crown = crown;
  c.shape = {.halfWidth = 0.5 * (request.width.value() - 2 * sel) * w,
             .underarm = request.underarm.value() * w,
             .crownHalf = crownHalfStitches(Stitches(crown), request.selvedge) * w,
             .lowerFullness = request.lowerFullness,
             .upperFullness = request.upperFullness};
  const RootSummary solved = solveCapHeight(std::array{c.shape, c.shape}, request.target);
  if (spread % 2 || !solved.ok()) return std::nullopt;
  c.height = solved.x;
  c.task = {.size = request.size,
            .edges = AskedEdges::Both,
            .style = request.style,
            .underarm = request.underarm.value(),
            .taken = spread / 2 - request.underarm.value(),
            .target = request.target - 2 * (c.shape.underarm + c.shape.crownHalf),
            .rows = rowsNear(c.height, request.size.height, request.rows),
            .bindOffs = leadingBindOffs(request.armhole),
            .lineLimit = lineLimit(request),
            .price = ShapingPrices::kCrown * std::abs(2 * c.shape.crownHalf - request.crown)};
  if (c.task.taken <= 0 || c.task.rows.empty()) return std::nullopt;
  c.bands = bandsOf(c.shape, c.height, request.size,
                    *std::max_element(c.task.rows.begin(), c.task.rows.end()));
  return c;
}

bool done(double cost, const Look& look, const CapTask& task) {
  const ShapingPrices prices = ShapingPrices::at(task.style.fidelity);
  const double further = prices.line + prices.near(look.allowance + 1e-6);
  const double longer = prices.told(task.lineLimit + look.linesOver + 1, task.lineLimit);
  return cost <= std::min(further, longer);
}

CapStatus judged(const CapShaping& cap, int limit) {
  const bool fits = std::abs(cap.mismatch) <= 0.2 && cap.deviation <= ShapingPrices::kNearEnough + 1e-9 &&
                    cap.schedule.lines() <= limit;
  return fits ? CapStatus::Fitted : CapStatus::Rough;
}

CapShaping measured(const CapRequest& request, const Candidate& from, const CapFound& found) {
  CapShaping cap;
  cap.schedule = {.underarm = request.underarm,
                  .runs = found.runs,
                  .rows = Rows(found.rows),
                  .crown = Stitches(from.crown)};
  cap.reference = from.shape;
  cap.referenceHeight = from.height;
  cap.cost = found.cost;
  const KnittedEdge right = knittedEdge(cap.schedule, EdgeSide::Right, 0, request.selvedge);
  const KnittedEdge left = knittedEdge(cap.schedule, EdgeSide::Left, 0, request.selvedge);
  cap.right = edgeLength(right, request.size), cap.left = edgeLength(left, request.size);
  cap.mismatch = cap.right + cap.left - request.target;
  const Cubic curve = capCurve(from.shape, from.height);
  Path path(curve.start());
  path.cubicTo(curve.p[1], curve.p[2], curve.p[3]);
  cap.deviation = edgeDeviation(right, 0, path, request.size);
  cap.status = judged(cap, lineLimit(request));
  return cap;
}

} // namespace

CapShaping shapeCap(const CapRequest& request) {
  CapShaping none;
  const std::vector<int> crowns = crownsNear(request);
  if (!(request.size.width > 0 && request.size.height > 0) || crowns.empty()) return none;
  std::vector<Candidate> candidates;
  for (const int crown : crowns)
    if (auto c = candidate(request, crown)) candidates.push_back(std::move(*c));
  if (candidates.empty()) {
    none.status = CapStatus::SleeveTooWide;
    return none;
  }
  CapFound best;
  const Candidate* from = nullptr;
  for (const Look& look : kLooks) {
    for (const Candidate& c : candidates)
      if (searchCap(c.task, c.bands, look.allowance, c.task.lineLimit + look.linesOver, best)) from = &c;
    if (done(best.cost, look, candidates.front().task)) break;
  }
  if (from) return measured(request, *from, best);
  none.status = CapStatus::NoSchedule;
  none.reference = candidates.front().shape;
  none.referenceHeight = candidates.front().height;
  return none;
}

} // namespace scye
