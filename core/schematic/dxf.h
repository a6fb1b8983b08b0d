// A picture as DXF, to be taken into drawing, cutting and plotting programs: ASCII, release 12
// (AC1009), as Autodesk's "DXF Reference" for that release describes it: header, layer table,
// polylines, texts. Millimetres at true size, y up. Curves become polylines that leave them by at
// most kDxfTolerance. Layers OUTLINE (the fabric's edge), SEAM, NOTCHES, TEXT, LINES (guides and
// dimensions).
#pragma once

#include "schematic/picture.h"

#include <string>

namespace scye {

inline constexpr double kDxfTolerance = 0.01; // mm

[[nodiscard]] std::string pictureAsDxf(const Picture& picture);

} // namespace scye
