#include "shaping/cap_search.h"

#include <algorithm>
#include <numeric>

namespace scye {

namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();

class CapSearch {
public:
  CapSearch(const CapTools& tools, const CapTask& task, const std::vector<StepBand>& bands,
            double allowance, int lines, CapFound& best)
      : task_(task), prices_(tools.prices), ladder_(tools.ladder), chords_(tools.chords),
        corridor_(bands, allowance, task.taken), maxSteps_(tools.style.maxSteps), maxLines_(lines),
        best_(best) {}

  bool run() {
    const double before = best_.cost;
    collectClimbs();
    for (const int rows : task_.rows)
      descend(rows);
    return best_.cost < before;
  }

private:
  struct Kept {
    Climb climb;
    double price = 0; // lines, deviation, likeness: of this part alone
    double unlike = 0;
    int firstRun = 0, runs = 0; // in climbRuns_
    int next = -1;              // of those that end in the same place, dearer
  };
  // Of all climbs that end no higher and with no more stitches taken away.
  struct Least {
    double price = kNever; // of the climb
    double told = kNever;  // the same without its deviation
  };
  struct Descent {
    int row = 0, taken = 0; // where the event before must be
    double length = 0, deviation = 0;
    int rung = 0, lines = 0; // rung of the run the descent has come to; ladder size: the crown
    int gap = 0;             // rows from the event before to the first event of the descent
  };

  [[nodiscard]] double unlikeArmhole(const std::vector<RungRun>& runs) const {
    if (task_.bindOffs.empty()) return 0;
    std::size_t i = 0;
    for (const RungRun& run : runs) {
      if (!ladder_[run.rung].bindOff()) break;
      for (int n = 0; n < run.times; ++n, ++i)
        if (i >= task_.bindOffs.size() || task_.bindOffs[i] != ladder_[run.rung].stitches)
          return ShapingPrices::kUnlikeArmhole;
    }
    return i == task_.bindOffs.size() ? 0 : ShapingPrices::kUnlikeArmhole;
  }

  [[nodiscard]] double partPrice(int lines, double deviation) const {
    return prices_.line * lines + prices_.near(deviation) + task_.price;
  }

  void collectClimbs() {
    mostRows_ = *std::max_element(task_.rows.begin(), task_.rows.end());
    heads_.assign(placeOf(mostRows_ + 1, 0), -1);
    const auto visit = [this](const Climb& climb, const std::vector<RungRun>& runs) {
      ++best_.work;
      if (best_.spent()) return false;
      const double unlike = unlikeArmhole(runs);
      const double price = partPrice(climb.lines, climb.deviation) + unlike;
      if (climb.lines > maxLines_ || partPrice(climb.lines, climb.deviation) >= best_.cost)
        return false;
      const int further = climb.taken < task_.taken ? 1 : 0; // lines that have to follow
      if (climb.lines + further > maxLines_ || price + prices_.line * further >= best_.cost)
        return true;
      kept_.push_back({climb, price, unlike, int(climbRuns_.size()), int(runs.size())});
      climbRuns_.insert(climbRuns_.end(), runs.begin(), runs.end());
      return true;
    };
    Climber(ladder_, chords_, corridor_, task_.underarm, maxSteps_, task_.taken, mostRows_ - 1,
            visit)
        .run();
    std::vector<int> order(kept_.size());
    std::iota(order.begin(), order.end(), 0);
    std::sort(order.begin(), order.end(),
              [this](int a, int b) { return kept_[a].price > kept_[b].price; });
    for (const int i : order) {
      const std::size_t place = placeOf(kept_[i].climb.row, kept_[i].climb.taken);
      kept_[i].next = heads_[place];
      heads_[place] = i;
    }
    findLeast();
  }

  [[nodiscard]] std::size_t placeOf(int row, int taken) const {
    return std::size_t(row) * (task_.taken + 1) + taken;
  }

  void findLeast() {
    least_.assign(heads_.size(), {});
    for (const Kept& kept : kept_) {
      Least& least = least_[placeOf(kept.climb.row, kept.climb.taken)];
      least.price = std::min(least.price, kept.price);
      least.told =
          std::min(least.told, prices_.line * kept.climb.lines + kept.unlike + task_.price);
    }
    const auto spread = [](Least& to, const Least& from) {
      to.price = std::min(to.price, from.price), to.told = std::min(to.told, from.told);
    };
    for (int row = 0; row <= mostRows_; ++row)
      for (int taken = 0; taken <= task_.taken; ++taken) {
        if (row > 0) spread(least_[placeOf(row, taken)], least_[placeOf(row - 1, taken)]);
        if (taken > 0) spread(least_[placeOf(row, taken)], least_[placeOf(row, taken - 1)]);
      }
  }

