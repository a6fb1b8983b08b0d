// One thing measured on a knitted piece, as a person writes it on a command line:
//   measured.back.armhole=24.5   measured.sleeve.stitches=22   measured.back.rows=31
//   measured.armholeBack=24.5    measured.armholeFront=9.8in   measured.sleeve.as=unwashed
// NAME is measured.PIECE.READING (progress/work.h), or one of the two short ones; armholeFront is
// of both fronts of a jacket. Lengths are cm unless they end in "in". An empty value takes it back.
#pragma once

#include "garment/derived.h"

namespace scye {

[[nodiscard]] bool isMeasuredSetting(std::string_view setting);
// Changes the work; or leaves it as it is and returns why, in one line.
[[nodiscard]] std::optional<std::string>
applyMeasured(Work& work, const Derived& derived, std::string_view setting, const Phrases& phrases);

} // namespace scye
