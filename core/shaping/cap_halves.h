// The search behind cap_shaping.h at one width of the sleeve: where a cap may end, and for a cap
// with two different halves the pairs of schedules that make one seam.
#pragma once

#include "shaping/cap_shaping.h"
#include "shaping/cost.h"
#include "shaping/run_search.h"

#include <memory>
#include <vector>

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

// The kinds of caps and the lengths of their pieces, which all caps of one gauge have in common.
class CapPieces {
public:
  // Valid as long as this is.
  [[nodiscard]] const EdgePieces& of(const ShapingStyle& style, const StitchSize& size,
                                     int sparsest, bool underarm);

private:
  struct Kept {
    ShapingStyle style;
    int sparsest;
    bool underarm;
    EdgePieces pieces;
  };
  std::vector<std::unique_ptr<Kept>> kept_;
};

// Replaces `best` and returns true where a cheaper cap is found; counts best.work.
bool searchWidth(const CapRequest& request, const CapWidth& width, const CapLook& look,
                 CapPieces& shelf, CapShaping& best);

} // namespace scye
