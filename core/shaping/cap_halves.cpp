#include "shaping/cap_halves.h"

#include "shaping/run_search.h"

#include <cmath>
#include <optional>

namespace scye {
namespace {

constexpr double kNone = std::numeric_limits<double>::infinity();
constexpr int kLeastRows = 3; // underarm, a shaping, crown
constexpr int kSparsest = 6;  // rows between decreases, where the curve asks for no more
constexpr int kSparsestAtAll = 12;
constexpr long kStatesAPlace = 64; // of the programme, worked out while the search passes a place

// What the search of one kind of edge needs; it goes on over all ends of a width.
struct EdgeTools {
  EdgeTools(const CapRequest& request, const CapShape& half, double height, const CapLook& look,
            int steps, int mostTaken, CapPieces& shelf)
      : style(request.style.widened(look.widened, look.widened)),
        bands(stepBands(capReference(half, height), request.size, steps)),
        pieces(shelf.of(style, request.size, sparsest(), half.underarm > 0)),
        corridor(bands, look.limit, mostTaken), ways(pieces, corridor, steps),
        search(pieces, corridor, ways, style.maxSteps) {}

  // Decreases so far apart as the curve is steep in its middle.
  [[nodiscard]] int sparsest() const {
    const auto middle = [&](std::size_t i) { return 0.5 * (bands[i].low + bands[i].high); };
    int every = kSparsest;
    const double last = middle(bands.size() - 1) - 1;
    for (std::size_t i = 0; i < bands.size(); ++i)
      while (every < kSparsestAtAll && i + std::size_t(every / 2) < bands.size() &&
             middle(i) < last && middle(i + std::size_t(every / 2)) < middle(i) + 0.8)
        every += 2;
    return every;
  }

  ShapingStyle style;
  std::vector<StepBand> bands;
  const EdgePieces& pieces;
  Corridor corridor;
  WaysUp ways;
  RunSearch search;
};

// Where a cap may end, in common for both halves.
struct CapEnd {
  int crown = 0, rows = 0, takenFront = 0, takenBack = 0; // stitches, selvedges in the crown
  double price = 0;
  double least = 0; // of the whole cap
  int rowsLeft = 2; // from the last shaping to the crown

  [[nodiscard]] RunEnd edge(int taken, double ofPrice) const {
    return {(rows - rowsLeft) / 2, taken, rowsLeft, (rows + 1) / 2, ofPrice};
  }
};

// The price of a seam and of the measures' spread; lengths are of both edges, flats included.
class SeamPrice {
public:
  SeamPrice(const CapRequest& request, double target)
      : spread_(ShapingPrices::spread(request.size)), target_(target), ease_(request.ease),
        armholes_(request.armholes),
        apart_(0.5 * std::abs(armholes_[0].mean() - armholes_[1].mean())) {}

