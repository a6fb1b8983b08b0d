// What the page of the garment worn says beside its picture. Rounded to half centimetres, since the
// model knows no more.
#pragma once

#include "garment/derived.h"
#include "model/phrases.h"

#include <optional>
#include <string>
#include <vector>

namespace scye {

// `usual`: what the same garment with the usual cap would do, where that is another cap.
[[nodiscard]] std::string hemLiftText(double lift, std::optional<double> usual,
                                      const Phrases& phrases, LengthUnit unit);

// A line for each matter in which the picture misleads: cloth that is stretched by negative ease, a
// heavy yarn, a rib.
[[nodiscard]] std::vector<std::string> wornCautions(const Derived& derived, const Phrases& phrases);

// The design with the usual cap: what shapes its height left to the starting values.
[[nodiscard]] Design withUsualCap(const Design& design);

} // namespace scye
