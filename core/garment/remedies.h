// Computed remedies: for each finding the smallest change, in steps of 0.1 cm (or 0.01 of a share),
// after which the finding is gone and nothing new blocks. A remedy is tried out before it is
// offered, by the same function that made the finding; so applying it removes the finding.
#pragma once

#include "model/finding.h"
#include "model/sizes.h"

#include <functional>

namespace scye {

// What the caller's chain has to say about a design (drafted only, or knitted too).
using Evaluate = std::function<Findings(const Design&)>;

// The findings of `evaluate(design)` with their remedies filled in. `sizes` are the completed
// values (for fields she has not set). Cost: nothing without findings; else about 10 evaluations a
// remedy.
void addRemedies(const Design& design, const Sizes& sizes, const Evaluate& evaluate,
                 Findings& findings);

} // namespace scye
