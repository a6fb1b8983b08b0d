// Everything that follows from the design and is shown: computed afresh, never stored or edited.
// What a later stage adds belongs here, so that every view and the command line see the same state.
#pragma once

#include "directions/directions.h"
#include "knit/gauge_effect.h"

namespace scye {

struct Derived {
  GarmentDraft draft;
  KnitGarment knit;
  Directions directions;
  GaugeReport gauge;
  std::optional<GaugeEffect> gaugeEffect;
  LengthUnit typed = LengthUnit::Centimetre; // slips of the tape are looked for in the unit typed
  Findings
      findings; // of every stage: draft, knitting, advice on measurements; see deriveRemedies()
};

[[nodiscard]] Derived derive(const Design& design, LengthUnit typed = LengthUnit::Centimetre);
// Fills in the remedies of the findings; slower than derive(), so the window leaves it to a pause.
void deriveRemedies(const Design& design, Derived& derived);

} // namespace scye
