#include "shaping/run_search.h"

#include <algorithm>
#include <bit>
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

EdgePieces::EdgePieces(std::vector<StepKind> kinds, const StitchSize& size, bool underarm)
    : kinds_(std::move(kinds)), size_(size) {
  const int count = int(kinds_.size());
  table_.reserve((kinds_.size() + 1) * kinds_.size());
  for (int from = -1; from < count; ++from)
    for (const StepKind& to : kinds_) {
      const Event a =
          from < 0 ? Event{0, underarm} : Event{double(kind(from).stitches), kind(from).bindOff()};
      const Event b{double(to.stitches), to.bindOff()};
      EdgeLength sum = piece(a, b, to.every);
      if (to.events() == 2) sum += piece(b, b, to.every);
      table_.push_back(sum);
    }
  bounds_.reserve(table_.size());
  for (const EdgeLength& l : table_) {
    const float mean = float(l.mean()), apart = float(l.chord - l.corner);
    bounds_.push_back({mean, -mean, apart, -apart});
  }
  for (const StepKind& k : kinds_) {
    moves_.push_back({k.steps(), k.taken()});
    for (int rows = 1; rows <= int(kMostRowsLeft); ++rows)
      ends_.push_back(piece({double(k.stitches), k.bindOff()}, {0, false}, rows));
  }
  for (int k = 0; k < count; ++k) {
    const std::size_t steps = std::size_t(kind(k).steps());
    if (ofSteps_.size() <= steps) ofSteps_.resize(steps + 1);
    ofSteps_[steps].push_back(k);
  }
  below_.assign(kinds_.size(), 0);
  for (int above = 0; above < count; ++above)
    for (int below = 0; below <= above; ++below)
      if (mayFollow(kind(below), kind(above)))
        below_[std::size_t(above)] |= std::uint32_t(1) << below;
}

EdgeLength EdgePieces::piece(const Event& from, const Event& to, int rows) const {
  EdgeLength sum;
  const double w = size_.width;
  for (const int apart : {rows, rows + int(to.late) - int(from.late)}) {
    const double up = apart * size_.height;
    sum += {slant(from.stitches * w, up), slant(to.stitches * w, up),
            slant(0.5 * (from.stitches + to.stitches) * w, up)};
  }
  return sum;
}

WaysUp::WaysUp(const EdgePieces& pieces, const Corridor& corridor, int steps)
    : kinds_(pieces.kinds().size()) {
  std::size_t count = 0;
  places_.reserve(std::size_t(steps) + 1);
  for (int step = 0; step <= steps; ++step) {
    places_.push_back({corridor.low(step), corridor.high(step), count});
    count += std::size_t(std::max(0, high(step) - low(step) + 1));
  }
  reach_ = std::make_unique_for_overwrite<Reach[]>(count * kinds_);
  any_.assign(count, 0);
  outside_.reserve(count);
  for (int step = 0; step <= steps; ++step)
    for (int taken = low(step); taken <= high(step); ++taken)
      outside_.push_back(corridor.outside(step, taken));
  for (int step = 0; step <= steps; ++step)
    for (int taken = low(step); taken <= high(step); ++taken)
      goOn(pieces, step, taken);
}

// Every kind of shaping that may come next above a place.
void WaysUp::goOn(const EdgePieces& pieces, int step, int taken) {
  const std::size_t from = place(step, taken);
  const bool first = step == 0;
  if (first ? taken != 0 : !any_[from]) return;
  double off = 0;
  const int most = std::min(pieces.mostSteps(), steps() - step);
  for (int standing = 1; standing <= most; ++standing) {
    const int last = step + standing - 1; // that the edge stands there
    if (!holds(last, taken)) return;
    off = std::max(off, outside_[place(last, taken)]);
    for (const int kind : pieces.kindsOf(standing)) {
      const int to = taken + pieces.move(kind).taken;
      if (!holds(step + standing, to)) continue;
      // The first shaping comes on the second row after the underarm bind-off.
      if (first ? pieces.kind(kind).every == 2 : (any_[from] & pieces.below(kind)) != 0)
        goOnBy(pieces, from, kind, off, place(step + standing, to));
    }
  }
}

void WaysUp::goOnBy(const EdgePieces& pieces, std::size_t from, int kind, double off,
                    std::size_t to) {
  Reach reach = leastFrom(pieces, from, kind);
  for (std::size_t level = 0; level < kWithin.size() && off > kWithin[level] + 1e-9; ++level)
    reach.price[Eigen::Index(level)] = kNever;
  if (!reach.any()) return;
  reach_[to * kinds_ + std::size_t(kind)] = reach;
  any_[to] |= std::uint32_t(1) << kind;
}

WaysUp::Reach WaysUp::leastFrom(const EdgePieces& pieces, std::size_t from, int kind) const {
  const float price = float(pieces.kind(kind).price);
  Reach least;
  if (!any_[from]) { // the underarm
    least.price.setConstant(price);
    least.length = pieces.bounds(-1, kind);
    least.lines = 1;
    return least;
  }
  const Reach* below = &reach_[from * kinds_];
  for (std::uint32_t left = any_[from] & pieces.below(kind); left; left &= left - 1) {
    const int b = std::countr_zero(left);
    const Reach& r = below[b];
    least.price = least.price.min(r.price + (b == kind ? 0 : price));
    least.length = least.length.min(r.length + pieces.bounds(b, kind));
    least.lines = std::min(least.lines, r.lines + float(b != kind));
  }
  return least;
}