  [[nodiscard]] double atLeast(double low, double high, double apartLow, double apartHigh) const {
    const double miss = std::max({0.0, low - target_, target_ - high});
    double spread = 0;
    for (const EdgeLength& armhole : armholes_) {
      const double apart = armhole.chord - armhole.corner;
      spread = std::max({spread, apartLow - apart, apart - apartHigh});
    }
    return ShapingPrices::kSeam(10 * (miss + apart_)) + spread_(10 * spread);
  }
  [[nodiscard]] double of(const EdgeLength& cap) const { return of(std::array{cap, cap}); }
  // The left sleeve's, then the right one's.
  [[nodiscard]] double of(const std::array<EdgeLength, 2>& caps) const {
    double seam = 0, spread = 0;
    for (std::size_t i = 0; i < caps.size(); ++i) {
      const EdgeLength over = caps[i] - armholes_[i];
      seam = std::max(seam, std::abs(over.mean() - ease_));
      spread = std::max(spread, over.spread());
    }
    return ShapingPrices::kSeam(10 * seam) + spread_(10 * spread);
  }

private:
  ShapingPrices::Steps spread_;
  double target_, ease_;
  std::array<EdgeLength, 2> armholes_;
  double apart_;
};

EdgeLength flat(double cm) {
  return {cm, cm, cm};
}

// Both edges alike: the schedule of one is the schedule of both.
class WholeGoal : public RunGoal {
public:
  WholeGoal(const ShapingPrices& prices, const SeamPrice& seam, double mostLines, double flats,
            double bound)
      : prices_(prices), seam_(seam), mostLines_(mostLines), flats_(flats), bound_(bound) {}
  double off(double deviation) const override { return prices_.capOff(deviation); }
  double lengthAtLeast(double low, double high, double apartLow, double apartHigh) const override {
    return seam_.atLeast(low + flats_, high + flats_, apartLow, apartHigh);
  }
  double lines(double count) const override {
    return ShapingPrices::kFurtherLine * std::max(0.0, count - mostLines_);
  }
  double length(const EdgeLength& length) const override { return seam_.of(length + flat(flats_)); }
  double bound() const override { return bound_; }
  void found(RunsFound schedule) override { bound_ = schedule.cost, best = std::move(schedule); }
  RunsFound best;

private:
  const ShapingPrices& prices_;
  const SeamPrice& seam_;
  double mostLines_, flats_, bound_;
};

// One half of a cap whose halves differ: the cheapest schedules, as long as its own side about.
class HalfGoal : public RunGoal {
public:
  HalfGoal(const ShapingPrices& prices, double mostLines, double target, double bound)
      : prices_(prices), mostLines_(mostLines), target_(target), bound_(bound) {}
  double off(double deviation) const override { return prices_.capOff(deviation); }
  double lines(double count) const override {
    return ShapingPrices::kFurtherLine * std::max(0.0, count - mostLines_);
  }
  double lengthAtLeast(double low, double high, double, double) const override {
    return price(std::max({0.0, low - target_, target_ - high}));
  }
  double length(const EdgeLength& length) const override {
    return price(std::abs(length.mean() - target_));
  }
  double bound() const override {
    return int(kept.size()) < kKept ? bound_ : std::min(bound_, kept.back().cost);
  }
  void found(RunsFound schedule) override {
    const auto at =
        std::upper_bound(kept.begin(), kept.end(), schedule,
                         [](const RunsFound& a, const RunsFound& b) { return a.cost < b.cost; });
    kept.insert(at, std::move(schedule));
    if (int(kept.size()) > kKept) kept.pop_back();
  }
  std::vector<RunsFound> kept;

private:
  static constexpr int kKept = 64;
  // Right and left edge together, so twice the half; a half may give way to the whole.
  [[nodiscard]] static double price(double cm) {
    constexpr double kEach = 0.1, kFree = 1, kMore = 0.5, kFar = 4; // mm
    const double mm = 5 * cm;
    return kEach * std::max(0.0, mm - kFree) + kMore * std::max(0.0, mm - kFar);
  }
  const ShapingPrices& prices_;
  double mostLines_, target_, bound_;
};

class WidthSearch {
public:
  WidthSearch(const CapRequest& request, const CapWidth& width, const CapLook& look,
              CapPieces& shelf, CapShaping& best)
      : r_(request), width_(width), look_(look), shelf_(shelf), best_(best),
        prices_(ShapingPrices::at(request.style.fidelity)), seam_(request, width.target),
        mostLines_(ShapingPrices::capLines(request.size)),
        wantedRows_(width.height / request.size.height),
        draftRows_(request.height.value_or(width.height) / request.size.height) {}

  bool run() {
    const int mostRows = int(std::floor(wantedRows_ + look_.rows));
    if (mostRows < kLeastRows) return false;
    const int steps = (mostRows + 1) / 2;
    const int mostTaken =
        int(std::max(width_.front.span(), width_.back.span()) / r_.size.width) + 3;
    EdgeTools front(r_, width_.front, width_.height, look_, steps, mostTaken, shelf_);
    best_.work += long(front.ways.states()) / kStatesAPlace;
    if (r_.halvesAlike()) return wholes(front);
    EdgeTools back(r_, width_.back, width_.height, look_, steps, mostTaken, shelf_);
    best_.work += long(back.ways.states()) / kStatesAPlace;
    return pairs(front, back);
  }

private:
  [[nodiscard]] double flats(int crown) const {
    return (r_.front.underarm + r_.back.underarm).value() * r_.size.width +
           2 * crownHalfStitches(Stitches(crown), r_.selvedge) * r_.size.width;
  }

