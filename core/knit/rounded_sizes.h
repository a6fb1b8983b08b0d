// The sizes of the garment as wanted and as they come out in whole stitches and rows.
#pragma once

#include "knit/knit_garment.h"

namespace scye {

[[nodiscard]] std::vector<Rounded> roundedSizes(const GarmentDraft& draft, const KnitGarment& knit);

} // namespace scye
