#include "model/sizes.h"

namespace scye {

double Sizes::finished(Field m) const {
  const double value = (*this)[m];
  if (fromGarment(m)) return info(m).kind == FieldKind::Girth ? 2 * value : value;
  if (const auto ease = easeOf(m)) return value + (*this)[*ease];
  // Depth ease lowers the underarm line; it is taken off below so that hem and wrist stay in place.
  if ((m == Field::HemToUnderarm || m == Field::SleeveToUnderarm) &&
      !fromGarment(Field::ArmholeDepth))
    return value - (*this)[Field::EaseArmholeDepth];
  return value;
}

double Sizes::body(Field m) const {
  if (!fromGarment(m)) return (*this)[m];
  const auto ease = easeOf(m);
  return finished(m) - (ease ? (*this)[*ease] : 0);
}

Design withFinished(const Design& design, const Sizes& sizes, Field m, double value) {
  Design next = design;
  const double more = value - sizes.finished(m);
  const bool garment = sizes.fromGarment(m);
  if (const auto ease = easeOf(m); ease && !garment) return next.set(*ease, sizes[*ease] + more);
  const double share = garment && info(m).kind == FieldKind::Girth ? 0.5 : 1;
  return next.set(m, sizes[m] + share * more, garment ? Source::Garment : Source::Body);
}

Design withSource(const Design& design, const Sizes& sizes, Field m, Source source) {
  Design next = design;
  if (source == Source::Body) return next.set(m, sizes.body(m), source);
  const double flat = info(m).kind == FieldKind::Girth ? 0.5 : 1;
  return next.set(m, flat * sizes.finished(m), source);
}

Field workedField(WorkedOut unknown) {
  switch (unknown) {
  case WorkedOut::UpperArmEase:
    return Field::EaseUpperArm;
  case WorkedOut::ArmholeDepth:
    return Field::ArmholeDepth;
  case WorkedOut::CrownWidth:
    return Field::CrownWidth;
  case WorkedOut::CapEase:
    return Field::CapEase;
  case WorkedOut::CapHeight:
    break;
  }
  return Field::CapHeight;
}

} // namespace scye
