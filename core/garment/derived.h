// The whole chain from a design to everything that follows from it and is shown: each stage worked
// out once and kept, the findings of all stages in one list. Computed afresh, never stored or
// edited. What a later stage adds belongs here, so that every view and the command line see the
// same state. A pure function of its arguments; safe on any thread.
#pragma once

#include "directions/directions.h"
#include "garment/remedies.h"
#include "knit/gauge_effect.h"
#include "progress/refit.h"

#include <optional>

namespace scye {

struct Derived {
  GarmentDraft draft;
  KnitGarment knit;                      // as it is being knitted
  std::optional<KnitGarment> designed;   // as the design alone has it, where work has been begun
  Work work;                             // with the plans that follow the design
  std::vector<WorkedConflict> conflicts; // of the design with rows that are worked
  MakingUp makingUp;
  Directions directions;
  GaugeReport gauge;
  std::optional<GaugeEffect> gaugeEffect;
  LengthUnit typed = LengthUnit::Centimetre; // slips of the tape are looked for in the unit typed
  Findings
      findings; // of every stage: advice on measurements, draft, knitting; see deriveRemedies()
};

// `work`: what of it is knitted already.
[[nodiscard]] Derived derive(const Design& design, LengthUnit typed = LengthUnit::Centimetre,
                             const Work& work = {});
// What the design alone asks for.
[[nodiscard]] inline const KnitGarment& designedIn(const Derived& derived) {
  return derived.designed ? *derived.designed : derived.knit;
}
// The findings of draft and knitting alone, for remedies: advice brings its own.
[[nodiscard]] Findings findingsOf(const Design& design);
// The chain that remedies are tried on: all that can find fault, advice on measurements included.
[[nodiscard]] Chain remedyChain(const Design& design, LengthUnit typed);
// Fills in the remedies of the findings. Far slower than derive(); what is returned and when it
// stops: addRemedies().
bool deriveRemedies(const Design& design, Derived& derived, const RemedyWatch& watch = {});

} // namespace scye
