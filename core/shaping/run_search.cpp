#include "shaping/run_search.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr int kBindOffWidths = 7; // at most; of many widths only some
constexpr double kNone = std::numeric_limits<double>::infinity();

} // namespace

std::vector<StepKind> fallingKinds(const ShapingStyle& style, const StitchSize& size,
                                   int sparsest) {
  std::vector<StepKind> kinds;
  const ShapingPrices prices = ShapingPrices::at(style.fidelity);
  const auto add = [&](ShapingKind kind, int stitches, int every) {
    const double price = prices.told({kind, Stitches(stitches), Rows(every), 2}, style, size);
    kinds.push_back({kind, stitches, every, price});
  };
  const int widest = style.widestBindOff(size), stride = 1 + (widest - 2) / kBindOffWidths;
  if (style.maxSteps > 0)
    for (int k = widest; k >= 2; k -= stride)
      add(ShapingKind::BindOff, k, 2);
  if (style.everyRow) add(ShapingKind::Decrease, 1, 1);
  for (int every = 2; every <= sparsest; every += 2)
    add(ShapingKind::Decrease, 1, every);
  return kinds;
}

std::vector<StepKind> capKinds(const ShapingStyle& style, const StitchSize& size, int sparsest) {
  std::vector<StepKind> kinds = fallingKinds(style, size, sparsest);
  for (std::size_t i = kinds.size() - 1; i-- > 0;) {
    StepKind again = kinds[i];
    again.rising = true;
    kinds.push_back(again);
  }
  return kinds;
}

EdgePieces::EdgePieces(const std::vector<StepKind>& kinds, const StitchSize& size, bool underarm)
    : kinds_(kinds), size_(size) {
  table_.reserve((kinds.size() + 1) * kinds.size());
  for (int from = -1; from < int(kinds.size()); ++from)
    for (const StepKind& to : kinds) {
      const Event a = from < 0 ? Event{0, underarm}
                               : Event{double(kinds[std::size_t(from)].stitches),
                                       kinds[std::size_t(from)].bindOff()};
      const Event b{double(to.stitches), to.bindOff()};
      EdgeLength sum = piece(a, b, to.every);
      if (to.events() == 2) sum += piece(b, b, to.every);
      table_.push_back(sum);
    }
}

EdgeLength EdgePieces::piece(const Event& from, const Event& to, int rows) const {
  EdgeLength sum;
  for (const int apart : {rows, rows + int(to.late) - int(from.late)}) {
    const double up = apart * size_.height, w = size_.width;
    sum += {std::hypot(from.stitches * w, up), std::hypot(to.stitches * w, up),
            std::hypot(0.5 * (from.stitches + to.stitches) * w, up)};
  }
  return sum;
}

EdgeLength EdgePieces::toEnd(int from, int rows) const {
  const StepKind& kind = kinds_[std::size_t(from)];
  return piece({double(kind.stitches), kind.bindOff()}, {0, false}, rows);
}

namespace {

// On the left edge a bind-off comes a row later: a decrease in the row after it would meet it. And
// where a cap turns from falling to rising at once, one line is not told as two.
bool mayFollow(const StepKind& below, const StepKind& above) {
  const bool meets = below.bindOff() && above.every == 1;
  const bool same = below.rising != above.rising && below.stitches == above.stitches &&
                    below.every == above.every;
  return !meets && !same;
}

} // namespace

WaysUp::WaysUp(const std::vector<StepKind>& kinds, const EdgePieces& pieces,
               const Corridor& corridor, int steps)
    : kinds_(kinds.size()) {
  std::size_t places = 0;
  for (int step = 0; step <= steps; ++step) {
    low_.push_back(corridor.low(step)), high_.push_back(corridor.high(step));
    first_.push_back(places);
    places += std::size_t(std::max(0, high(step) - low(step) + 1));
  }
  Reach none;
  none.price.fill(kNever);
  reach_.assign(places * kinds_, none);
  for (int step = 1; step <= steps; ++step)
    for (int taken = std::max(1, low(step)); taken <= high(step); ++taken)
      for (int kind = 0; kind < int(kinds_); ++kind)
        fill(kinds, pieces, corridor, step, taken, kind);
}

void WaysUp::fill(const std::vector<StepKind>& kinds, const EdgePieces& pieces,
                  const Corridor& corridor, int step, int taken, int kind) {
  const StepKind& k = kinds[std::size_t(kind)];
  const int fromStep = step - k.steps(), from = taken - k.taken();
  if (fromStep < 0 || from < 0 || (from == 0) != (fromStep == 0)) return;
  double off = 0;
  for (int s = fromStep; s < step; ++s)
    off = std::max(off, corridor.outside(s, from));
  if (off > corridor.limit() + 1e-9) return;
  std::size_t level = 0;
  while (level < kWithin.size() && off > kWithin[level] + 1e-9)
    ++level;
  Reach& here = reach_[(first_[std::size_t(step)] + std::size_t(taken - low(step))) * kinds_ +
                       std::size_t(kind)];
  if (from == 0) {
    // The first shaping comes on the second row after the underarm bind-off.
    if (k.every != 2) return;
    for (std::size_t l = level; l < kLevels; ++l)
      here.price[l] = float(k.price);
    const EdgeLength& length = pieces.between(-1, kind);
    here.shortest = here.longest = float(length.mean());
    here.least = here.most = float(length.chord - length.corner);
    here.lines = 1;
    return;
  }
  if (!holds(fromStep, from)) return;
  for (int below = 0; below <= kind; ++below) {
    const Reach& r = at(fromStep, from, below);
    if (!r.any() || !mayFollow(kinds[std::size_t(below)], k)) continue;
    const float more = below == kind ? 0 : float(k.price);
    for (std::size_t l = level; l < kLevels; ++l)
      here.price[l] = std::min(here.price[l], r.price[l] + more);
    const EdgeLength& piece = pieces.between(below, kind);
    const float length = float(piece.mean()), apart = float(piece.chord - piece.corner);
    here.shortest = std::min(here.shortest, r.shortest + length);
    here.longest = std::max(here.longest, r.longest + length);
    here.least = std::min(here.least, r.least + apart);
    here.most = std::max(here.most, r.most + apart);
    here.lines = std::min(here.lines, r.lines + float(below != kind));
  }
}

