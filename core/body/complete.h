// Filling in what the knitter has not said. Pure: the same design gives the same sizes.
// Order: measurements (published table at her bust; neck, wrist, elbow, head and hand by the rules
// in complete.cpp), then ease, then the style's starting values. A filled value is marked by its
// origin.
#pragma once

#include "model/sizes.h"

namespace scye {

[[nodiscard]] Sizes complete(const Design& design);

// Starting values that depend on the drafted armhole; also used by the draft when cross width
// changes. `away` = half bust width minus half cross width (cm): what the armhole takes away.
[[nodiscard]] double startingUnderarm(double away);                            // 45 %, 1 to 5 cm
[[nodiscard]] double startingRise(double away, double underarm, double depth); // 0.35 to 0.65
// How many buttons: evenly spaced from the first to the last (cm up from the lower edge), so that
// one lies near the bust line and they are about 7.5 cm apart (common practice).
[[nodiscard]] int startingButtons(double first, double bust, double last);
inline constexpr double kButtonInset = 1.5; // cm from hem and neck to the first and the last

// How far the band lies inside the knitted neck edge, at each side: a high neck's stands up
// instead.
[[nodiscard]] double bandInNeck(const Design& design, const Sizes& sizes);
// Of a cap's ease so much is eased in smoothly at most, where the rest is gathered or pleated
// (common practice); and what that rest comes to, cm.
inline constexpr double kSmoothEase = 1;
[[nodiscard]] double drawnInAtCrown(const Design& design, double capEase);

} // namespace scye
