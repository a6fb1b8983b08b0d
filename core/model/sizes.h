// A completed design: every field has a value, and says where it came from.
#pragma once

#include "model/design.h"
#include "model/units.h"

#include <array>
#include <optional>

namespace scye {

enum class Origin : std::uint8_t {
  GivenBody,    // measured on the body
  GivenGarment, // measured on a garment that fits
  Set,          // set by the knitter (ease, style)
  Table,        // interpolated in a published size table
  Estimate,     // estimated from the other measurements (survey)
  Rule,         // a starting value, common practice
};

// Where 90 of 100 bodies with the measurements she has given lie, cm (1988 survey, women and men).
struct Likely {
  double low = 0, high = 0;
};

struct Sizes {
  std::array<double, kFieldCount> values{};
  std::array<Origin, kFieldCount> origins{};
  std::string
      tableSize; // the published size nearest in bust, e.g. "M"; empty when nothing was filled
  std::array<std::optional<Likely>, kFieldCount> likely{}; // of measurements that were not taken
  bool beyondSurvey = false; // her body is unlike any the survey measured
  StitchSize stitch;         // from the swatches

  [[nodiscard]] double operator[](Field f) const { return values[std::size_t(f)]; }
  [[nodiscard]] Origin origin(Field f) const { return origins[std::size_t(f)]; }
  [[nodiscard]] bool fromGarment(Field f) const { return origin(f) == Origin::GivenGarment; }
  // The measurement with its ease: what the garment is to measure there (a full girth for girths).
  [[nodiscard]] double finished(Field measurement) const;
  // The body inside: the measurement, or for one taken on a garment the finished size less its
  // ease.
  [[nodiscard]] double body(Field measurement) const;
};

// The design in which the finished measurement is `value`: its ease is changed, or the measurement
// itself where it has no ease or was taken on a garment, which holds its ease already.
[[nodiscard]] Design withFinished(const Design& design, const Sizes& sizes, Field measurement,
                                  double value);
// The same garment with the measurement told as taken on the body, or flat on a garment.
[[nodiscard]] Design withSource(const Design& design, const Sizes& sizes, Field measurement,
                                Source source);
// The field that is worked out instead of being set.
[[nodiscard]] Field workedField(WorkedOut unknown);

} // namespace scye
