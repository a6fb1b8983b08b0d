// A picture as an SVG to be opened and edited elsewhere: millimetres, true size, a group with id
// and title for each piece, letters as letters. Coordinates are written to a thousandth of a
// millimetre.
#pragma once

#include "schematic/picture.h"

#include <QByteArray>

namespace scye {

[[nodiscard]] QByteArray pictureAsSvg(const Picture& picture);

} // namespace scye
