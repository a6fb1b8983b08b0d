// Filling in what the knitter has not said. Pure: the same design gives the same sizes.
// Order: ease, measurements (body/likely_body.h), the armhole's and the neck's starting values
// (starting.h), then the style's. A filled value is marked by its origin.
#pragma once

#include "body/survey.h"
#include "model/sizes.h"

namespace scye {

[[nodiscard]] Sizes complete(const Design& design);
// The same where bodies are like `population` instead of the whole survey's of that figure: so that
// the starting values can be tried on bodies kept from the fit.
[[nodiscard]] Sizes complete(const Design& design, const Moments* population);

// How many buttons: evenly spaced from the first to the last (cm up from the lower edge), so that
// one lies near the bust line and they are about 7.5 cm apart (common practice).
[[nodiscard]] int startingButtons(double first, double bust, double last);
inline constexpr double kButtonInset = 1.5; // cm from hem and neck to the first and the last

// How far the band lies inside the knitted neck edge, at each side: a high neck's stands up
// instead.
[[nodiscard]] double bandInNeck(const Sizes& sizes);
// Of a cap's ease so much is eased in smoothly at most, where the rest is gathered or pleated
// (common practice); and what that rest comes to, cm.
inline constexpr double kSmoothEase = 1;
[[nodiscard]] double drawnInAtCrown(const GarmentStyle& style, double capEase);

} // namespace scye
