// Filling in what the knitter has not said. Pure: the same design gives the same sizes.
// Order: measurements (published table at her bust; neck, wrist, elbow, head and hand by the rules in
// complete.cpp), then ease, then the style's starting values. A filled value is marked by its origin.
#pragma once

#include "model/sizes.h"

namespace scye {

[[nodiscard]] Sizes complete(const Design& design);

// Starting values that depend on the drafted armhole; also used by the draft when cross width changes.
// `away` = half bust width minus half cross width (cm): what the armhole takes away.
[[nodiscard]] double startingUnderarm(double away);                       // 45 %, 1 to 5 cm
[[nodiscard]] double startingRise(double away, double underarm, double depth); // 0.35 to 0.65

} // namespace scye
