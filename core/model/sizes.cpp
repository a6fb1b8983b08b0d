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

} // namespace scye