  // Every crown and height that the look allows.
  [[nodiscard]] std::vector<CapEnd> ends() const {
    std::vector<CapEnd> all;
    const double crown = r_.crown / r_.size.width + 2 * r_.selvedge.value();
    const int both = width_.width.value() - (r_.front.underarm + r_.back.underarm).value();
    const double apart = (width_.front.span() - width_.back.span()) / r_.size.width;
    for (int k = std::max(2 * r_.selvedge.value() + 1, int(std::ceil(crown - look_.crown - 1e-9)));
         k <= crown + look_.crown + 1e-9; ++k)
      for (int rows = std::max(kLeastRows, int(std::ceil(wantedRows_ - look_.rows - 1e-9)));
           rows <= wantedRows_ + look_.rows + 1e-9; ++rows) {
        CapEnd end{.crown = k, .rows = rows};
        end.price = width_.price + ShapingPrices::kCrown(std::abs(k - crown)) +
                    ShapingPrices::height(rows - wantedRows_, rows - draftRows_) +
                    (rows % 2 ? ShapingPrices::kWrongSideCrown : 0);
        const int taken = both - k;
        for (const int uneven : unevenNear(apart, taken)) {
          end.takenFront = (taken + uneven) / 2, end.takenBack = (taken - uneven) / 2;
          if (end.takenFront < 1 || end.takenBack < 1) continue;
          for (const int left : {1, 2, 3})
            if ((rows - left) % 2 == 0) end.rowsLeft = left, all.push_back(end);
        }
      }
    return all;
  }

  // Front - back, of the parity that shares the stitches; alike: 0 or nothing.
  [[nodiscard]] std::vector<int> unevenNear(double apart, int taken) const {
    if (r_.halvesAlike()) return taken % 2 == 0 ? std::vector{0} : std::vector<int>{};
    std::vector<int> near;
    for (int n = int(std::floor(apart)) - 1; n <= int(std::ceil(apart)) + 1; ++n)
      if ((n + taken) % 2 == 0 && std::abs(n - apart) <= 1 + 1e-9) near.push_back(n);
    return near;
  }

  static void cheapestFirst(std::vector<CapEnd>& ends) {
    std::erase_if(ends, [](const CapEnd& e) { return e.least == kNone; });
    std::stable_sort(ends.begin(), ends.end(),
                     [](const CapEnd& a, const CapEnd& b) { return a.least < b.least; });
  }

  void take(const CapEnd& end, const std::vector<Run>& front, const std::vector<Run>& back,
            double cost) {
    best_.cost = cost;
    best_.width = width_.width;
    best_.beyondStyle = look_.widened > 1;
    best_.referenceFront = width_.front, best_.referenceBack = width_.back;
    best_.referenceHeight = width_.height;
    best_.front = {r_.front.underarm, front, Rows(end.rows), Stitches(end.crown)};
    best_.back = {r_.back.underarm, back, Rows(end.rows), Stitches(end.crown)};
  }

  bool wholes(EdgeTools& edge) {
    std::vector<CapEnd> all = ends();
    for (CapEnd& end : all)
      end.least =
          edge.search.leastCost(end.edge(end.takenFront, end.price),
                                WholeGoal(prices_, seam_, mostLines_, flats(end.crown), kNone));
    cheapestFirst(all);
    bool any = false;
    for (const CapEnd& end : all) {
      if (end.least >= best_.cost || best_.work >= r_.work) break;
      WholeGoal goal(prices_, seam_, mostLines_, flats(end.crown), best_.cost);
      edge.search.run(end.edge(end.takenFront, end.price), goal, best_.work, r_.work);
      if (goal.best.runs.empty()) continue;
      any = true;
      take(end, goal.best.runs, goal.best.runs, goal.best.cost);
    }
    return any;
  }

