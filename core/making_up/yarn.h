// How much yarn a garment takes, from its pieces as they are knitted: the stitches of every row,
// with what bands and seams take besides.
//
// With a weighed swatch: the area of all stitches times the weight of a square centimetre of the
// swatch (designers' published rule). Stitches of a rib take a tenth more, the yarn going to and
// fro between knit and purl (common practice). Without one: a length of yarn for each stitch, 3.6
// to 4.3 times as long as the stitch is wide (Munden's measurements of plain knitting from its dry
// to its fully relaxed state, from memory), as a range; its weight by the label, or by the
// published yarn classes (body/yarn_classes.h), so wide that it is marked. Seams: three times their
// length (common practice), and for ends a fiftieth of all.
#pragma once

#include "making_up/making_up.h"

#include <optional>

namespace scye {

struct YarnRange {
  double low = 0, high = 0;
  [[nodiscard]] bool any() const { return high > 0; }
};

struct YarnNeed {
  bool weighed = false;    // a swatch was weighed: low and high are one
  double area = 0;         // cm², every stitch as large as in the swatch, a rib's a tenth more
  double stitches = 0;     // in all, ribs likewise
  YarnRange grams, metres; // without reserve; metres 0 where nothing tells them
  double reserve = 0;      // share
  int balls = 0;           // with the reserve, of `ballWeight`; 0: the label does not say
  double ballWeight = 0, ballLength = 0;
  int yarnClass = -1; // by which it is ranged; -1: by none
};

// All zero where nothing can be knitted.
[[nodiscard]] YarnNeed yarnNeed(const GarmentDraft& draft, const KnitGarment& garment,
                                const MakingUp& makingUp);

// Rows of a picked-up band after those that it is picked up in; one at least.
[[nodiscard]] int bandRows(double width, double rowHeight);

} // namespace scye
