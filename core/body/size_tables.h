// Published body sizes: Craft Yarn Council, Standards and Guidelines, body measurement tables
// (woman XS-5X, man S-5X, child 2-10 with youth 12-16, baby), midpoints of the printed ranges. The
// tables have no neck and no wrist; men's "back length" is a hip length and is left out. Cross back
// is printed from shoulder to shoulder and stands for our cross-shoulder.
#pragma once

#include "model/field.h"

#include <span>
#include <string_view>

namespace scye {

// In publishedSizes() inches; in sizeAtBust() centimetres. 0: not printed.
struct TableSize {
  std::string_view name;
  double bust = 0, waist = 0, hip = 0, crossBack = 0, backLength = 0, armToUnderarm = 0,
         upperArm = 0, armholeDepth = 0;
};

[[nodiscard]] std::span<const TableSize> publishedSizes(Figure figure);

// Linear in bust between the printed sizes, the last step going on beyond them; named by the
// nearest.
[[nodiscard]] TableSize sizeAtBust(Figure figure, double bustCm);

} // namespace scye
