// Half a neckline (x >= 0, cm), from the neck point down to the centre line or to the band's inner
// edge.
#pragma once

#include "curve/path.h"
#include "model/field.h"

namespace scye {

struct NeckHalf {
  double from = 0;      // x where it starts below: 0, or the inner edge of a jacket's band
  double halfWidth = 0; // x of the neck point
  double low = 0;       // y of the lowest point
  double high = 0;      // y of the neck point
};

// Round and high: flat, a quarter of an oval, straight up; V: straight; square: across and up;
// boat: a long shallow curve. A neckline that has no width or no depth is drawn as the line between
// its ends.
[[nodiscard]] Path frontNeck(Neckline shape, const NeckHalf& n);
// Flat over the middle, rising to the neck point over the last third.
[[nodiscard]] Path backNeck(const NeckHalf& n);

} // namespace scye
