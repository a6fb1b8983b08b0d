// Plain enumeration of every acceptable schedule of a small piece: the oracle for the searches.
#pragma once

#include "core/shaping/checks.h"
#include "shaping/runs.h"

#include <functional>

namespace scye::checks {

// All ways of shaping, in any order: bind-offs of 2 and more up to `widest`, decreases every 2nd to
// `sparsest` row.
inline std::vector<Run> kinds(int widest, int sparsest) {
  std::vector<Run> all;
  for (int every = 2; every <= sparsest; every += 2)
    all.push_back({ShapingKind::Decrease, Stitches(1), Rows(every), 1});
  for (int k = 2; k <= widest; ++k)
    all.push_back({ShapingKind::BindOff, Stitches(k), Rows(2), 1});
  return all;
}

struct Enumeration {
  int widest = 2, sparsest = 12, maxSteps = 4, taken = 0,
      rows = 0;         // `rows`: the last one an event may fall on
  bool mayRise = false; // after falling, may the steps grow again
  std::function<void(const std::vector<Run>&)> use;

  void run() const {
    std::vector<Run> runs;
    extend(runs, 0, 0, false, 0);
  }

private:
  void extend(std::vector<Run>& runs, int row, int sum, bool rising, int bindOffs) const {
    if (sum == taken) return use(runs);
    for (const Run& kind : kinds(widest, sparsest)) {
      if (runs.empty() && kind.every != Rows(2)) continue;
      bool up = rising;
      int steps = bindOffs;
      if (!runs.empty()) {
        const double before = rate(runs.back()), now = rate(kind);
        if (now == before) continue;
        if (now < before && rising) continue;
        if (now > before && !rising) {
          if (!mayRise) continue;
          up = true, steps = 0;
        }
      }
      runs.push_back(kind);
      const bool bindOff = kind.kind == ShapingKind::BindOff;
      for (int n = 1; sum + n * kind.stitches.value() <= taken; ++n) {
        if (row + n * kind.every.value() > rows || (bindOff && steps + n > maxSteps)) break;
        runs.back().times = n;
        extend(runs, row + n * kind.every.value(), sum + n * kind.stitches.value(), up,
               steps + (bindOff ? n : 0));
      }
      runs.pop_back();
    }
  }
};

} // namespace scye::checks
