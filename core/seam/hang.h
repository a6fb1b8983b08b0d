// How a set-in sleeve hangs: the height of its cap over the depth of its armhole. A low cap leaves
// the sleeve standing out from the body, with room to lift the arm; a high one hangs straight down,
// and lifts the body with the arm. Where one kind begins and the other ends is common practice:
// adults' caps lie mostly between 0.6 and 0.75. A gathered or pleated cap hangs by what it would be
// without: of what is drawn in half widens its crown and half lifts it (body/complete.h), and both
// come off.
#pragma once

#include "model/phrases.h"
#include "seam/garment_draft.h"

#include <string_view>

namespace scye {

enum class Hang : std::uint8_t {
  StandsOut,
  Easy,
  Usual,
  Close,
  Straight
}; // from 0.5, 0.6, 0.7, 0.8

struct SleeveHang {
  double share = 0;     // cap height over armhole depth
  bool undrawn = false; // the cap's height without its gathers or pleats
  Hang hang = Hang::Usual;
};

[[nodiscard]] Hang hangOf(double share);
[[nodiscard]] SleeveHang sleeveHang(const GarmentDraft& draft);
[[nodiscard]] std::string_view hangKey(Hang hang); // "standsOut", ...; phrase "hang.<key>"
// "Cap 0.66 of the armhole depth: it hangs as usual ..."
[[nodiscard]] std::string hangText(const SleeveHang& hang, const Phrases& phrases);

} // namespace scye
