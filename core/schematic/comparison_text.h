// The comparison of cap and armhole in words: beside its pictures, and in their place for who
// cannot see them.
#pragma once

#include "schematic/schematic.h"
#include "seam/walk.h"

#include <string>

namespace scye {

// "armhole 26.0, cap 26.5, +0.5": tenths of a centimetre, or inches to the nearest quarter. With
// options.curves as they are knitted, on the wearer's right, else as they are drawn.
[[nodiscard]] std::string sideCaption(const SeamWalk& walk, ArmholeHalf side,
                                      const SchematicOptions& options, const Phrases& phrases);
// "back: 0.5 cm to ease in, all above mark 2; front: ..."
[[nodiscard]] std::string comparisonText(const GarmentDraft& draft, const Phrases& phrases,
                                         LengthUnit unit);

// How the ease of one side is to be read: it can be let in, or the cap is too long or too short.
enum class SideFit : std::uint8_t { LetIn, TooLong, TooShort };
[[nodiscard]] SideFit sideFit(const GarmentDraft& draft, const SeamWalk& walk);

} // namespace scye
