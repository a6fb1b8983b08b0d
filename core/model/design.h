// The one input of the whole chain: what the knitter has said. A plain value with equality. A field
// that was not touched is absent here and is filled in afresh by body/complete.h each time; so a
// filled value follows the others until it is set.
#pragma once

#include "model/field.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace scye {

// Where a measurement was taken. On a garment, girths are flat widths (half girths) and hold their
// ease.
enum class Source : std::uint8_t { Body, Garment };

template <>
struct OptionsOf<Source> : OfChoice<Choice::TakenOn> {};

// A further swatch beside the one in the swatch fields.
struct SwatchReading {
  enum class Use : std::uint8_t {
    Same,          // the same fabric again: pooled with the first
    BeforeWashing, // the first one as it came off the needles
    OtherPattern,  // another stitch pattern, the rib say
  };
  std::string label;
  Use use = Use::Same;
  double stitches = 0, width = 10; // counted over cm; 0: not counted
  double rows = 0, height = 10;
  double weight = 0; // g; 0: not weighed
  bool operator==(const SwatchReading&) const = default;
};

class Design {
public:
  std::string title, wearer, notes;
  std::string ribName;    // the name of the stitch of the edges, where it is an own one
  std::string measuredOn; // ISO date on which the wearer's measurements were kept; empty: not kept
  std::vector<SwatchReading> swatches;

  [[nodiscard]] std::optional<double> given(Field f) const { return values_[std::size_t(f)]; }
  [[nodiscard]] bool has(Field f) const { return given(f).has_value(); }
  [[nodiscard]] Source source(Field f) const { return sources_[std::size_t(f)]; }
  // Sets a value as typed. The caller has checked it (see check()); it is kept as it is.
  Design& set(Field f, double value, Source source = Source::Body);
  Design& clear(Field f);

  [[nodiscard]] int option(Choice c) const { return options_[std::size_t(c)]; }
  Design& choose(Choice c, int option);
  // A choice as its own type: as<Neckline>().
  template <class E>
  [[nodiscard]] E as() const {
    return E(option(OptionsOf<E>::kChoice));
  }
  [[nodiscard]] bool yes(Choice c) const { return option(c) == int(YesNo::Yes); }
  template <class E>
  Design& choose(Choice c, E option) {
    return choose(c, int(option));
  }

  bool operator==(const Design&) const = default;

private:
  std::array<std::optional<double>, kFieldCount> values_{};
  std::array<Source, kFieldCount> sources_{};
  std::array<int, kChoiceCount> options_{};
};

// False for what a flat garment does not show, and for what is no measurement.
[[nodiscard]] bool canTakeOn(Field measurement, Source where);
// Where a measurement was taken, or would be if it were set now: Choice::TakenOn.
[[nodiscard]] Source whereTaken(const Design& design, Field measurement);
// The design with everything that can be taken there taken there; what was typed stays as typed. A
// value that cannot stand there keeps its place.
[[nodiscard]] Design takenOn(const Design& design, Source where);

// A girth of a garment laid flat is half of it; everything else is whole.
[[nodiscard]] double flatShare(Field f, Source where);
// What may stand in a field: half of it for a flat girth.
struct ValueRange {
  double low, high;
};
[[nodiscard]] ValueRange rangeOf(Field f, Source where = Source::Body);
// Why a value cannot stand in a field, or nothing: outside its range, not finite, not whole.
enum class Refusal : std::uint8_t { NotANumber, TooSmall, TooLarge, NotWhole };
[[nodiscard]] std::optional<Refusal> check(Field f, double value, Source where = Source::Body);

// A measurement told as taken elsewhere than before: an ease that was set beside it meant another
// thing where it was taken before, and goes.
[[nodiscard]] Design retaken(const Design& design, Field measurement, double value, Source where);

} // namespace scye
