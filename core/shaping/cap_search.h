// The search behind cap_shaping.h for one crown width: all acceptable ways up from the underarm are
// kept by where they end (row, stitches), all acceptable ways down from the crown are walked and
// joined to them. Exact: a way is left out only where it cannot beat the best found.
#pragma once

#include "shaping/run_search.h"

#include <limits>
#include <vector>

namespace scye {

// What does not depend on the crown.
struct CapTools {
  CapTools(const ShapingStyle& likes, const StitchSize& size, AskedEdges edges)
      : style(likes), prices(ShapingPrices::at(likes.fidelity)), ladder(shapingLadder(likes, size)),
        chords(size, edges, likes.widestStep(size)) {}
  ShapingStyle style;
  ShapingPrices prices;
  std::vector<Rung> ladder;
  Chords chords;
};

struct CapTask {
  int underarm = 0;          // stitches
  int taken = 0;             // stitches by the runs at each edge
  double target = 0;         // cm, of the asked edges without underarm and crown
  std::vector<int> rows;     // candidates, in order of preference
  std::vector<int> bindOffs; // the armhole's first stepped bind-offs; empty: no preference
  double price = 0;          // of this crown width
};

struct CapFound {
  double cost = std::numeric_limits<double>::infinity();
  int rows = 0;
  std::vector<Run> runs;
  long work = 0; // climbs kept and joins tried so far, of all searches that this find went through

  [[nodiscard]] bool any() const { return !runs.empty(); }
  // A drag waits for this. A search that has done kMostWork makes do with the best it has; one that
  // has found nothing goes on for kMostWork once more, and gives up. Counted, not timed: the same
  // design gives the same schedule on every machine. Caps of usual proportions need a tenth of it.
  [[nodiscard]] bool spent() const { return work > (any() ? kMostWork : 2 * kMostWork); }
  static constexpr long kMostWork = 1500000;
};

// Looks among schedules of at most `lines` lines that leave the bands by at most `allowance` for
// one cheaper than `best`; replaces it and returns true if there is.
bool searchCap(const CapTools& tools, const CapTask& task, const std::vector<StepBand>& bands,
               double allowance, int lines, CapFound& best);

// Rows between the last event and the crown bind-off: none of the usual two, or one more or less so
// that the crown falls on the other side of the work.
[[nodiscard]] inline bool crownMayFollow(const Rung& last, int gap) {
  return gap == 2 || gap == 3 || (gap == 1 && !last.bindOff());
}

} // namespace scye
