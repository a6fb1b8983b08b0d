// Bands that are picked up along an edge, and the cuffs of full sleeves: strips of cloth with their
// own lengths along the edge they are joined to. Used by sewing.cpp alone.
#pragma once

#include "worn/sewing.h"

namespace scye {

// dyn/cm with which the fronts of a jacket are held on the middle line.
inline constexpr double kAtButton = 2e5, kBetweenButtons = 2e4;

// Vertices along which strips begin.
struct Chains {
  std::vector<int> frontClosing; // of the front, upward
  std::vector<int> neck;         // from the front's middle over the shoulder to the back's middle
  std::vector<int> cuff;         // the sleeve's lower edge, from the back seam to the front seam
};

void addStrips(SewnGarment& garment, const Chains& chains);

} // namespace scye
