// Computed remedies: for each finding the smallest change, in steps of 0.1 cm (or 0.01 of a share),
// after which the finding is gone, on the draft and on the needles. Each is tried on the whole
// chain before it is offered: it brings no new finding of its finding's severity or graver, changes
// by half a stitch or row at least, and changes something that is knitted or sewn. A larger step is
// taken where it helps other findings too that the same remedy is for, or brings no warning.
//
// Order, of the search and of what was found (RemedyOrder): gravest findings first; of a finding's
// remedies first what leaves least to find, then what takes back the cause (a value that was set
// away from where it would start, a doubtful measurement), then the likeliest by the table.
//
// The search can be given up at any trial and tells each remedy as it is found. It reads no clock
// of its own. Trials are kept: recipes of several findings often try the same design.
#pragma once

#include "model/finding.h"
#include "model/sizes.h"

#include <compare>
#include <cstdint>
#include <ctime>
#include <functional>
#include <limits>
#include <stop_token>

namespace scye {

// What the whole chain says of a design.
struct Outcome {
  Findings findings;
  std::uint64_t made = 0; // one number for all that is knitted and sewn: the same if that is
};

// The chain as the search asks it. `drafted`: a part of the findings of `whole`, had cheaply; it
// rules most trials out.
struct Chain {
  std::function<Findings(const Design&)> drafted;
  std::function<Outcome(const Design&)> whole;
};

// Which of two remedies is offered first; smaller comes first.
struct RemedyOrder {
  int blocking = 0, warnings = 0, notes = 0; // findings that it leaves
  int cause = 0;                             // 0: it takes a cause back
  int rank = 0;
  auto operator<=>(const RemedyOrder&) const = default;
};

// When to stop, and who hears of what is found.
struct RemedyWatch {
  std::stop_token stop{};
  std::function<double()> seconds{}; // a clock, read before each trial; none: no limit of time
  double giveUpAfter = 3;            // s
  int mostTrials = std::numeric_limits<int>::max(); // of the whole chain
  // A remedy of the finding of this index, in its place in order; the list is that finding's.
  std::function<void(std::size_t finding, const std::vector<Remedy>& remedies)> found{};
};

// Processor time of the calling thread, for those who give up after a while: the same work is done
// before that on a busy machine as on an idle one.
[[nodiscard]] inline double cpuSeconds() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return double(now.tv_sec) + 1e-9 * double(now.tv_nsec);
}

// Fills in the remedies of `findings`, which are those of the whole chain for `design`. `sizes` are
// its completed values. Returns whether all was tried; false: stopped or given up, and what was
// found until then is there.
bool addRemedies(const Design& design, const Sizes& sizes, const Chain& chain, Findings& findings,
                 const RemedyWatch& watch = {});

} // namespace scye
