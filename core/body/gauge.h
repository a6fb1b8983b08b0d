// What the design's swatches say together: the gauge in use with its uncertainty, what washing did,
// the gauge of another stitch pattern. Lengths in cm.
#pragma once

#include "body/swatch.h"
#include "model/units.h"

namespace scye {

struct GaugeReport {
  // Pooled over the first swatch and those of the same fabric; nothing where none was counted.
  std::optional<SwatchGauge> across, along;
  std::optional<SwatchGauge> unwashedAcross, unwashedAlong; // as it came off the needles
  std::optional<SwatchGauge> otherAcross, otherAlong;       // another stitch pattern
  std::string otherLabel;
  double gramsPerSquareMetre = 0; // of all swatches that were weighed and washed; 0: none

  // How much longer (+) the fabric got by washing, as shares.
  [[nodiscard]] std::optional<double> washedAcross() const;
  [[nodiscard]] std::optional<double> washedAlong() const;
};

[[nodiscard]] GaugeReport gaugeReport(const Design& design);

// The swatch across the stitches, as pooled; for swatchFindings().
[[nodiscard]] std::vector<SwatchCount> pooledAcross(const Design& design);

} // namespace scye
