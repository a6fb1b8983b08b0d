// A swatch is a measurement too: n stitches over L cm, read with an error. From it the size of a
// stitch (or the height of a row) with its standard deviation, carried to finished widths and
// lengths, cm.
//
// Reading error: half a stitch or row in the whole count, in 90 of 100 readings. Why: the count is
// given in whole stitches, so rounding alone leaves up to half a stitch either way (standard
// deviation 0.29); a tape read to the millimetre hardly adds to it (0.30 together, 0.5 at 90 %).
// What it does not hold: that a large piece hangs, or is knitted, otherwise than a swatch.
#pragma once

#include "model/finding.h"

#include <optional>
#include <span>

namespace scye {

inline constexpr double kSwatchSide =
    10; // cm: what a count is taken over where nothing else is said
inline constexpr double kReadingError = 0.5; // stitches or rows: 90 % of readings err less

// One reading of one swatch, in one direction.
struct SwatchCount {
  double count;  // stitches or rows
  double length; // cm
};

// The size of one stitch or row, or of a finished piece.
struct UncertainSize {
  double value = 0, deviation = 0;
  [[nodiscard]] double reach() const; // 90 % lie within value +- reach
  [[nodiscard]] double low() const { return value - reach(); }
  [[nodiscard]] double high() const { return value + reach(); }
};

struct SwatchGauge {
  UncertainSize size; // of one stitch or row
  // Root mean square of the swatches' differences from their common gauge, in reading errors'
  // standard deviations; about 1 when only reading errs, 0 for a single swatch. Above 1 it widens
  // the deviation, for then the swatches themselves differ.
  double disagreement = 0;
  [[nodiscard]] UncertainSize over(double count) const {
    return {count * size.value, count * size.deviation};
  }
};

// Least squares through the origin of counts on lengths, so a long swatch counts more than a short
// one. Nothing without a swatch, or when a count or length is not positive.
[[nodiscard]] std::optional<SwatchGauge> gaugeOf(std::span<const SwatchCount> swatches,
                                                 double readingError = kReadingError);

// The design's own swatch, across and along; nothing where it was not given.
[[nodiscard]] std::optional<SwatchCount> swatchAcross(const Design& design);
[[nodiscard]] std::optional<SwatchCount> swatchAlong(const Design& design);

// How long a single swatch must be for 90 % of readings to bring a finished width within the
// tolerance.
[[nodiscard]] double swatchLengthFor(double finished, double stitchSize, double tolerance = 1,
                                     double readingError = kReadingError);

// How much longer (+) or shorter (-) the fabric got by washing, as a share.
[[nodiscard]] double changeByWashing(const SwatchGauge& before, const SwatchGauge& after);

// "swatch.short": the bust of this finished girth is not certain to 1 cm; says how long a swatch
// would be. "swatch.disagree": the swatches differ by more than their reading (disagreement beyond
// 2).
[[nodiscard]] Findings swatchFindings(std::span<const SwatchCount> across, double finishedBust);

} // namespace scye