bool RunSearch::stands(int from, int to, int taken, double& deviation) const {
  for (int step = from; step < to; ++step) {
    const double off = corridor_.outside(step, taken);
    if (off > corridor_.limit() + 1e-9) return false;
    deviation = std::max(deviation, off);
  }
  return true;
}

double RunSearch::floor(const Above& above, int step, int taken, int kind,
                        const RunGoal& goal) const {
  const WaysUp::Reach& reach = ways_.at(step, taken, kind);
  double least = kNone, nearer = 0;
  for (std::size_t level = 0; level < WaysUp::kLevels; ++level) {
    if (reach.price[level] < WaysUp::kNever)
      least =
          std::min(least, double(reach.price[level]) + goal.off(std::max(above.deviation, nearer)));
    // What is not within a level is past it.
    if (level < WaysUp::kWithin.size()) nearer = WaysUp::kWithin[level] + 2e-9;
  }
  if (least == kNone) return kNone;
  const double length = above.length.mean(), apart = above.length.chord - above.length.corner;
  constexpr double kDigits = 1e-4; // cm: the programme counts with fewer
  return above.price + least + goal.lines(above.lines + reach.lines) +
         goal.lengthAtLeast(length + reach.shortest - kDigits, length + reach.longest + kDigits,
                            apart + reach.least - kDigits, apart + reach.most + kDigits);
}

double RunSearch::leastCost(const RunEnd& end, const RunGoal& goal) const {
  Above above{.price = end.price};
  if (!ways_.holds(end.step, end.taken) || !stands(end.step, end.steps, end.taken, above.deviation))
    return kNone;
  double least = kNone;
  for (int kind = 0; kind < int(kinds_.size()); ++kind) {
    if (!ways_.at(end.step, end.taken, kind).any()) continue;
    if (end.rowsLeft < 2 && kinds_[std::size_t(kind)].bindOff()) continue;
    above.length = pieces_.toEnd(kind, end.rowsLeft);
    least = std::min(least, floor(above, end.step, end.taken, kind, goal));
  }
  return least;
}

void RunSearch::run(const RunEnd& end, RunGoal& goal, long& work, long most) {
  goal_ = &goal, work_ = &work, most_ = most;
  Above above{.price = end.price};
  if (!ways_.holds(end.step, end.taken) || !stands(end.step, end.steps, end.taken, above.deviation))
    return;
  for (int kind = int(kinds_.size()) - 1; kind >= 0; --kind) {
    const StepKind& k = kinds_[std::size_t(kind)];
    if (!ways_.at(end.step, end.taken, kind).any()) continue;
    // A crown in the row after would meet the bind-off of the left edge.
    if (end.rowsLeft < 2 && k.bindOff()) continue;
    above.length = pieces_.toEnd(kind, end.rowsLeft);
    above.bindOffs = k.bindOff() ? 1 : 0;
    if (floor(above, end.step, end.taken, kind, goal) >= goal.bound()) continue;
    runs_.push_back({k.kind, Stitches(k.stitches), Rows(k.every), k.events()});
    down(above, end.step, end.taken, kind);
    runs_.pop_back();
  }
}

void RunSearch::down(const Above& above, int step, int taken, int kind) {
  if (++*work_ > most_) return;
  const StepKind& k = kinds_[std::size_t(kind)];
  const int nextStep = step - k.steps(), next = taken - k.taken();
  if (next < 0 || nextStep < 0 || (next == 0) != (nextStep == 0)) return;
  Above at = above;
  if (!stands(nextStep, step, next, at.deviation)) return;
  const double closed = k.price + ShapingPrices::single(runs_.back());
  if (next == 0) {
    if (k.every != 2) return;
    at.price += closed, at.lines += 1;
    at.length += pieces_.between(-1, kind);
    return finish(at);
  }
  if (!ways_.holds(nextStep, next)) return;
  for (int below = kind; below >= 0; --below) {
    const StepKind& b = kinds_[std::size_t(below)];
    if (!ways_.at(nextStep, next, below).any() || !mayFollow(b, k)) continue;
    const bool same = below == kind;
    Above then = at;
    if (!same) then.price += closed, then.lines += 1;
    if (b.bindOff()) {
      const bool sameHalf = k.bindOff() && b.rising == k.rising;
      then.bindOffs = sameHalf ? above.bindOffs + 1 : 1;
      if (then.bindOffs > maxBindOffs_) continue;
    }
    then.length += pieces_.between(below, kind);
    if (floor(then, nextStep, next, below, *goal_) >= goal_->bound()) continue;
    if (same)
      runs_.back().times += k.events();
    else
      runs_.push_back({b.kind, Stitches(b.stitches), Rows(b.every), b.events()});
    down(then, nextStep, next, below);
    if (same)
      runs_.back().times -= k.events();
    else
      runs_.pop_back();
  }
}

void RunSearch::finish(const Above& above) {
  const double cost = above.price + goal_->off(above.deviation) + goal_->lines(above.lines) +
                      goal_->length(above.length);
  if (cost >= goal_->bound()) return;
  goal_->found({cost, {runs_.rbegin(), runs_.rend()}, above.length, above.deviation});
}

} // namespace scye
