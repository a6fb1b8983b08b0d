// What the garment worn may be shown beside: itself with another cap, with less or more of the
// value in hand, or as it was before the last change.
#pragma once

#include "document/attention.h"

namespace scye {

enum class ShownBeside : int { Nothing, LowerCap, HigherCap, Less, More, BeforeChange };

// The design with a clearly lower or higher value of the field: half of what its slider shows to
// either side. Nothing where the value is worked out from others, or can go no further that way.
[[nodiscard]] std::optional<Design> withOtherValue(const Design& design, Field field, bool more);

// The design to be shown beside; nothing where there is none, or it is no matter of the design.
[[nodiscard]] std::optional<Design> besideDesign(const Design& design, ShownBeside beside,
                                                 std::optional<Field> inHand);

} // namespace scye
