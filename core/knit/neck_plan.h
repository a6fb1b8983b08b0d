// The neck of a piece in stitches and rows. A whole piece splits; a jacket front has its half
// alone.
#pragma once

#include "knit/acts.h"
#include "knit/piece_plan.h"

namespace scye {

struct NeckPlan {
  Rows splitRow{-1};     // RS: the slit or the neck; jacket fronts and straight necks have none
  Rows row{-1};          // RS: where the neck begins
  bool straight = false; // bound off in one row, after the shoulders
  Stitches atSplit{0};   // bound off at the centre when the left section starts
  // What is worked along the neck: on the left edge of the right section (and of the left front),
  // and on the right edge of the left section (and of the right front).
  Acts rightSection, leftSection;
};

[[nodiscard]] NeckPlan planNeck(const BodicePlan& plan, PieceId id, const BodiceLattice& counts);

} // namespace scye
