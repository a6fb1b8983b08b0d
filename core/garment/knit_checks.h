// What the whole stitches and rows have to say. Thresholds are common practice.
#pragma once

#include "making_up/pick_up.h"

namespace scye {

[[nodiscard]] Findings checkKnitting(const GarmentDraft& draft, const KnitGarment& knit,
                                     const PickUps& pickUps);

} // namespace scye
