// Everything that follows from the design and is shown: computed afresh, never stored or edited.
// What a later stage adds (row table, directions, charts) belongs here, so that every view sees the
// same state.
#pragma once

#include "seam/garment_draft.h"

namespace scye {

struct Derived {
  GarmentDraft draft;
  Findings findings; // of every stage; remedies follow when she pauses
};

[[nodiscard]] Derived derive(const Design& design);
// Remedies are tried out, each on some ten designs: too slow for every frame.
void deriveRemedies(const Design& design, Derived& derived);

} // namespace scye
