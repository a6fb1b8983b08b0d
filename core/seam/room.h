// Room in the armhole: how much longer its drafted edge is than the girth that goes round the body
// there (over the shoulder tip, through the armpit), cm. The girth measured, or estimated with the
// range that 90 of 100 such bodies lie in.
#pragma once

#include "seam/garment_draft.h"

namespace scye {

struct ArmholeRoom {
  double edge = 0, girth = 0;
  double low = 0, high = 0; // of the room; where the girth was measured both are value()
  [[nodiscard]] double value() const { return edge - girth; }
  bool measured = false;
};

[[nodiscard]] ArmholeRoom armholeRoom(const GarmentDraft& draft);
// In words, beside the comparison.
[[nodiscard]] std::string roomText(const ArmholeRoom& room, const Phrases& phrases,
                                   LengthUnit unit);

} // namespace scye
