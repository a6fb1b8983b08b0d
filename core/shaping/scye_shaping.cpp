#include "shaping/scye_shaping.h"

#include "shaping/cap_halves.h"
#include "shaping/cost.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr int kKept = 16;         // armholes of one underarm bind-off
constexpr int kMostTried = 30;    // armholes
constexpr int kMostInVain = 4;    // without any cap
constexpr long kMostWork = 36000; // over all caps: see run_search.h

struct Pair {
  std::size_t option = 0;
  ArmholeShaping back, front;
  double cost = 0;
};

bool fitted(const Pair& pair) {
  return pair.back.status == ShapingStatus::Fitted && pair.front.status == ShapingStatus::Fitted;
}

void addPairs(const ScyeRequest& request, std::size_t option, std::vector<Pair>& all) {
  const UnderarmOption& asked = request.options[option];
  const auto backs = shapeArmholes(asked.back, kKept);
  const auto fronts =
      request.oneSchedule ? std::vector<ArmholeShaping>{} : shapeArmholes(asked.front, kKept);
  const auto add = [&](const ArmholeShaping& back, const ArmholeShaping& front) {
    const bool impossible =
        back.status == ShapingStatus::TooFewRows || front.status == ShapingStatus::TooFewRows;
    constexpr double kImpossible = 1000;
    const double moved = ShapingPrices::kUnderarmMoved * abs(asked.moved).value();
    all.push_back({option, back, front,
                   0.5 * (back.cost + front.cost) + moved + (impossible ? kImpossible : 0)});
  };
  for (const ArmholeShaping& back : backs) {
    if (request.oneSchedule) add(back, back);
    for (const ArmholeShaping& front : fronts)
      add(back, front);
  }
}

std::vector<Pair> pairsOf(const ScyeRequest& request) {
  std::vector<Pair> all;
  for (std::size_t i = 0; i < request.options.size(); ++i)
    addPairs(request, i, all);
  std::stable_sort(all.begin(), all.end(),
                   [](const Pair& a, const Pair& b) { return a.cost < b.cost; });
  return all;
}

CapRequest capFor(const ScyeRequest& request, const Pair& pair) {
  CapRequest cap = request.cap;
  cap.back.underarm = pair.back.schedule.underarm;
  cap.front.underarm = pair.front.schedule.underarm;
  cap.armholes = {pair.back.left + pair.front.right, pair.back.right + pair.front.left};
  const double back = pair.back.left.mean() + pair.back.right.mean();
  const double front = pair.front.left.mean() + pair.front.right.mean();
  cap.back.share = request.backShare.value_or(back / (back + front));
  cap.front.share = 1 - cap.back.share;
  return cap;
}

} // namespace

ScyeShaping shapeScye(const ScyeRequest& request) {
  ScyeShaping out;
  double best = std::numeric_limits<double>::infinity();
  CapPieces shelf;
  long work = 0;
  int tried = 0;
  std::vector<Pair> pairs = pairsOf(request);
  const bool anyFitted = std::any_of(pairs.begin(), pairs.end(), fitted);
  for (Pair& pair : pairs) {
    const int most = out.cap.knittable() ? kMostTried : kMostInVain;
    if (tried > 0 && (pair.cost >= best || tried >= most || work >= kMostWork)) break;
    CapRequest asked = capFor(request, pair);
    asked.work = kMostWork - work;
    if (out.cap.knittable()) asked.bound = best - pair.cost;
    CapShaping cap = shapeCap(asked, shelf);
    work += cap.work;
    const bool fits = cap.status == CapStatus::Fitted && (fitted(pair) || !anyFitted);
    if (tried == 0 || (cap.knittable() && pair.cost + cap.cost < best)) {
      if (cap.knittable()) best = pair.cost + cap.cost;
      out = {pair.option, std::move(pair.back), std::move(pair.front), std::move(cap)};
    }
    ++tried;
    if (fits) break;
  }
  return out;
}

} // namespace scye
