#include "shaping/armhole_shaping.h"

#include "shaping/run_search.h"

#include <limits>
#include <optional>

namespace scye {
namespace {

constexpr double kNear = 1, kTooFar = 1.5; // stitches
constexpr int kSparsest = 12;              // rows between decreases of a neck
constexpr long kMostWork = 60000;          // of one search, see run_search.h
constexpr double kNone = std::numeric_limits<double>::infinity();

// The bands of all curves in one: what an edge is off it, it is off the farther of them.
std::vector<StepBand> bandsOf(const ArmholeRequest& request) {
  const int steps = (request.rows.value() + 1) / 2;
  std::vector<StepBand> bands;
  for (const Path& curve : request.curves) {
    const std::vector<StepBand> more = stepBands(curve, request.size, steps);
    if (bands.empty()) bands = more;
    for (std::size_t i = 0; i < bands.size(); ++i)
      bands[i].low = std::max(bands[i].low, more[i].low),
      bands[i].high = std::min(bands[i].high, more[i].high);
  }
  return bands;
}

// Rows from the start to where the curves begin to slope out again: the increases lie above. Curves
// that do not slope out themselves have no say.
int rowsToNarrowest(const ArmholeRequest& request) {
  if (request.grown <= Stitches(0)) return request.rows.value();
  int rows = request.rows.value();
  bool slopes = false;
  for (const Path& curve : request.curves) {
    Vec2 narrowest = curve.start();
    for (const Cubic& c : curve.segments())
      if (c.end().x() <= narrowest.x() + 1e-9) narrowest = c.end();
    if (curve.end().x() <= narrowest.x() + 1e-9) continue;
    slopes = true;
    rows = std::min(rows, 2 * int((narrowest.y() - curve.start().y()) / (2 * request.size.height)));
  }
  return slopes ? rows : 2 * (rows / 4);
}

Run bindOff(int stitches, int times) {
  return {ShapingKind::BindOff, Stitches(stitches), Rows(2), times};
}
Run decrease(int every, int times) {
  return {ShapingKind::Decrease, Stitches(1), Rows(every), times};
}

// How far an edge shaped by `runs` is off the bands.
double offBands(const std::vector<Run>& runs, const std::vector<StepBand>& bands) {
  std::size_t step = 0;
  int taken = 0;
  double off = 0;
  const auto standUntil = [&](std::size_t to) {
    for (; step < std::min(to, bands.size()); ++step)
      off = std::max(off, bands[step].outside(taken));
  };
  int row = 0;
  for (const Run& run : runs) {
    row += run.rest.value();
    for (int i = 0; i < run.times; ++i) {
      row += run.every.value();
      standUntil(std::size_t(row / 2));
      taken += run.kind == ShapingKind::Increase ? -run.stitches.value() : run.stitches.value();
    }
  }
  standUntil(bands.size());
  return off;
}

// The falling runs of one edge in any order a knitter would accept, for necks and for armholes that
// no plain schedule comes near.
class FallingGoal : public RunGoal {
public:
  explicit FallingGoal(const ShapingPrices& prices) : prices_(prices) {}
  double off(double deviation) const override { return prices_.armholeOff(deviation); }
  double lengthAtLeast(double, double, double, double) const override { return 0; }
  double lines(double) const override { return 0; }
  double length(const EdgeLength&) const override { return 0; }
  double bound() const override { return best ? best->cost : kNone; }
  void found(RunsFound schedule) override { best = std::move(schedule); }
  std::optional<RunsFound> best;

private:
  ShapingPrices prices_;
};

std::optional<RunsFound> searchFalling(const ArmholeRequest& request,
                                       const std::vector<StepBand>& bands, int lastRow) {
  const int taken = request.taken.value(), steps = int(bands.size());
  const int lastStep = std::min(lastRow / 2, steps - 1);
  long work = 0;
  FallingGoal goal(ShapingPrices::at(request.style.fidelity));
  constexpr struct {
    double limit;
    int wider, more;
  } kLooks[] = {{1.5, 1, 1}, {1.5, 1, 2}, {1.5, 2, 2}, {4, 2, 2}, {1e6, 2, 2}};
  for (const auto& look : kLooks) {
    const ShapingStyle style = request.style.widened(look.wider, look.more);
    const EdgePieces pieces(fallingKinds(style, request.size, kSparsest), request.size, false);
    const Corridor corridor(bands, look.limit, taken);
    const WaysUp ways(pieces, corridor, lastStep);
    RunSearch search(pieces, corridor, ways, style.maxSteps);
    for (int step = 1; step <= lastStep; ++step)
      search.run({step, taken, 2, steps, 0}, goal, work, kMostWork);
    if (goal.best) return goal.best;
    work = 0;
  }
  return std::nullopt;
}

// The increases back out to the tip, from the narrowest place to two rows under the end. `rest` of
// the first run counts from the start.
class SlopeOut {
public:
  SlopeOut(const ArmholeRequest& request, int narrowest, const std::vector<StepBand>& bands)
      : bands_(bands), taken_(request.taken.value()), times_(request.grown.value()),
        from_(narrowest + 2 - narrowest % 2), to_(request.rows.value() - 2) {}