  void descend(int rows) {
    rows_ = rows;
    rowPrice_ = rows % 2 ? ShapingPrices::kWrongSideCrown : 0;
    down_.clear();
    for (int gap = 1; gap <= 3; ++gap) {
      Descent crown{
          .row = rows - gap, .taken = task_.taken, .rung = int(ladder_.size()), .gap = gap};
      // Bands reach to the end of a step that the crown bind-off cuts short.
      if (crown.row % 2 ||
          !corridor_.stands(crown.row, rows + rows % 2, task_.taken, crown.deviation))
        continue;
      join(crown);
      for (int rung = 0; rung < int(ladder_.size()); ++rung)
        if (crownMayFollow(ladder_[rung], gap) && !repeat(crown, rung, 0)) break;
    }
  }

  void from(const Descent& at, int bindOffs) {
    if (at.lines + 1 >= maxLines_) return;
    for (int rung = at.rung + 1; rung < int(ladder_.size()); ++rung)
      if (!repeat(at, rung, bindOffs)) break;
  }

  // Puts runs of one rung under what is there, an event at a time. False: there is no room for even
  // one, nor for one of a sparser rung.
  bool repeat(const Descent& above, int index, int bindOffs) {
    if (above.lines + 1 >= maxLines_) return false;
    const Rung& rung = ladder_[index];
    Descent at = above;
    at.lines += 1;
    down_.push_back({index, 0});
    bool inside = true;
    while (!rung.bindOff() || bindOffs++ < maxSteps_) {
      for (int i = 0; inside && i < rung.together(); ++i)
        inside = step(at, index);
      if (!inside || hopeless(at)) break;
      down_.back().times += rung.together();
      join(at);
      from(at, bindOffs);
    }
    const bool any = down_.back().times > 0;
    down_.pop_back();
    return any || inside || rung.bindOff() || rung.every == 1;
  }

  // Whether nothing that ends at or below this place can make a cheaper whole.
  [[nodiscard]] bool hopeless(const Descent& at) const {
    if (best_.spent()) return true;
    const Least& least = least_[placeOf(at.row, at.taken)];
    const double told = prices_.line * at.lines + rowPrice_;
    return least.price + told >= best_.cost ||
           least.told + told + prices_.near(at.deviation) >= best_.cost;
  }

  bool step(Descent& at, int index) {
    const Rung& rung = ladder_[index];
    const int row = at.row - rung.every, taken = at.taken - rung.stitches;
    if (row < 2 || taken < 1) return false;
    if (!corridor_.stands(row, at.row, taken, at.deviation)) return false;
    at.length += chords_.chord(rung.stitches, rung.bindOff(), bindOffAbove(at), at.gap);
    at.row = row, at.taken = taken, at.rung = index, at.gap = rung.every;
    return true;
  }

  [[nodiscard]] bool bindOffAbove(const Descent& at) const {
    return at.rung < int(ladder_.size()) && ladder_[at.rung].bindOff();
  }

  void join(const Descent& at) {
    ++best_.work;
    const bool crown = at.rung == int(ladder_.size());
    for (int i = heads_[placeOf(at.row, at.taken)]; i >= 0; i = kept_[i].next) {
      const Kept& below = kept_[i];
      ++best_.work;
      if (below.price + prices_.line * at.lines + rowPrice_ >= best_.cost) return;
      if (below.climb.lines + at.lines > maxLines_) continue;
      const Rung& last = ladder_[below.climb.rung];
      if (crown ? !crownMayFollow(last, at.gap) : at.rung >= below.climb.rung) continue;
      double cost =
          partPrice(below.climb.lines + at.lines, std::max(below.climb.deviation, at.deviation)) +
          below.unlike + rowPrice_;
      if (cost >= best_.cost) continue;
      const double length = below.climb.length + at.length +
                            chords_.chord(last.stitches, last.bindOff(), bindOffAbove(at), at.gap);
      cost += ShapingPrices::missed(length - task_.target);
      if (cost < best_.cost) accept(below, cost);
    }
  }

  void accept(const Kept& below, double cost) {
    const auto first = climbRuns_.begin() + below.firstRun;
    std::vector<RungRun> runs(first, first + below.runs);
    runs.insert(runs.end(), down_.rbegin(), down_.rend());
    best_ = {cost, rows_, toRuns(ladder_, runs), best_.work};
  }

  const CapTask& task_;
  const ShapingPrices& prices_;
  const std::vector<Rung>& ladder_;
  const Chords& chords_;
  Corridor corridor_;
  int maxSteps_, maxLines_;
  CapFound& best_;

  int mostRows_ = 0, rows_ = 0;
  double rowPrice_ = 0;
  std::vector<Kept> kept_;
  std::vector<RungRun> climbRuns_; // of all kept climbs, one after the other
  std::vector<int> heads_;         // by (row, stitches taken): the cheapest climb that ends there
  std::vector<Least> least_;       // likewise
  std::vector<RungRun> down_;      // from the crown downward
};

} // namespace

bool searchCap(const CapTools& tools, const CapTask& task, const std::vector<StepBand>& bands,
               double allowance, int lines, CapFound& best) {
  if (task.rows.empty() || task.taken <= 0 || lines < 1) return false;
  return CapSearch(tools, task, bands, allowance, lines, best).run();
}

} // namespace scye
