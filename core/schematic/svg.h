// A sheet as an SVG to be opened and edited elsewhere: millimetres, true size, a group with id
// and title for each piece, letters as letters. Coordinates are written to a thousandth of a
// millimetre.
#pragma once

#include "schematic/sheet.h"

#include <string>

namespace scye {

[[nodiscard]] std::string sheetAsSvg(const Sheet& sheet);
// On a sheet as large as it is.
[[nodiscard]] std::string pictureAsSvg(const Picture& picture);

} // namespace scye
