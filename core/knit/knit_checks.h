// What the whole stitches and rows have to say. Thresholds are common practice.
#pragma once

#include "knit/knit_garment.h"

namespace scye {

[[nodiscard]] std::vector<Rounded> roundedSizes(const GarmentDraft& draft, const KnitGarment& knit);
[[nodiscard]] Findings checkKnitting(const GarmentDraft& draft, const KnitGarment& knit);

} // namespace scye
