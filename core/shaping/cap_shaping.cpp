#include "shaping/cap_shaping.h"

#include "shaping/cap_search.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <span>

namespace scye {

namespace {

constexpr int kLeastRows = 3; // underarm, a shaping, crown
constexpr int kMostRows = 2000;
constexpr int kRowsAround = 6; // of the drafted cap's height
constexpr double kFits = 0.2;  // cm of mismatch
// Half an edge longer than this many rows is no sleeve cap that anyone knits.
constexpr double kLongestHalf = 300;
constexpr double kUnfound = std::numeric_limits<double>::infinity();
constexpr int kFewerLines = 2;
constexpr double kCrownAround = 5; // cm of the wanted crown

// What a look at the schedules allows; the next is taken only where something cheaper may lie
// outside. A cap that has to leave its curve far is told in few lines.
struct Look {
  double allowance; // stitches off the curve
  int lines;        // at most, beside the limit
};
constexpr Look kLooks[] = {{1, 99}, {1.25, 99}, {1.5, 6}};
// Where even that gives no cap that fits, bind-offs may be more and wider than the style has them.
constexpr Look kLooksBeyond[] = {{1, 6}, {1.5, 6}, {2.5, 4}, {6, 4}};
constexpr int kBeyond[] = {2, 4}; // times as many and as wide

int lineLimit(const CapRequest& request) {
  if (request.lineLimit > 0) return request.lineLimit;
  const int faithful = int(std::lround(4 * std::max(0.0, request.style.fidelity - 0.5)));
  return (10 / request.size.width <= 24 + 1e-9 ? 6 : 8) + faithful;
}

std::vector<int> leadingBindOffs(const std::vector<Run>& runs) {
  std::vector<int> steps;
  for (const Run& run : runs) {
    if (run.kind != ShapingKind::BindOff) break;
    steps.insert(steps.end(), run.times, run.stitches.value());
  }
  return steps;
}

std::vector<int> rowsNear(double height, const CapRequest& request) {
  const double wanted = request.rows ? request.rows->value() : height / request.size.height;
  if (!(wanted < kMostRows) || (request.rows && *request.rows < Rows(kLeastRows))) return {};
  if (request.rows) return {request.rows->value()};
  const int middle = int(std::lround(height / request.size.height));
  std::vector<int> rows;
  for (int off = 0; off <= kRowsAround; ++off)
    for (const int n : {middle - off, middle + off})
      if (n >= kLeastRows && (rows.empty() || n != rows.back())) rows.push_back(n);
  return rows;
}

// One crown width: the reference solved for it and what to look for.
struct Candidate {
  int crown = 0; // stitches, selvedges included
  CapShape shape;
  double height = 0;
  CapTask task;
  std::vector<StepBand> bands;

