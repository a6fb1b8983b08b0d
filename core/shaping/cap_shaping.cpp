#include "shaping/cap_shaping.h"

#include "shaping/cap_halves.h"
#include "shaping/cost.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// Half an edge longer than this many rows is no sleeve cap that anyone knits.
constexpr double kLongestHalf = 300;

// What a look at the schedules allows, and from which price of the best that is known on it is
// taken. A wider one finds nothing cheaper than what it adds costs: farther off the curve by
// ShapingPrices, or steps that nobody likes to knit.
struct Look {
  CapLook allows;
  double worth = 0;
};
constexpr double kNothingKnown = std::numeric_limits<double>::infinity();
constexpr Look kLooks[] = {{{1, 1, 2, 2}, 0},
                           {{1.5, 1, 2, 2}, ShapingPrices::kCapOff.once},
                           {{2.5, 2, 2, 2}, ShapingPrices::kCapOff.again},
                           {{6, 4, 6, 2}, ShapingPrices::kCapOff.again},
                           {{40, 16, 6, 2}, kNothingKnown}};

CapShaping failed(CapStatus status) {
  CapShaping none;
  none.status = status;
  return none;
}

CapShape shapeOf(const CapRequest& request, Stitches width, const CapSide& side) {
  const double w = request.size.width;
  return {.halfWidth = crownHalfStitches(width, request.selvedge) * w,
          .underarm = side.underarm.value() * w,
          .crownHalf = 0.5 * request.crown,
          .lowerFullness = request.lowerFullness,
          .upperFullness = request.upperFullness,
          .lean = side.lean};
}

void measure(const CapRequest& request, CapShaping& cap) {
  const StitchSize& size = request.size;
  const auto of = [&](const Schedule& s, EdgeSide side) {
    return edgeLength(s, side, size, request.selvedge);
  };
  cap.frontRight = of(cap.front, EdgeSide::Right), cap.frontLeft = of(cap.front, EdgeSide::Left);
  cap.backRight = of(cap.back, EdgeSide::Right), cap.backLeft = of(cap.back, EdgeSide::Left);
  const auto off = [&](const Schedule& s, const CapShape& half) {
    return edgeDeviation(knittedEdge(s, EdgeSide::Right, Rows(0), request.selvedge), Rows(0),
                         s.rows, capReference(half, cap.referenceHeight), size);
  };
  cap.deviation = off(cap.front, cap.referenceFront);
  if (!request.halvesAlike())
    cap.deviation = std::max(cap.deviation, off(cap.back, cap.referenceBack));
  cap.seam = cap.spread = 0;
  for (const EdgeLength& over :
       {cap.leftSleeve() - request.armholes[0], cap.rightSleeve() - request.armholes[1]}) {
    const double seam = over.mean() - request.ease;
    if (std::abs(seam) > std::abs(cap.seam)) cap.seam = seam;
    cap.spread = std::max(cap.spread, over.spread());
  }
  const double crown = crownHalfStitches(cap.front.crown, request.selvedge) * 2;
  const double rows = cap.front.rows.value() - cap.referenceHeight / size.height;
  constexpr double kRounding = 1e-9;
  const bool fits = std::abs(crown - request.crown / size.width) <= CapBars::kCrown + kRounding &&
                    std::abs(rows) <= CapBars::kHeight + kRounding &&
                    cap.deviation <= CapBars::kOff + kRounding &&
                    std::abs(cap.seam) <= CapBars::kSeam && cap.spread <= CapBars::kSpread;
  cap.status = fits ? CapStatus::Fitted : CapStatus::Rough;
}

} // namespace

Path capReference(const CapShape& half, double height) {
  const Cubic cubic = capCurve(half, height);
  return Path(cubic.start()).cubicTo(cubic.p[1], cubic.p[2], cubic.p[3]);
}

CapShaping shapeCap(const CapRequest& request) {
  CapPieces shelf;
  return shapeCap(request, shelf);
}

CapShaping shapeCap(const CapRequest& request, CapPieces& shelf) {
  if (!(request.size.width > 0 && request.size.height > 0)) return failed(CapStatus::NoStitches);
  const double target =
      0.5 * (request.armholes[0].mean() + request.armholes[1].mean()) + request.ease;
  if (!(target <= 2 * kLongestHalf * request.size.height)) return failed(CapStatus::NoSchedule);
  std::vector<CapWidth> widths;
  bool anyStitches = false;
  for (std::size_t i = 0; i < request.widths.size(); ++i) {
    const CapShape front = shapeOf(request, request.widths[i], request.front);
    const CapShape back = shapeOf(request, request.widths[i], request.back);
    if (front.span() < 0.5 * request.size.width || back.span() < 0.5 * request.size.width) continue;
    anyStitches = true;
    const RootSummary solved = solveCapHeight(std::array{front, back}, target);
    if (!solved.ok()) continue;
    widths.push_back(
        {request.widths[i], i > 0 ? ShapingPrices::kOtherWidth : 0, front, back, solved.x, target});
  }
  if (widths.empty()) return failed(anyStitches ? CapStatus::SleeveTooWide : CapStatus::NoStitches);
  CapShaping best = failed(CapStatus::NoSchedule);
  best.referenceFront = widths.front().front, best.referenceBack = widths.front().back;
  best.referenceHeight = widths.front().height;
  best.width = widths.front().width;
  best.cost = request.bound;
  bool any = false;
  const double share = request.halvesAlike() ? 1 : 0.5; // of a price, where one half pays it
  for (const Look& look : kLooks) {
    if (best.cost < share * look.worth) break;
    for (const CapWidth& width : widths)
      any |= searchWidth(request, width, look.allows, shelf, best);
  }
  if (any) measure(request, best);
  return best;
}

} // namespace scye
