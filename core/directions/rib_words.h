// A row of rib or seed stitch written out: "k2, *p2, k2; repeat from * to end".
#pragma once

#include "directions/words.h"

namespace scye {

// Of a right-side row, or of the wrong-side row after it. Meant where it can be written out.
[[nodiscard]] std::string ribRowText(const Words& words, const RibStitch& rib, const RibEnds& ends,
                                     Stitches stitches, bool rightSide);
// "2x2 rib"; a stitch of the knitter's own by its name.
[[nodiscard]] std::string ribName(const Words& words, const RibStitch& rib);

} // namespace scye
