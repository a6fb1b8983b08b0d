#include "worn/worn_beside.h"

#include "draft/complete.h"
#include "panels/panel_context.h"
#include "worn/worn_words.h"

#include <algorithm>
#include <cmath>

namespace scye {

std::optional<Design> withOtherValue(const Design& design, Field field, bool more) {
  if (isWorkedOut(design, field)) return std::nullopt;
  const Source where = whereTaken(design, field);
  const ValueRange range = rangeOf(field, where);
  const double now = shownIn(design, complete(design), field);
  const double step = 0.5 * flatShare(field, where) * info(field).span;
  double other = std::clamp(now + (more ? step : -step), range.low, range.high);
  if (info(field).kind == FieldKind::Count) other = std::round(other);
  if (std::abs(other - now) < 0.1 * step || check(field, other, where)) return std::nullopt;
  return Design(design).set(field, other, where);
}

std::optional<Design> besideDesign(const Design& design, ShownBeside beside,
                                   std::optional<Field> inHand) {
  switch (beside) {
  case ShownBeside::LowerCap:
  case ShownBeside::HigherCap: {
    Design other = withUsualCap(design);
    other.choose(Choice::CapRise,
                 beside == ShownBeside::LowerCap ? CapRise::Shallow : CapRise::High);
    return other;
  }
  case ShownBeside::Less:
  case ShownBeside::More:
    return inHand ? withOtherValue(design, *inHand, beside == ShownBeside::More) : std::nullopt;
  case ShownBeside::Nothing:
  case ShownBeside::BeforeChange:
    break;
  }
  return std::nullopt;
}

} // namespace scye