  // One line, or two where one is off by more than a stitch; empty where there is no room.
  std::vector<Run> run() {
    const int sparsest = times_ > 1 ? (to_ - from_) / (times_ - 1) : kClosest;
    for (int every = kClosest; every <= sparsest; every += 2)
      lines(times_, every, every);
    if (least_ > kNear + 1e-9 && times_ > 2)
      for (int every = std::max(kClosest, 2 * ((sparsest - 2) / 2)); every <= sparsest; every += 2)
        for (int first = 2; first < times_; ++first)
          lines(first, every, every + 2), lines(first, every + 2, every);
    return best_;
  }

private:
  static constexpr int kClosest = 4; // rows between increases

  // The nearest of all first rows for `first` increases every `below` rows, the rest every `above`.
  void lines(int first, int below, int above) {
    const int last = (first - 1) * below + (times_ - first) * above;
    for (int row = from_; row + last <= to_; row += 2) {
      double off = 0;
      int worked = 0, next = row;
      for (int step = from_ / 2; step < int(bands_.size()) && off < least_ - 1e-9; ++step) {
        if (worked < times_ && 2 * step >= next) next += ++worked < first ? below : above;
        off = std::max(off, bands_[std::size_t(step)].outside(taken_ - worked));
      }
      if (off >= least_ - 1e-9) continue;
      least_ = off;
      best_ = {increase(below, first)};
      best_.front().rest = Rows(row - below);
      if (first < times_) best_.push_back(increase(above, times_ - first));
    }
  }
  static Run increase(int every, int times) {
    return {ShapingKind::Increase, Stitches(1), Rows(every), times};
  }

  const std::vector<StepBand>& bands_;
  int taken_, times_, from_, to_;
  double least_ = kNone;
  std::vector<Run> best_;
};

class Armholes {
public:
  explicit Armholes(const ArmholeRequest& request)
      : request_(request), prices_(ShapingPrices::at(request.style.fidelity)),
        bands_(bandsOf(request)), narrowest_(rowsToNarrowest(request)) {
    if (request.grown > Stitches(0)) out_ = SlopeOut(request, narrowest_, bands_).run();
  }

  std::vector<ArmholeShaping> run(int most) {
    most_ = std::size_t(most);
    const int taken = request_.taken.value();
    consider(taken > 0 ? std::vector{decrease(2, taken)} : std::vector<Run>{}, 0);
    const bool printed = !found_.empty() && found_.front().deviation <= kNear + 1e-9;
    if (taken > 0 && !(printed && request_.printedAlone)) plainOnes(taken);
    if (taken > 0 && nearest_ > kTooFar) beyond();
    if (found_.empty()) found_.push_back(unfinished());
    for (ArmholeShaping& shaping : found_)
      measure(shaping);
    return std::move(found_);
  }

private:
  void plainOnes(int taken) {
    fill({}, taken, 0);
    const int widest = request_.style.widestBindOff(request_.size);
    const double away = (request_.underarm + request_.taken).value() * request_.size.width;
    for (int k = 2; k <= std::min(widest, taken); ++k) {
      fill({bindOff(k, 1)}, taken - k, 0);
      const double price = away > kMuchTaken ? 0 : ShapingPrices::kFurtherBindOff;
      for (int second = 2; second <= std::min(k, taken - k); ++second)
        fill(joined({bindOff(k, 1), bindOff(second, 1)}), taken - k - second, price);
    }
  }

  // The rest on every right-side row, then on every 4th.
  void fill(const std::vector<Run>& before, int rest, double price) {
    // The first shaping comes on the second row after the underarm bind-off.
    const int most = before.empty() ? rest - 1 : rest;
    for (int sparse = before.empty() ? 1 : 0; sparse <= most; ++sparse) {
      std::vector<Run> runs = before;
      if (rest > sparse) runs.push_back(decrease(2, rest - sparse));
      if (sparse > 0) runs.push_back(decrease(4, sparse));
      consider(std::move(runs), price);
    }
  }

