// Side seams of bodice and sleeve: straight runs between the widths that are given (cm).
#pragma once

#include "draft/bodice.h"

namespace scye {

// Rows worked even on either side of the narrowest waist, and below the underarm: common practice.
inline constexpr double kWaistEven = 2.5, kUnderarmEven = 2.5;

[[nodiscard]] double hipBelowWaist(Figure figure); // common practice: 20, 20, 12, 8

// Half a piece's side seam from the cast-on edge to (B, underarm); `share` is the part of the girth
// that the whole piece takes.
[[nodiscard]] Path sideSeam(const Sizes& sizes, const BodiceHeights& at, double share);

struct SleeveBody {
  double halfCuff = 0, halfWidth = 0; // at the edge and at the underarm
  double halfFull = 0;                // above the cuff of a full sleeve; else halfCuff
  double length = 0;                  // edge to underarm
  double cuff = 0;                    // depth of the cuff, worked even
};
// `capHeight` matters where the sleeve is measured from the shoulder tip.
[[nodiscard]] SleeveBody sleeveBody(const Sizes& sizes, double capHeight);
// From (cuff/2, 0) to (W/2, length).
[[nodiscard]] Path sleeveSeam(const Sizes& sizes, const SleeveBody& sleeve);

} // namespace scye
