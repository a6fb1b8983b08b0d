// A completed design: every field has a value, and says where it came from; every choice is typed.
#pragma once

#include "model/garment_style.h"
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

// Where 90 of 100 bodies with the given measurements lie, cm (1988 survey, women and men).
struct Likely {
  double low = 0, high = 0;
};

struct Sizes {
  GarmentStyle style;
  std::array<double, kFieldCount> values{};
  std::array<Origin, kFieldCount> origins{};
  std::string
      tableSize; // the published size nearest in bust, e.g. "M"; empty when nothing was filled
  std::array<std::optional<Likely>, kFieldCount> likely{}; // of measurements that were not taken
  bool beyondSurvey = false; // the body is unlike any the survey measured
  // What ease a measurement starts with: a garment's measurement is taken to hold so much already.
  std::array<double, kFieldCount> usualEase{};
  double shoulderSeam = 0; // of the garment, from the neckband to the tip
  double neckAsked = 0;    // the neck width that a body's shoulder length alone would give
  StitchSize stitch;       // from the swatches

  [[nodiscard]] double operator[](Field f) const { return values[std::size_t(f)]; }
  [[nodiscard]] Origin origin(Field f) const { return origins[std::size_t(f)]; }
  [[nodiscard]] bool fromGarment(Field f) const { return origin(f) == Origin::GivenGarment; }
  // What the garment is to measure there: the measurement with its ease, or the garment that was
  // measured with the change to it. A full girth for girths. The armhole's depth hangs from the
  // garment's shoulder tip: of a body's it is that + back neck drop - shoulder drop.
  [[nodiscard]] double finished(Field measurement) const;
  // The body inside, as it would be measured: the measurement, or for one taken on a garment that
  // garment's size less the usual ease.
  [[nodiscard]] double body(Field measurement) const;
};

// As the measurement is taken on the body, or flat on the finished garment (half a girth).
[[nodiscard]] double asTaken(const Sizes& sizes, Field measurement, Source where);

// The design in which the finished measurement is `value`: its ease is changed, or where it has
// none the measurement itself.
[[nodiscard]] Design withFinished(const Design& design, const Sizes& sizes, Field measurement,
                                  double value);
// The measurement told as taken on the body, or flat on a garment: what was typed stays as typed;
// one that was filled in, or that cannot stand so, is told as it is taken there.
[[nodiscard]] Design withSource(const Design& design, const Sizes& sizes, Field measurement,
                                Source source);
// The field that is worked out instead of being set.
[[nodiscard]] Field workedField(WorkedOut unknown);

} // namespace scye