  // Halves cost half each. Right and left edge of both are of the mean sleeve.
  bool pairs(EdgeTools& front, EdgeTools& back) {
    std::vector<CapEnd> all = ends();
    const auto goalOf = [&](const CapSide& side, int crown, double bound) {
      const double flats = side.underarm.value() * r_.size.width +
                           crownHalfStitches(Stitches(crown), r_.selvedge) * r_.size.width;
      return HalfGoal(prices_, mostLines_, 2 * (side.share * width_.target - flats), bound);
    };
    for (CapEnd& end : all) {
      const double f =
          front.search.leastCost(end.edge(end.takenFront, 0), goalOf(r_.front, end.crown, kNone));
      const double b =
          back.search.leastCost(end.edge(end.takenBack, 0), goalOf(r_.back, end.crown, kNone));
      end.least = f == kNone || b == kNone ? kNone : end.price + 0.5 * (f + b);
    }
    cheapestFirst(all);
    bool any = false;
    for (const CapEnd& end : all) {
      if (end.least >= best_.cost || best_.work >= r_.work) break;
      const RunEnd frontEnd = end.edge(end.takenFront, 0), backEnd = end.edge(end.takenBack, 0);
      const double room = 2 * (best_.cost - end.price);
      const double backAtLeast = back.search.leastCost(backEnd, goalOf(r_.back, end.crown, kNone));
      HalfGoal f = goalOf(r_.front, end.crown, room - backAtLeast);
      front.search.run(frontEnd, f, best_.work, r_.work);
      if (f.kept.empty()) continue;
      HalfGoal b = goalOf(r_.back, end.crown, room - f.kept.front().cost);
      back.search.run(backEnd, b, best_.work, r_.work);
      any |= join(end, f.kept, b.kept);
    }
    return any;
  }

  // Every pair of halves.
  bool join(const CapEnd& end, const std::vector<RunsFound>& fronts,
            const std::vector<RunsFound>& backs) {
    std::vector<std::optional<HalfEdges>> front(fronts.size()), back(backs.size());
    bool any = false;
    for (std::size_t i = 0; i < fronts.size(); ++i)
      for (std::size_t k = 0; k < backs.size(); ++k) {
        const RunsFound &f = fronts[i], &b = backs[k];
        const double halves = end.price + 0.5 * (f.cost + b.cost);
        if (halves >= best_.cost) break;
        // Neither sleeve is nearer than their mean is.
        const EdgeLength mean = 0.5 * (f.length + b.length) + flat(flats(end.crown));
        if (halves + seam_.of(mean) >= best_.cost) continue;
        if (!front[i]) front[i] = edges(end, r_.front, f.runs);
        if (!back[k]) back[k] = edges(end, r_.back, b.runs);
        const double cost = halves + seam_.of(std::array{front[i]->left + back[k]->right,
                                                         front[i]->right + back[k]->left});
        if (cost >= best_.cost) continue;
        any = true;
        take(end, f.runs, b.runs, cost);
      }
    return any;
  }

  struct HalfEdges {
    EdgeLength left, right; // where it is worked at the left edge, and at the right one
  };
  [[nodiscard]] HalfEdges edges(const CapEnd& end, const CapSide& side,
                                const std::vector<Run>& runs) const {
    const Schedule s{side.underarm, runs, Rows(end.rows), Stitches(end.crown)};
    return {edgeLength(s, EdgeSide::Left, r_.size, r_.selvedge),
            edgeLength(s, EdgeSide::Right, r_.size, r_.selvedge)};
  }

  const CapRequest& r_;
  const CapWidth& width_;
  const CapLook& look_;
  CapPieces& shelf_;
  CapShaping& best_;
  ShapingPrices prices_;
  SeamPrice seam_;
  double mostLines_, wantedRows_, draftRows_;
};

} // namespace

bool searchWidth(const CapRequest& request, const CapWidth& width, const CapLook& look,
                 CapPieces& shelf, CapShaping& best) {
  return WidthSearch(request, width, look, shelf, best).run();
}

const EdgePieces& CapPieces::of(const ShapingStyle& style, const StitchSize& size, int sparsest,
                                bool underarm) {
  for (const auto& kept : kept_)
    if (kept->sparsest == sparsest && kept->underarm == underarm && kept->style == style)
      return kept->pieces;
  kept_.push_back(std::make_unique<Kept>(Kept{
      style, sparsest, underarm, EdgePieces(capKinds(style, size, sparsest), size, underarm)}));
  return kept_.back()->pieces;
}

} // namespace scye
