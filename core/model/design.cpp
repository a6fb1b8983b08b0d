#include "model/design.h"

#include <cmath>

namespace scye {

Design& Design::set(Field f, double value, Source source) {
  values_[std::size_t(f)] = value;
  sources_[std::size_t(f)] = isMeasurement(f) ? source : Source::Body;
  return *this;
}

Design& Design::clear(Field f) {
  values_[std::size_t(f)].reset();
  sources_[std::size_t(f)] = Source::Body;
  return *this;
}

Design& Design::choose(Choice c, int option) {
  if (option >= 0 && option < int(info(c).options.size())) options_[std::size_t(c)] = option;
  return *this;
}

std::optional<Refusal> check(Field f, double value) {
  const FieldInfo& i = info(f);
  if (!std::isfinite(value)) return Refusal::NotANumber;
  if (value < i.low) return Refusal::TooSmall;
  if (value > i.high) return Refusal::TooLarge;
  // Swatch counts may be quarters; all other counts are whole.
  const double grain = i.group == FieldGroup::Swatch ? 4 : 1;
  if (i.kind == FieldKind::Count && value * grain != std::floor(value * grain))
    return Refusal::NotWhole;
  return std::nullopt;
}

} // namespace scye
