// The half cap with the two arms that shape its curve: the lower fullness leaves the underarm
// bind-off, the upper one arrives at the crown. Drawn true to size (cm) from the drafted back half;
// x from the sleeve's centre line, y up from the underarm line. The arm whose value is in hand is
// lit.
#pragma once

#include "model/phrases.h"
#include "schematic/schematic.h"

namespace scye {

// One group, "capShape". Of the options: unit, text height and `lit` are used.
[[nodiscard]] Picture capShapePicture(const GarmentDraft& draft, const Phrases& phrases,
                                      const SchematicOptions& options);

} // namespace scye
