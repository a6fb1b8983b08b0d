// What is measured on a drape, and told in words: never more exactly than the model knows.
#pragma once

#include "worn/dressing.h"

namespace scye {

// Of each triangle: how much longer its most stretched direction is than when the cloth lies
// relaxed; a rib counts from where it lies flat, not drawn in. 0.1 is a tenth longer.
[[nodiscard]] std::vector<double> stretchOf(const SewnGarment& garment, const Points& x);
// The same averaged to the points, by area.
[[nodiscard]] std::vector<double> pullOf(const SewnGarment& garment, const Points& x);

struct WornMeasures {
  double seam = 0; // cm, one armhole's sewn seam
  double hemY = 0; // the mean height of the lower edge, cm over the nape
  double cuffY = 0;
  double pull = 0; // 95th percentile of the stretch
  double mostStretch = 0;
  double deepest = 0;       // cm inside the body, 0: nowhere
  double layersThrough = 0; // cm the sleeve goes through the bodice, 0: nowhere
};
[[nodiscard]] WornMeasures measuresOf(const Worn& worn);

// Degrees to which arms are lifted to see what that does: 60, and of a form whose arms hang far out
// 30 more than hanging, up to level.
[[nodiscard]] double liftedArm(const BodyForm& body);
// How much higher the lower edge lies when the arms are lifted from hanging to there, cm; nothing
// where `watch` gave it up.
[[nodiscard]] std::optional<double> hemLift(const std::shared_ptr<const SewnGarment>& garment,
                                            const BodyForm& body, const Watch& watch = {});

} // namespace scye
