// What is laid out before the cast-on, from the garment as it is knitted and finished:
// every thing that a line of the directions uses, and nothing else. Needles in mm, 0 where
// none is said.
#pragma once

#include "making_up/yarn.h"

#include <optional>

namespace scye {

struct NeedleRange {
  double low = 0, high = 0; // mm; high 0: no limit
};

struct Materials {
  double needle = 0, ribNeedle = 0;
  std::optional<NeedleRange> usual; // for such a gauge (Craft Yarn Council)
  bool edges = false;               // some edge or band is knitted on the thinner needles
  bool round = false;               // the neck is worked in the round
  bool third = false;               // shoulders are bound off together
  int buttons = 0;                  // as many as buttonholes and loops are made
  double hole = 0;                  // cm, across a buttonhole; 0: there is none
  int holders = 0;                  // in use at once
  int markers = 0;                  // corners or points of a band
  YarnNeed yarn;
  bool hook = false; // the neck's edge is crocheted
  // Whether edges are knitted on other needles than the body: unless both are said to be the same.
  [[nodiscard]] bool thinner() const {
    return needle == 0 || (ribNeedle > 0 && needle != ribNeedle);
  }
};

[[nodiscard]] Materials materialsOf(const GarmentDraft& draft, const KnitGarment& garment,
                                    const MakingUp& makingUp);

} // namespace scye
