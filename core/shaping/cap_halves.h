// The search behind cap_shaping.h at one width of the sleeve: where a cap may end, and for a cap
// with two different halves the pairs of schedules that make one seam.
#pragma once

#include "shaping/cap_shaping.h"
#include "shaping/cost.h"

namespace scye {

struct CapWidth {
  Stitches width{0};
  double price = 0;
  CapShape front, back; // reference, cm
  double height = 0;
  double target = 0; // cm, of the whole edge by the mean
};

struct CapLook {
  double limit; // stitches off the curve
  int widened;  // times as wide and as many bind-offs as the style has them
  double rows;  // from the reference's height
  double crown; // stitches from the wanted crown
};

// Replaces `best` and returns true where a cheaper cap is found; counts best.work.
bool searchWidth(const CapRequest& request, const CapWidth& width, const CapLook& look,
                 CapShaping& best);

} // namespace scye
