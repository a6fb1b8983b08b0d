// The search for the best sequence of runs along an edge, for caps and necks: branch and bound
// (A. H. Land and A. G. Doig, "An automatic method of solving discrete programming problems",
// Econometrica 28, 1960; from memory). Schedules are built run by run from the edge's end downward,
// depth first. The bounds come from a dynamic programme over a smaller state (state-space
// relaxation: N. Christofides, A. Mingozzi, P. Toth, Networks 11, 1981; from memory): for each
// place that an edge may come through, row and stitches taken away, and each kind of shaping worked
// there, the least price of all runs below, and the shortest and longest way up to it.
//
// Exact within the kinds, the corridor and the limit on bind-offs it is given, unless the work
// allowed runs out: then it is the best met so far. Work is counted, not timed, so the same design
// gives the same schedule on every machine.
#pragma once

#include "shaping/corridor.h"
#include "shaping/cost.h"
#include "shaping/runs.h"

#include <Eigen/Core>

#include <array>
#include <cstdint>
#include <limits>
#include <memory>
#include <tuple>
#include <vector>

namespace scye {

// One kind of shaping and what it costs to say.
struct StepKind {
  ShapingKind kind = ShapingKind::Decrease;
  int stitches = 1;
  int every = 2;       // rows; on every row decreases come two by two, in one step of two rows
  double price = 1;    // a line of it
  bool rising = false; // of the upper half of a cap, where the steps grow again

  [[nodiscard]] bool bindOff() const { return kind == ShapingKind::BindOff; }
  [[nodiscard]] int steps() const { return every == 1 ? 1 : every / 2; } // of two rows
  [[nodiscard]] int taken() const { return every == 1 ? 2 : stitches; }
  [[nodiscard]] int events() const { return every == 1 ? 2 : 1; }
};

// From steep to sparse; of a cap then from sparse to steep. `sparsest`: rows between decreases.
[[nodiscard]] std::vector<StepKind> fallingKinds(const ShapingStyle& style, const StitchSize& size,
                                                 int sparsest);
[[nodiscard]] std::vector<StepKind> capKinds(const ShapingStyle& style, const StitchSize& size,
                                             int sparsest);

// The kinds of one search, what may follow what, and the lengths of the pieces between their
// events, right and left edge together. On the left edge bind-offs come a row later. Of one gauge;
// the same for every curve.
class EdgePieces {
public:
  // At most kMostKinds.
  EdgePieces(std::vector<StepKind> kinds, const StitchSize& size, bool underarm);
  static constexpr std::size_t kMostKinds = 32;

  [[nodiscard]] const std::vector<StepKind>& kinds() const { return kinds_; }
  [[nodiscard]] const StepKind& kind(int k) const { return kinds_[std::size_t(k)]; }
  // The kinds that may come next below `kind`, a bit each, `kind` itself among them.
  [[nodiscard]] std::uint32_t below(int kind) const { return below_[std::size_t(kind)]; }
  // From the last event of `from` (-1: the underarm) to the one of `to` that is worked next.
  [[nodiscard]] const EdgeLength& between(int from, int to) const { return table_[at(from, to)]; }
  // The same as WaysUp adds it up.
  [[nodiscard]] const Eigen::Array4f& bounds(int from, int to) const {
    return bounds_[at(from, to)];
  }
  // From the last event to the end of the edge, 1 to 3 rows later.
  [[nodiscard]] const EdgeLength& toEnd(int from, int rows) const {
    return ends_[std::size_t(from) * kMostRowsLeft + std::size_t(rows - 1)];
  }
  // What an event of each kind takes: so many steps of two rows, so many stitches.
  struct Move {
    int steps = 1, taken = 1;
  };
  [[nodiscard]] const Move& move(int kind) const { return moves_[std::size_t(kind)]; }
  // The kinds whose event takes so many steps, up to mostSteps().
  [[nodiscard]] const std::vector<int>& kindsOf(int steps) const {
    return ofSteps_[std::size_t(steps)];
  }
  [[nodiscard]] int mostSteps() const { return int(ofSteps_.size()) - 1; }

private:
  struct Event {
    double stitches;
    bool late; // on the left edge
  };
  [[nodiscard]] std::size_t at(int from, int to) const {
    return std::size_t(from + 1) * kinds_.size() + std::size_t(to);
  }
  [[nodiscard]] EdgeLength piece(const Event& from, const Event& to, int rows) const;
  std::vector<StepKind> kinds_;
  StitchSize size_;
  static constexpr std::size_t kMostRowsLeft = 3;
  std::vector<EdgeLength> table_, ends_;
  std::vector<Move> moves_;
  std::vector<std::vector<int>> ofSteps_;
  std::vector<Eigen::Array4f> bounds_;
  std::vector<std::uint32_t> below_;
};

// The dynamic programme: what may lie below each place.
class WaysUp {
public:
  static constexpr std::array<double, 3> kWithin{0.6, 1, 1.5}; // stitches off, and the limit
  static constexpr std::size_t kLevels = kWithin.size() + 1;
  static constexpr float kNever = std::numeric_limits<float>::infinity();
  using Four = Eigen::Array4f; // worked out side by side
  struct Reach {
    // Least, of runs that stay that near; the last: the limit.
    Four price = Four::Constant(kNever);
    // cm: least mean of the measures, most (negative), least chord - corner, most (negative): all
    // four are minima.
    Four length = Four::Constant(kNever);
    float lines = kNever; // least
    [[nodiscard]] bool any() const { return price[kLevels - 1] < kNever; }
  };
  static_assert(kLevels == Four::SizeAtCompileTime);

