// How a set-in sleeve hangs: the height of its cap over the depth of its armhole. A low cap leaves the
// sleeve standing out from the body, with room to lift the arm; a high one hangs straight down, and lifts
// the body with the arm. Where one kind begins and the other ends is common practice: adults' caps lie
// mostly between 0.6 and 0.75.
#pragma once

#include "seam/garment_draft.h"

#include <string_view>

namespace scye {

enum class Hang : std::uint8_t { StandsOut, Easy, Usual, Close, Straight }; // from 0.5, 0.6, 0.7, 0.8

struct SleeveHang {
  double share = 0; // cap height over armhole depth
  Hang hang = Hang::Usual;
};

[[nodiscard]] Hang hangOf(double share);
[[nodiscard]] SleeveHang sleeveHang(const GarmentDraft& draft);
[[nodiscard]] std::string_view hangKey(Hang hang); // "standsOut", ...; phrase "hang.<key>"

} // namespace scye