  void consider(std::vector<Run> runs, double price, bool beyondStyle = false) {
    int last = 0;
    for (const Run& run : runs)
      last += run.rows().value(),
          price += prices_.told(run, request_.style, request_.size) + ShapingPrices::single(run);
    if (last > std::min(narrowest_, request_.rows.value() - 1)) return;
    ArmholeShaping shaping;
    shaping.printedWay = runs.size() == 1 && runs.front().kind == ShapingKind::Decrease;
    // A first line has to be told in any case.
    price += shaping.printedWay ? ShapingPrices::kPrinted - prices_.line : -prices_.line;
    if (found_.size() >= most_ && price >= found_[most_ - 1].cost) return;
    if (request_.grown > Stitches(0)) {
      if (out_.empty()) return;
      runs.insert(runs.end(), out_.begin(), out_.end());
      runs[runs.size() - out_.size()].rest -= Rows(last);
    }
    shaping.deviation = offBands(runs, bands_);
    shaping.cost = price + prices_.armholeOff(shaping.deviation);
    shaping.beyondStyle = beyondStyle;
    shaping.schedule.runs = std::move(runs);
    shaping.status =
        shaping.deviation > kNear + 1e-9 ? ShapingStatus::Rough : ShapingStatus::Fitted;
    nearest_ = std::min(nearest_, shaping.deviation);
    found_.insert(std::upper_bound(found_.begin(), found_.end(), shaping,
                                   [](const auto& a, const auto& b) { return a.cost < b.cost; }),
                  std::move(shaping));
    if (found_.size() > most_) found_.pop_back();
  }

  void beyond() {
    const int room = request_.grown > Stitches(0) ? narrowest_ : request_.rows.value() - 1;
    // Where the curves slope out again the increases answer for it.
    std::vector<StepBand> falling = bands_;
    if (request_.grown > Stitches(0))
      falling.resize(std::min(falling.size(), std::size_t(room / 2 + 1)));
    const std::optional<RunsFound> found = searchFalling(request_, falling, room);
    if (!found || found->deviation >= nearest_) return;
    consider(found->runs, ShapingPrices::kFurtherBindOff, true);
  }

  // What can be told where the stitches cannot all be taken away or added.
  [[nodiscard]] ArmholeShaping unfinished() const {
    ArmholeShaping shaping;
    const int fits = std::min(request_.taken.value(), std::max(0, (narrowest_ - 1) / 2));
    if (fits > 0) shaping.schedule.runs = {decrease(2, fits)};
    shaping.deviation = offBands(shaping.schedule.runs, bands_);
    shaping.cost = prices_.armholeOff(shaping.deviation);
    return shaping;
  }

  void measure(ArmholeShaping& shaping) const {
    shaping.schedule.underarm = request_.underarm;
    shaping.schedule.rows = request_.rows;
    shaping.right = edgeLength(shaping.schedule, EdgeSide::Right, request_.size);
    shaping.left = edgeLength(shaping.schedule, EdgeSide::Left, request_.size);
  }

  const ArmholeRequest& request_;
  ShapingPrices prices_;
  std::vector<StepBand> bands_;
  int narrowest_;
  std::vector<Run> out_; // back to the tip
  std::size_t most_ = 1;
  double nearest_ = kNone;            // stitches off, of all that were tried
  std::vector<ArmholeShaping> found_; // the cheapest first
};

} // namespace

std::vector<ArmholeShaping> shapeArmholes(const ArmholeRequest& request, int most) {
  if (!(request.size.width > 0 && request.size.height > 0)) return {ArmholeShaping{}};
  return Armholes(request).run(most);
}

ArmholeShaping shapeNeck(const NeckRequest& request) {
  ArmholeShaping out;
  out.schedule.rows = request.rows;
  if (!(request.size.width > 0 && request.size.height > 0)) return out;
  const ArmholeRequest half{.curves = {request.curve.mirroredX()},
                            .size = request.size,
                            .taken = request.taken,
                            .rows = request.rows,
                            .style = request.style};
  const std::vector<StepBand> bands = bandsOf(half);
  if (request.taken > Stitches(0)) {
    const auto found = searchFalling(half, bands, request.rows.value() - 1);
    if (!found) return out;
    out.schedule.runs = found->runs;
    out.cost = found->cost;
  }
  out.deviation = offBands(out.schedule.runs, bands);
  out.status = out.deviation > kNear + 1e-9 ? ShapingStatus::Rough : ShapingStatus::Fitted;
  out.right = edgeLength(out.schedule, EdgeSide::Right, request.size);
  out.left = edgeLength(out.schedule, EdgeSide::Left, request.size);
  return out;
}

KnittedEdge neckEdge(const Schedule& schedule, EdgeSide section, Rows firstRow) {
  const bool left = section == EdgeSide::Left;
  return {.begin = firstRow,
          .end = firstRow + schedule.rows,
          .events = runEvents(schedule.runs, firstRow, Rows(left ? 0 : -1))};
}

} // namespace scye
