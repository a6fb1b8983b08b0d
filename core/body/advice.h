// What measurements, swatches and yarn have to say, beside the drafted garment: doubts about slips
// of the tape, swatches that disagree, a gauge that does not go with the yarn's class. With
// remedies.
#pragma once

#include "model/finding.h"
#include "model/sizes.h"

namespace scye {

// `typed`: the unit in which values are typed. Cost: some microseconds; a millisecond when two
// slips have to be told apart.
[[nodiscard]] Findings adviceOn(const Design& design, const Sizes& sizes,
                                LengthUnit typed = LengthUnit::Centimetre);

} // namespace scye
