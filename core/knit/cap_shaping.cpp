#include "knit/cap_shaping.h"

#include "knit/shaping_cap_search.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace scye {

namespace {

constexpr int kRowsAround = 6;       // of the drafted cap's height
constexpr int kFewerLines = 2;
constexpr double kCrownAround = 5; // cm of the wanted crown

// What a look at the schedules allows; the next is taken only where something cheaper may lie outside.
// A cap that has to leave its curve far is told in few lines.
struct Look {
  double allowance; // stitches off the curve
  int lines;        // at most, beside the limit
};
constexpr Look kLooks[] = {{1, 99}, {1.25, 99}, {1.5, 6}, {2, 5}, {3, 5}, {6, 4}};

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
            .price = ShapingPrices::crownOff(2 * c.shape.crownHalf - request.crown)};
  if (c.task.taken <= 0 || c.task.rows.empty()) return std::nullopt;
  c.bands = bandsOf(c.shape, c.height, request.size,
                    *std::max_element(c.task.rows.begin(), c.task.rows.end()));
  return c;
}

struct Chosen {
  CapFound found;
  const Candidate* from = nullptr;
};

// One look at all crown widths. The nearest is tried with fewer lines first: what is found there cuts
// short the search among longer schedules.
void look(const Look& look, int limit, const ShapingPrices& prices,
          const std::vector<Candidate>& candidates, Chosen& best) {
  const int most = std::min(limit, look.lines);
  for (const Candidate& c : candidates)
    for (const int lines : {most - kFewerLines, most}) {
      if (lines < most && &c != &candidates.front()) continue;
      const double left = best.found.cost - prices.line - c.task.price;
      const double allowance = std::min(look.allowance, prices.nearFor(left));
      if (allowance >= 0 && searchCap(c.task, c.bands, allowance, lines, best.found)) best.from = &c;
    }
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
  const ShapingPrices prices = ShapingPrices::at(request.style.fidelity);
  Chosen best;
  for (const Look& next : kLooks) {
    look(next, lineLimit(request), prices, candidates, best);
    if (best.found.cost <= prices.line + prices.near(next.allowance + 1e-6)) break;
  }
  if (best.from) return measured(request, *best.from, best.found);
  none.status = CapStatus::NoSchedule;
  none.reference = candidates.front().shape;
  none.referenceHeight = candidates.front().height;
  return none;
}

} // namespace scye
