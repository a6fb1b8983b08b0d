#include "shaping/armhole_shaping.h"

#include "shaping/even_shaping.h"
#include "shaping/run_search.h"

#include <limits>

namespace scye {

namespace {

// The deviation allowed in the first, second ... look; each look is exact within its allowance.
constexpr double kLooks[] = {1, 2, 4, 1e9};
constexpr double kTooFar = 1.5; // stitches: the style gives way
constexpr int kBeyond = 2;      // times as many stepped bind-offs, and as wide

// A drag waits for the search: after so many climbs it makes do with what it has, after more it
// gives up. Counted, not timed. Usual armholes need some hundreds.
constexpr long kMostClimbs = 200000, kGivesUp = 5 * kMostClimbs;

struct Found {
  double cost = std::numeric_limits<double>::infinity();
  double deviation = std::numeric_limits<double>::infinity();
  std::vector<Run> runs{};
};

Found search(const ArmholeRequest& request, const ShapingStyle& style, int shapingRows) {
  const ShapingPrices prices = ShapingPrices::at(style.fidelity);
  const std::vector<Rung> ladder = shapingLadder(style, request.size);
  const Chords chords(request.size, AskedEdges::Both, style.widestStep(request.size));
  const int rows = request.rows.value(), taken = request.taken.value();
  const std::vector<StepBand> bands = stepBands(request.curve, request.size, (rows + 1) / 2);
  // What can still be taken away in a row from a rung on: no step grows.
  std::vector<double> rate(ladder.size());
  for (std::size_t i = ladder.size(); i-- > 0;)
    rate[i] = std::max(double(ladder[i].stitches) / ladder[i].every,
                       i + 1 < ladder.size() ? rate[i + 1] : 0);
  Found best;
  long climbs = 0;
  for (const double limit : kLooks) {
    const Corridor corridor(bands, limit, taken);
    const auto visit = [&](const Climb& climb, const std::vector<RungRun>& runs) {
      if (++climbs > (best.runs.empty() ? kGivesUp : kMostClimbs)) return false;
      if (climb.taken + rate[std::size_t(climb.rung)] * (shapingRows - climb.row) < taken)
        return false;
      if (prices.line * climb.lines + prices.near(climb.deviation) >= best.cost) return false;
      if (climb.taken < taken) return true;
      double deviation = climb.deviation;
      if (corridor.stands(climb.row, shapingRows, climb.taken, deviation)) {
        const double cost = prices.line * climb.lines + prices.near(deviation);
        if (cost < best.cost) best = {cost, deviation, toRuns(ladder, runs)};
      }
      return false;
    };
    Climber(ladder, chords, corridor, request.underarm.value(), style.maxSteps, taken,
            shapingRows - 1, visit)
        .run();
    if (best.cost <= prices.line + prices.near(limit + 1e-6)) break;
  }
  return best;
}

// Rows from the start to where the curve is narrowest and slopes out again.
int rowsToNarrowest(const ArmholeRequest& request) {
  if (request.grown <= Stitches(0)) return request.rows.value();
  Vec2 narrowest = request.curve.start();
  for (const Cubic& c : request.curve.segments())
    if (c.end().x() <= narrowest.x() + 1e-9) narrowest = c.end();
  const int steps = int((narrowest.y() - request.curve.start().y()) / (2 * request.size.height));
  return std::min(2 * steps, request.rows.value());
}

void slopeOut(const ArmholeRequest& request, int narrowest, ArmholeShaping& shaping) {
  const int last = shaping.schedule.shapedRows().value();
  const EvenShaping out = shapeEvenly({.kind = ShapingKind::Increase,
                                       .changes = request.grown.value(),
                                       .firstRow = std::max(narrowest, last) + 1,
                                       .lastRow = request.rows.value() - 2,
                                       .oddRightSide = false,
                                       .atLeast = Rows(4)});
  if (!out.fits) shaping.status = ShapingStatus::TooFewRows;
  std::vector<Run> runs = out.runs;
  if (!runs.empty()) runs.front().rest = Rows(out.start - last);
  shaping.schedule.runs.insert(shaping.schedule.runs.end(), runs.begin(), runs.end());
}

} // namespace

ArmholeShaping shapeArmhole(const ArmholeRequest& request) {
  ArmholeShaping out;
  out.schedule.underarm = request.underarm;
  out.schedule.rows = request.rows;
  if (!(request.size.width > 0 && request.size.height > 0)) return out;
  const int narrowest = rowsToNarrowest(request);
  if (request.taken > Stitches(0)) {
    Found found = search(request, request.style, narrowest);
    if (found.deviation > kTooFar) {
      const Found bold = search(request, request.style.widened(kBeyond), narrowest);
      out.beyondStyle = bold.cost < found.cost;
      if (out.beyondStyle) found = bold;
    }
    out.cost = found.cost;
    out.schedule.runs = found.runs;
  }
  if (out.schedule.taken() == std::max(request.taken, Stitches(0)))
    out.status = ShapingStatus::Fitted;
  if (request.grown > Stitches(0)) slopeOut(request, narrowest, out);
  const KnittedEdge right = knittedEdge(out.schedule, EdgeSide::Right, 0);
  out.deviation = edgeDeviation(right, 0, request.rows, request.curve, request.size);
  out.right = edgeLength(right, request.size);
  out.left = edgeLength(out.schedule, EdgeSide::Left, request.size);
  if (out.status == ShapingStatus::Fitted && out.deviation > ShapingPrices::kNearEnough + 1e-9)
    out.status = ShapingStatus::Rough;
  return out;
}

ArmholeShaping shapeNeck(const NeckRequest& request) {
  return shapeArmhole({.curve = request.curve.mirroredX(),
                       .size = request.size,
                       .taken = request.taken,
                       .rows = request.rows,
                       .style = request.style});
}

KnittedEdge neckEdge(const Schedule& schedule, EdgeSide section, int firstRow) {
  const bool left = section == EdgeSide::Left;
  return {.begin = firstRow,
          .end = firstRow + schedule.rows.value(),
          .events = runEvents(schedule.runs, firstRow, left ? 0 : -1)};
}

} // namespace scye
