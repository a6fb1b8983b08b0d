// The garment put together and seen from the front: drawn from the same draft as its pieces,
// sleeves sewn in at the shoulder tips and hanging as steeply as their caps are high. Flat and to
// scale, in cm; how cloth falls is not worked out.
#pragma once

#include "schematic/picture.h"
#include "seam/garment_draft.h"

namespace scye {

// Degrees below the level at which the sleeves hang: 35 where the cap is half as high as the
// armhole is deep, 75 where it is nine tenths (our own judgement of the kinds in seam/hang.h).
[[nodiscard]] double sleeveAngle(const GarmentDraft& draft);

// One group "worn", its origin at the middle of the lower edge.
[[nodiscard]] Group frontView(const GarmentDraft& draft);

} // namespace scye
