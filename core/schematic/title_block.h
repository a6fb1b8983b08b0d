// The title block at the foot of a sheet: a ruled line of cells that tell what it is, whose, at
// which gauge and scale, and when. Letters are 6 points and more.
#pragma once

#include "model/phrases.h"
#include "schematic/paper.h"

namespace scye {

inline constexpr double kTitleBlockMm = 9; // high, above the sheet's lower margin

// In cm of paper from the lower left of a sheet of `size` mm. What is empty is left out.
[[nodiscard]] Group titleBlock(const Vec2& size, const TitleBlock& of, const std::string& picture,
                               const std::string& scale, const Phrases& phrases);

} // namespace scye