  [[nodiscard]] Path curve() const {
    const Cubic cubic = capCurve(shape, height);
    return Path(cubic.start()).cubicTo(cubic.p[1], cubic.p[2], cubic.p[3]);
  }
};

// Crown widths near the wanted one that leave a whole number of stitches to each edge, nearest
// first.
std::vector<int> crownsNear(const CapRequest& request) {
  if (request.crownStitches) return {request.crownStitches->value()};
  const int selvedges = 2 * request.selvedge.value();
  const double wanted = request.crown / request.size.width + selvedges;
  const double around = std::max(kCrownAround / request.size.width, 2.0);
  std::vector<int> crowns;
  const int most = request.width.value() - 2 * request.underarm.value() - 2;
  for (int k = selvedges + 2 + request.width.value() % 2; k <= most; k += 2)
    if (std::abs(k - wanted) <= around) crowns.push_back(k);
  std::sort(crowns.begin(), crowns.end(),
            [&](int a, int b) { return std::abs(a - wanted) < std::abs(b - wanted); });
  return crowns;
}

double crownPrice(const CapRequest& request, int crown) {
  const double width =
      2 * crownHalfStitches(Stitches(crown), request.selvedge) * request.size.width;
  return ShapingPrices::crownOff(width - request.crown);
}

CapShape shapeOf(const CapRequest& request, int crown, Stitches underarm, double lean) {
  const double w = request.size.width;
  return {.halfWidth = crownHalfStitches(request.width, request.selvedge) * w,
          .underarm = underarm.value() * w,
          .crownHalf = crownHalfStitches(Stitches(crown), request.selvedge) * w,
          .lowerFullness = request.lowerFullness,
          .upperFullness = request.upperFullness,
          .lean = lean};
}

void addBands(Candidate& c, const StitchSize& size) {
  const int most = *std::max_element(c.task.rows.begin(), c.task.rows.end());
  c.bands = stepBands(c.curve(), size, most / 2 + 1);
}

// Both edges alike. Nothing where the stitches cannot be shared between them, or no height solves
// it.
std::optional<Candidate> candidate(const CapRequest& request, int crown) {
  Candidate c;
  c.crown = crown;
  c.shape = shapeOf(request, crown, request.underarm, 0);
  const int spread = request.width.value() - crown - 2 * request.underarm.value();
  const RootSummary solved = solveCapHeight(std::array{c.shape, c.shape}, request.target);
  if (spread % 2 || spread < 2 || !solved.ok()) return std::nullopt;
  c.height = solved.x;
  c.task = {.underarm = request.underarm.value(),
            .taken = spread / 2,
            .target = request.target - 2 * (c.shape.underarm + c.shape.crownHalf),
            .rows = rowsNear(c.height, request),
            .bindOffs = leadingBindOffs(request.armhole),
            .price = crownPrice(request, crown)};
  if (c.task.rows.empty()) return std::nullopt;
  addBands(c, request.size);
  return c;
}

// One look at one crown width. With no find yet, fewer lines are tried first: what is found there
// cuts short the search among longer schedules.
bool lookAt(const Candidate& c, const Look& look, int limit, const CapTools& tools,
            CapFound& best) {
  const int most = std::min(limit, look.lines);
  bool found = false;
  for (const int lines : {most - kFewerLines, most}) {
    if (lines < most && best.cost < kUnfound) continue;
    const double left = best.cost - tools.prices.line - c.task.price;
    const double allowance = std::min(look.allowance, tools.prices.nearFor(left));
    if (allowance >= 0) found |= searchCap(tools, c.task, c.bands, allowance, lines, best);
  }
  return found;
}

bool nothingBeyond(const Look& look, const ShapingPrices& prices, double cost) {
  return cost <= prices.line + prices.near(look.allowance + 1e-6);
}

CapStatus judged(const CapShaping& cap, int limit) {
  const bool near = cap.deviation <= ShapingPrices::kNearEnough + 1e-9;
  const bool fits = std::abs(cap.mismatch) <= kFits && near && cap.schedule.lines() <= limit;
  return fits ? CapStatus::Fitted : CapStatus::Rough;
}

struct Chosen {
  CapFound found{};
  const Candidate* from = nullptr;
  bool beyond = false; // the style
};

CapShaping measured(const CapRequest& request, const Chosen& chosen, AskedEdges edges) {
  const Candidate& from = *chosen.from;
  const CapFound& found = chosen.found;
  CapShaping cap;
  cap.beyondStyle = chosen.beyond;
  cap.schedule = {.underarm = Stitches(from.task.underarm),
                  .runs = found.runs,
                  .rows = Rows(found.rows),
                  .crown = Stitches(from.crown)};
  cap.reference = from.shape;
  cap.referenceHeight = from.height;
  cap.cost = found.cost;
  const double flats = from.shape.underarm + from.shape.crownHalf;
  double wanted = from.task.target;
  if (edges != AskedEdges::Left) {
    cap.right = edgeLength(cap.schedule, EdgeSide::Right, request.size, request.selvedge);
    wanted += flats;
  }
  if (edges != AskedEdges::Right) {
    cap.left = edgeLength(cap.schedule, EdgeSide::Left, request.size, request.selvedge);
    wanted += flats;
  }
  cap.mismatch = cap.right + cap.left - wanted;
  const KnittedEdge edge = knittedEdge(cap.schedule, EdgeSide::Right, 0, request.selvedge);
  cap.deviation = edgeDeviation(edge, 0, cap.schedule.rows, from.curve(), request.size);
  cap.status = judged(cap, lineLimit(request));
  return cap;
}

CapShaping failed(CapStatus status) {
  CapShaping none;
  none.status = status;
  return none;
}

} // namespace

CapShaping shapeCap(const CapRequest& request) {
  if (!(request.size.width > 0 && request.size.height > 0)) return failed(CapStatus::NoStitches);
  const std::vector<int> crowns = crownsNear(request);
  if (crowns.empty()) return failed(CapStatus::NoStitches);
  if (request.target > 2 * kLongestHalf * request.size.height) return failed(CapStatus::NoSchedule);
  std::vector<std::optional<Candidate>> candidates;
  candidates.reserve(crowns.size());
  Chosen best;
  const auto search = [&](const ShapingStyle& style, std::span<const Look> looks) {
    const CapTools tools(style, request.size, AskedEdges::Both);
    for (const Look& look : looks) {
      for (std::size_t i = 0; i < crowns.size(); ++i) {
        if (crownPrice(request, crowns[i]) + tools.prices.line >= best.found.cost) break;
        if (best.found.spent()) return;
        if (i == candidates.size()) candidates.push_back(candidate(request, crowns[i]));
        if (candidates[i] && lookAt(*candidates[i], look, lineLimit(request), tools, best.found))
          best.from = &*candidates[i], best.beyond = style != request.style;
      }
      if (nothingBeyond(look, tools.prices, best.found.cost)) break;
    }
  };
  search(request.style, kLooks);
  for (const int times : kBeyond)
    if (best.found.cost >= ShapingPrices::kOverTwoMm)
      search(request.style.widened(times), kLooksBeyond);
  if (best.from) return measured(request, best, AskedEdges::Both);
  const auto solved = std::find_if(candidates.begin(), candidates.end(),
                                   [](const auto& c) { return c.has_value(); });
  if (solved == candidates.end()) return failed(CapStatus::SleeveTooWide);
  CapShaping none = failed(CapStatus::NoSchedule);
  none.reference = (*solved)->shape, none.referenceHeight = (*solved)->height;
  return none;
}

namespace {

// The crown and how the stitches are shared, nearest to what is wanted.
struct Share {
  int crown = 0, right = 0, left = 0; // right, left: taken away by the runs
  double price = 0, lean = 0;
};

Share shareNear(const HalvesRequest& request) {
  const CapRequest& cap = request.cap;
  const double w = cap.size.width;
  const int underarms = (cap.underarm + request.leftUnderarm).value();
  const int uneven = (cap.underarm - request.leftUnderarm).value();
  const int middle = int(std::lround(cap.crown / w)) + 2 * cap.selvedge.value();
  Share best;
  best.price = kUnfound;
  std::vector<int> crowns{middle, middle - 1, middle + 1};
  if (cap.crownStitches) crowns = {cap.crownStitches->value()};
  for (const int crown : crowns) {
    const int both = cap.width.value() - underarms - crown;
    int apart = int(std::lround(2 * request.lean / w)) - uneven; // right - left
    if ((both + apart) % 2) apart += 2 * request.lean / w - uneven > apart ? 1 : -1;
    const double lean = 0.5 * (apart + uneven) * w;
    const double price = crownPrice(cap, crown) + ShapingPrices::crownOff(lean - request.lean);
    if (price < best.price) best = {crown, (both + apart) / 2, (both - apart) / 2, price, lean};
  }
  return best;
}

struct Half {
  Candidate candidate;
  AskedEdges edges;
  Chosen best{};
};

Half halfOf(const CapRequest& cap, const Share& share, bool right, Stitches underarm,
            double target) {
  Half half{.candidate = {}, .edges = right ? AskedEdges::Right : AskedEdges::Left};
  Candidate& c = half.candidate;
  c.crown = share.crown;
  c.shape = shapeOf(cap, share.crown, underarm, right ? share.lean : -share.lean);
  c.task = {.underarm = underarm.value(),
            .taken = right ? share.right : share.left,
            .target = target - c.shape.underarm - c.shape.crownHalf,
            .rows = {},
            .bindOffs = leadingBindOffs(cap.armhole),
            .price = share.price / 2};
  return half;
}

// The cheapest schedule of `rows` rows that costs less than `bound`.
CapFound bestAt(Half& half, int rows, const CapTools& tools, std::span<const Look> looks, int limit,
                double bound) {
  half.candidate.task.rows = {rows};
  CapFound best;
  best.cost = bound;
  for (const Look& look : looks) {
    lookAt(half.candidate, look, limit, tools, best);
    if (nothingBeyond(look, tools.prices, best.cost)) break;
  }
  return best;
}

// The rows at which both halves together are cheapest; false where there are none.
bool shapeBoth(const CapRequest& cap, const ShapingStyle& style, std::span<const Look> looks,
               const std::vector<int>& rows, Half& right, Half& left) {
  const CapTools rightTools(style, cap.size, AskedEdges::Right);
  const CapTools leftTools(style, cap.size, AskedEdges::Left);
  const int limit = lineLimit(cap);
  double best = kUnfound;
  long work = 0;
  for (const int n : rows) {
    if (work > (best < kUnfound ? 1 : 4) * CapFound::kMostWork) break;
    const CapFound r = bestAt(right, n, rightTools, looks, limit, best);
    work += r.work;
    if (!r.any()) continue;
    const CapFound l = bestAt(left, n, leftTools, looks, limit, best - r.cost);
    work += l.work;
    if (!l.any()) continue;
    best = r.cost + l.cost;
    const bool beyondStyle = style != cap.style;
    right.best = {r, &right.candidate, beyondStyle}, left.best = {l, &left.candidate, beyondStyle};
  }
  return best < ShapingPrices::kOverTwoMm;
}

} // namespace

HalvesShaping shapeCapHalves(const HalvesRequest& request) {
  const CapRequest& cap = request.cap;
  HalvesShaping out;
  if (!(cap.size.width > 0 && cap.size.height > 0)) return out;
  const Share share = shareNear(request);
  if (request.rightTarget + request.leftTarget > 2 * kLongestHalf * cap.size.height) return out;
  if (share.price >= kUnfound || share.crown < 2 || share.right < 1 || share.left < 1) return out;
  Half right = halfOf(cap, share, true, cap.underarm, request.rightTarget);
  Half left = halfOf(cap, share, false, request.leftUnderarm, request.leftTarget);
  const RootSummary solved = solveCapHeight(std::array{right.candidate.shape, left.candidate.shape},
                                            request.rightTarget + request.leftTarget);
  out.right.status = out.left.status =
      solved.ok() ? CapStatus::NoSchedule : CapStatus::SleeveTooWide;
  const std::vector<int> rows = solved.ok() ? rowsNear(solved.x, cap) : std::vector<int>{};
  if (rows.empty()) return out;
  for (Half* half : {&right, &left}) {
    half->candidate.height = solved.x;
    half->candidate.task.rows = rows;
    addBands(half->candidate, cap.size);
  }
  bool fits = shapeBoth(cap, cap.style, kLooks, rows, right, left);
  for (const int times : kBeyond)
    if (!fits) fits = shapeBoth(cap, cap.style.widened(times), kLooksBeyond, rows, right, left);
  if (right.best.from) {
    out.right = measured(cap, right.best, right.edges);
    out.left = measured(cap, left.best, left.edges);
  }
  return out;
}

} // namespace scye
