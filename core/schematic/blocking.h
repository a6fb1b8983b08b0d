// The blocking template of a piece: what is pinned out, at its true size. The fabric's edge as it
// is knitted, selvedges included, in stairs; the seam line within it, as curves on whole stitches;
// hem and underarm; the pins of the armhole seam with their numbers; its largest measures.
#pragma once

#include "knit/knit_garment.h"
#include "model/phrases.h"
#include "schematic/picture.h"

namespace scye {

// `textHeight`: cm. A group, with the piece's id. Empty for a piece that is not knitted.
[[nodiscard]] Picture blockingTemplate(const GarmentDraft& draft, const KnitGarment& knitted,
                                       PieceId piece, double textHeight, const Phrases& phrases,
                                       LengthUnit unit);

} // namespace scye
