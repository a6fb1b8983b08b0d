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

#include <array>
#include <limits>
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

// Lengths of the pieces between events, right and left edge together. On the left edge bind-offs
// come a row later.
class EdgePieces {
public:
  EdgePieces(const std::vector<StepKind>& kinds, const StitchSize& size, bool underarm);
  // From the last event of `from` (-1: the underarm) to the one of `to` that is worked next.
  [[nodiscard]] const EdgeLength& between(int from, int to) const {
    return table_[std::size_t(from + 1) * kinds_.size() + std::size_t(to)];
  }
  // From the last event to the end of the edge, so many rows later.
  [[nodiscard]] EdgeLength toEnd(int from, int rows) const;

private:
  struct Event {
    double stitches;
    bool late; // on the left edge
  };
  [[nodiscard]] EdgeLength piece(const Event& from, const Event& to, int rows) const;
  std::vector<StepKind> kinds_;
  StitchSize size_;
  std::vector<EdgeLength> table_;
};

// The dynamic programme: what may lie below each place.
class WaysUp {
public:
  static constexpr std::array<double, 3> kWithin{0.6, 1, 1.5}; // stitches off, and the limit
  static constexpr std::size_t kLevels = kWithin.size() + 1;
  static constexpr float kNever = std::numeric_limits<float>::infinity();
  struct Reach {
    std::array<float, kLevels> price; // least, of runs that stay that near; the last: the limit
    float shortest = kNever, longest = -kNever; // cm, mean of the measures
    float least = kNever, most = -kNever;       // cm, chord - corner
    float lines = kNever;                       // least
    [[nodiscard]] bool any() const { return price.back() < kNever; }
  };

  WaysUp(const std::vector<StepKind>& kinds, const EdgePieces& pieces, const Corridor& corridor,
         int steps);

  [[nodiscard]] int steps() const { return int(low_.size()) - 1; }
  [[nodiscard]] int low(int step) const { return low_[std::size_t(step)]; }
  [[nodiscard]] int high(int step) const { return high_[std::size_t(step)]; }
  // An event of `kind` in step `step` leaves `taken` stitches taken away, within low() and high().
  [[nodiscard]] const Reach& at(int step, int taken, int kind) const {
    return reach_[(first_[std::size_t(step)] + std::size_t(taken - low(step))) * kinds_ +
                  std::size_t(kind)];
  }
  [[nodiscard]] bool holds(int step, int taken) const {
    return step >= 0 && step <= steps() && taken >= low(step) && taken <= high(step);
  }

private:
  void fill(const std::vector<StepKind>& kinds, const EdgePieces& pieces, const Corridor& corridor,
            int step, int taken, int kind);
  std::size_t kinds_;
  std::vector<int> low_, high_;
  std::vector<std::size_t> first_; // of a step's places
  std::vector<Reach> reach_;
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
  RunSearch(const std::vector<StepKind>& kinds, const EdgePieces& pieces, const Corridor& corridor,
            const WaysUp& ways, int maxBindOffs)
      : kinds_(kinds), pieces_(pieces), corridor_(corridor), ways_(ways),
        maxBindOffs_(maxBindOffs) {}

  // The least that a schedule with this end can cost; infinite where there is none.
  [[nodiscard]] double leastCost(const RunEnd& end, const RunGoal& goal) const;
  // Hands every schedule that may cost less than goal.bound() to `goal`. `work` counts the places
  // come through and is left when it passes `most`.
  void run(const RunEnd& end, RunGoal& goal, long& work, long most);

private:
  struct Above { // what is decided from the end down to, not with, the run that is being worked
    double price = 0, deviation = 0, lines = 0;
    EdgeLength length{};
    int bindOffs = 0; // in this half
  };
  [[nodiscard]] bool stands(int from, int to, int taken, double& deviation) const;
  [[nodiscard]] double floor(const Above& above, int step, int taken, int kind,
                             const RunGoal& goal) const;
  void down(const Above& above, int step, int taken, int kind);
  void finish(const Above& above);

  const std::vector<StepKind>& kinds_;
  const EdgePieces& pieces_;
  const Corridor& corridor_;
  const WaysUp& ways_;
  int maxBindOffs_;

  RunGoal* goal_ = nullptr;
  long* work_ = nullptr;
  long most_ = 0;
  std::vector<Run> runs_; // from the end downward
};

} // namespace scye
