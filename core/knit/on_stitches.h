// The garment's curves as they are knitted against: armholes on the whole stitches of width and
// underarm bind-off, the cap solved again for the whole stitches of sleeve and underarm and for the
// armhole as it is knitted, with the crown as wanted. That is what is drawn, pinned and compared
// once stitches are known, so that the shape that is seen is the shape that is knitted. Everything
// else is as drafted; side and sleeve seams are drawn out to the new corners. cm.
#pragma once

#include "knit/knit_garment.h"

namespace scye {

// The draft itself where no gauge can be used; its own cap where none is knitted. Cost: 20 us.
[[nodiscard]] GarmentDraft onStitches(const GarmentDraft& draft, const KnitGarment& knitted);

} // namespace scye
