// The whole chain from a design to everything that follows from it and is shown: each stage worked
// out once and kept, the findings of all stages in one list. Computed afresh, never stored or
// edited. What a later stage adds belongs here, so that every view and the command line see the
// same state. A pure function of its arguments; safe on any thread.
#pragma once

#include "directions/directions.h"
#include "knit/gauge_effect.h"

#include <optional>

namespace scye {

struct Derived {
  GarmentDraft draft;
  KnitGarment knit;
  MakingUp makingUp;
  Directions directions;
  GaugeReport gauge;
  std::optional<GaugeEffect> gaugeEffect;
  LengthUnit typed = LengthUnit::Centimetre; // slips of the tape are looked for in the unit typed
  Findings
      findings; // of every stage: advice on measurements, draft, knitting; see deriveRemedies()
};

[[nodiscard]] Derived derive(const Design& design, LengthUnit typed = LengthUnit::Centimetre);
// The findings of draft and knitting alone, for remedies: advice brings its own.
[[nodiscard]] Findings findingsOf(const Design& design);
// Fills in the remedies of the findings, each tried on the whole chain; slower than derive(), so
// the window leaves it to a pause.
void deriveRemedies(const Design& design, Derived& derived);

} // namespace scye
