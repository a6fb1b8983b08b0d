// What an uncertain gauge does to the finished garment: the knitted pieces stay as they are
// counted, only the stitch size moves. 90 % reaches (value +- reach), cm.
#pragma once

#include "body/gauge.h"
#include "knit/knit_garment.h"

namespace scye {

struct GaugeEffect {
  double bust = 0; // of the finished girth
  double hemToUnderarm = 0;
  double sleeveLength = 0;
  double match = 0;         // of knitted cap - knitted armhole: both stretch alike, so it is small
  double swatchForBust = 0; // how wide a swatch would bring the bust within 1 cm
};

// Nothing where the stitches were not counted in a swatch.
[[nodiscard]] std::optional<GaugeEffect>
gaugeEffect(const GarmentDraft& draft, const KnitGarment& knit, const GaugeReport& gauge);

} // namespace scye
