// Where a picture lies on a page, and at which scale.
#pragma once

#include "schematic/paper.h"

#include <QPointF>
#include <QSizeF>

class QPainter;

namespace scye {

struct Page {
  Picture picture;
  QSizeF size;      // mm
  double oneTo = 1; // scale 1 : oneTo
  bool footer = false, scaleTold = true;
  QPointF corner; // mm from the page's upper left to the upper left of the picture's box
};

[[nodiscard]] Page truePage(const PictureMaker& make);
// The page upright or across, whichever shows the picture larger; `mayTurn` lets it turn.
// Not `toScale`: as large as it fits, up to its true size.
[[nodiscard]] Page fittedPage(const PictureMaker& make, QSizeF size, bool mayTurn,
                              bool toScale = true);
[[nodiscard]] Page pageFor(const PictureMaker& make, const ExportOptions& options);

// `unitsPerMm`: painter units to a millimetre of paper.
void paintPage(QPainter& painter, const Page& page, double unitsPerMm);

} // namespace scye
