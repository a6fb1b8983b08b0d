// What is worked out, once, for putting the pieces together: where the sleeves are pinned in, and
// what is picked up along the edges. A pure function of draft and knitted garment.
#pragma once

#include "making_up/pick_up.h"
#include "making_up/seam_marks.h"

namespace scye {

struct MakingUp {
  PickUps pickUps;
  std::vector<SeamMarks> marks; // right armhole, left armhole; back and front of each. Empty where
                                // no cap is knitted
};

[[nodiscard]] MakingUp makingUp(const GarmentDraft& draft, const KnitGarment& knit);

} // namespace scye
