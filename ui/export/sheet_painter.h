// A sheet of paper (schematic/sheet.h) painted.
#pragma once

#include "schematic/sheet.h"

class QPainter;

namespace scye {

// `unitsPerMm`: painter units to a millimetre of paper.
void paintSheet(QPainter& painter, const Sheet& sheet, double unitsPerMm);

} // namespace scye