  WaysUp(const EdgePieces& pieces, const Corridor& corridor, int steps);

  [[nodiscard]] int steps() const { return int(places_.size()) - 1; }
  [[nodiscard]] std::size_t states() const { return any_.size() * kinds_; }
  // An event of `kind` in step `step` leaves `taken` stitches taken away: of those in kindsAt().
  [[nodiscard]] const Reach& at(int step, int taken, int kind) const {
    return reach_[place(step, taken) * kinds_ + std::size_t(kind)];
  }
  [[nodiscard]] bool holds(int step, int taken) const {
    return step >= 0 && step <= steps() && taken >= low(step) && taken <= high(step);
  }
  // The kinds that may be worked there, a bit each; holds(step, taken).
  [[nodiscard]] std::uint32_t kindsAt(int step, int taken) const {
    return any_[place(step, taken)];
  }

private:
  struct Places { // of one step: the stitches that may be taken away
    int low = 0, high = -1;
    std::size_t first = 0;
  };
  [[nodiscard]] int low(int step) const { return places_[std::size_t(step)].low; }
  [[nodiscard]] int high(int step) const { return places_[std::size_t(step)].high; }
  [[nodiscard]] std::size_t place(int step, int taken) const {
    const Places& p = places_[std::size_t(step)];
    return p.first + std::size_t(taken - p.low);
  }
  void goOn(const EdgePieces& pieces, int step, int taken);
  void goOnBy(const EdgePieces& pieces, std::size_t from, int kind, double off, std::size_t to);
  [[nodiscard]] Reach leastFrom(const EdgePieces& pieces, std::size_t from, int kind) const;

  std::size_t kinds_;
  std::vector<Places> places_;
  std::unique_ptr<Reach[]> reach_; // where any_ has the kind
  std::vector<std::uint32_t> any_;
  std::vector<double> outside_; // stitches off the curve
};

// A schedule that was found.
struct RunsFound {
  double cost = 0;
  std::vector<Run> runs{};
  EdgeLength length{};  // of right and left edge, without flats
  double deviation = 0; // stitches
};

// What is asked of a schedule beside its runs; and who keeps what is found.
class RunGoal {
public:
  virtual ~RunGoal() = default;
  virtual double off(double deviation) const = 0; // price of leaving the curve
  // Least price of a length whose mean, and whose chord - corner, lie between these, cm.
  virtual double lengthAtLeast(double low, double high, double apartLow,
                               double apartHigh) const = 0;
  virtual double lines(double count) const = 0;              // price of many, beside that of each
  virtual double length(const EdgeLength& length) const = 0; // its price once known
  virtual double bound() const = 0;                          // dearer ones are of no use
  virtual void found(RunsFound schedule) = 0;
};

// Where an edge ends.
struct RunEnd {
  int step = 0;     // of two rows, in which its last event is worked
  int taken = 0;    // stitches, by all events
  int rowsLeft = 2; // from that event's row to the end
  int steps = 0;    // of the whole edge
  double price = 0; // of ending there
};

class RunSearch {
public:
  RunSearch(const EdgePieces& pieces, const Corridor& corridor, const WaysUp& ways, int maxBindOffs)
      : pieces_(pieces), corridor_(corridor), ways_(ways), maxBindOffs_(maxBindOffs) {}

  // The least that a schedule with this end can cost; infinite where there is none.
  [[nodiscard]] double leastCost(const RunEnd& end, const RunGoal& goal);
  // Hands every schedule that may cost less than goal.bound() to `goal`. `work` counts the places
  // come through and is left when it passes `most`.
  void run(const RunEnd& end, RunGoal& goal, long& work, long most);

private:
  struct Above { // what is decided from the end down to, not with, the run that is being worked
    double price = 0, deviation = 0, lines = 0;
    double offPrice = 0; // of the deviation
    EdgeLength length{};
    int bindOffs = 0; // in this half
  };
  void use(const RunGoal& goal);
  [[nodiscard]] bool stands(int from, int to, int taken, double& deviation) const;
  [[nodiscard]] double floor(const Above& above, const WaysUp::Reach& reach, const RunGoal& goal,
                             double bound) const;
  [[nodiscard]] bool begin(const RunEnd& end, const RunGoal& goal, Above& above) const;
  void down(const Above& above, int step, int taken, int kind);
  void finish(const Above& above);

  const EdgePieces& pieces_;
  const Corridor& corridor_;
  const WaysUp& ways_;
  int maxBindOffs_;

  RunGoal* goal_ = nullptr;
  std::array<double, WaysUp::kLevels> offAt_{}; // price of what is past the level before
  long* work_ = nullptr;
  long most_ = 0;
  std::vector<Run> runs_; // from the end downward
};

} // namespace scye
