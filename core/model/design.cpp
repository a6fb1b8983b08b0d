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

bool canTakeOn(Field f, Source where) {
  if (!isMeasurement(f)) return false;
  if (where == Source::Body) return true;
  switch (f) {
  case Field::TipToUnderarm:
  case Field::ScyeGirth:
  case Field::NeckBase:
  case Field::HeadGirth:
  case Field::HandGirth:
    return false;
  default:
    return true;
  }
}

Source whereTaken(const Design& design, Field f) {
  if (design.has(f)) return design.source(f);
  const Source usual = design.option(Choice::TakenOn) == 0 ? Source::Body : Source::Garment;
  return canTakeOn(f, usual) ? usual : Source::Body;
}

Design retaken(const Design& design, Field f, double value, Source where) {
  Design out = design;
  const auto ease = easeOf(f);
  if (ease && design.source(f) != where) out.clear(*ease);
  return out.set(f, value, where);
}

Design takenOn(const Design& design, Source where) {
  Design out = design;
  out.choose(Choice::TakenOn, where == Source::Body ? 0 : 1);
  for (int i = 0; i < kFieldCount; ++i) {
    const Field f = Field(i);
    if (design.has(f) && canTakeOn(f, where) && !check(f, *design.given(f), where))
      out = retaken(out, f, *design.given(f), where);
  }
  return out;
}

double flatShare(Field f, Source where) {
  return where == Source::Garment && isMeasurement(f) && info(f).kind == FieldKind::Girth ? 0.5 : 1;
}

ValueRange rangeOf(Field f, Source where) {
  const double share = flatShare(f, where);
  return {share * info(f).low, share * info(f).high};
}

std::optional<Refusal> check(Field f, double value, Source where) {
  const FieldInfo& i = info(f);
  const ValueRange range = rangeOf(f, where);
  if (!std::isfinite(value)) return Refusal::NotANumber;
  if (value < range.low) return Refusal::TooSmall;
  if (value > range.high) return Refusal::TooLarge;
  // Swatch counts may be quarters; all other counts are whole.
  const double grain = i.group == FieldGroup::Swatch ? 4 : 1;
  if (i.kind == FieldKind::Count && value * grain != std::floor(value * grain))
    return Refusal::NotWhole;
  return std::nullopt;
}

} // namespace scye