bool RunSearch::stands(int from, int to, int taken, double& deviation) const {
  for (int step = from; step < to; ++step) {
    const double off = corridor_.outside(step, taken);
    if (off > corridor_.limit() + 1e-9) return false;
    deviation = std::max(deviation, off);
  }
  return true;
}

void RunSearch::use(const RunGoal& goal) {
  for (std::size_t level = 0; level < WaysUp::kLevels; ++level)
    // What is not within a level is past it.
    offAt_[level] = goal.off(level == 0 ? 0 : WaysUp::kWithin[level - 1] + 2e-9);
}

double RunSearch::floor(const Above& above, const WaysUp::Reach& reach, const RunGoal& goal,
                        double bound) const {
  double least = kNone;
  for (std::size_t level = 0; level < WaysUp::kLevels; ++level)
    least = std::min(least, double(reach.price[Eigen::Index(level)]) +
                                std::max(above.offPrice, offAt_[level]));
  least += above.price + goal.lines(above.lines + reach.lines);
  if (least >= bound) return least;
  const double length = above.length.mean(), apart = above.length.chord - above.length.corner;
  constexpr double kDigits = 1e-4; // cm: the programme counts with fewer
  return least +
         goal.lengthAtLeast(length + reach.length[0] - kDigits, length - reach.length[1] + kDigits,
                            apart + reach.length[2] - kDigits, apart - reach.length[3] + kDigits);
}

bool RunSearch::begin(const RunEnd& end, const RunGoal& goal, Above& above) const {
  above.price = end.price;
  if (!ways_.holds(end.step, end.taken) || !stands(end.step, end.steps, end.taken, above.deviation))
    return false;
  above.offPrice = goal.off(above.deviation);
  return true;
}

double RunSearch::leastCost(const RunEnd& end, const RunGoal& goal) {
  Above above;
  if (!begin(end, goal, above)) return kNone;
  use(goal);
  double least = kNone;
  for (std::uint32_t left = ways_.kindsAt(end.step, end.taken); left; left &= left - 1) {
    const int kind = std::countr_zero(left);
    // A crown in the row after would meet the bind-off of the left edge.
    if (end.rowsLeft < 2 && pieces_.kind(kind).bindOff()) continue;
    above.length = pieces_.toEnd(kind, end.rowsLeft);
    least = std::min(least, floor(above, ways_.at(end.step, end.taken, kind), goal, least));
  }
  return least;
}

void RunSearch::run(const RunEnd& end, RunGoal& goal, long& work, long most) {
  goal_ = &goal, work_ = &work, most_ = most;
  Above above;
  if (!begin(end, goal, above)) return;
  use(goal);
  const std::uint32_t any = ways_.kindsAt(end.step, end.taken);
  for (int kind = int(pieces_.kinds().size()) - 1; kind >= 0; --kind) {
    if (!(any >> kind & 1)) continue;
    const StepKind& k = pieces_.kind(kind);
    if (end.rowsLeft < 2 && k.bindOff()) continue;
    above.length = pieces_.toEnd(kind, end.rowsLeft);
    above.bindOffs = k.bindOff() ? 1 : 0;
    const double bound = goal.bound();
    if (floor(above, ways_.at(end.step, end.taken, kind), goal, bound) >= bound) continue;
    runs_.push_back({k.kind, Stitches(k.stitches), Rows(k.every), k.events()});
    down(above, end.step, end.taken, kind);
    runs_.pop_back();
  }
}

void RunSearch::down(const Above& above, int step, int taken, int kind) {
  if (++*work_ > most_) return;
  const StepKind& k = pieces_.kind(kind);
  const EdgePieces::Move& move = pieces_.move(kind);
  const int nextStep = step - move.steps, next = taken - move.taken;
  if (next < 0 || nextStep < 0 || (next == 0) != (nextStep == 0)) return;
  Above at = above;
  if (!stands(nextStep, step, next, at.deviation)) return;
  if (at.deviation > above.deviation) at.offPrice = goal_->off(at.deviation);
  const double closed = k.price + ShapingPrices::single(runs_.back());
  if (next == 0) {
    if (k.every != 2) return;
    at.price += closed, at.lines += 1;
    at.length += pieces_.between(-1, kind);
    return finish(at);
  }
  if (!ways_.holds(nextStep, next)) return;
  const std::uint32_t any = ways_.kindsAt(nextStep, next) & pieces_.below(kind);
  for (int below = kind; below >= 0; --below) {
    if (!(any >> below & 1)) continue;
    const StepKind& b = pieces_.kind(below);
    const bool same = below == kind;
    Above then = at;
    if (!same) then.price += closed, then.lines += 1;
    if (b.bindOff()) {
      const bool sameHalf = k.bindOff() && b.rising == k.rising;
      then.bindOffs = sameHalf ? above.bindOffs + 1 : 1;
      if (then.bindOffs > maxBindOffs_) continue;
    }
    then.length += pieces_.between(below, kind);
    const double bound = goal_->bound();
    if (floor(then, ways_.at(nextStep, next, below), *goal_, bound) >= bound) continue;
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
  const double cost =
      above.price + above.offPrice + goal_->lines(above.lines) + goal_->length(above.length);
  if (cost >= goal_->bound()) return;
  goal_->found({cost, {runs_.rbegin(), runs_.rend()}, above.length, above.deviation});
}

} // namespace scye
