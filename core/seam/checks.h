// What a drafted garment is warned of. Thresholds are fields (limit.*) or stand beside the check;
// all are common practice in hand knitting unless a source is named.
#pragma once

#include "model/finding.h"

namespace scye {

struct GarmentDraft;
[[nodiscard]] Findings checkDraft(const GarmentDraft& draft);

} // namespace scye
