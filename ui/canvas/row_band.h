// Rows lit on the pieces: a band across the piece from the foot of the first row to the top of the
// last, with a pointer at either end, so that a single row is found from far away and nothing is
// told by colour alone.
#pragma once

#include "document/attention.h"
#include "knit/knit_garment.h"
#include "paint/picture_painter.h"

namespace scye {

// In the piece's own cm; empty where the piece has no such rows.
[[nodiscard]] Box rowBand(const KnitPiece& piece, const StitchSize& size, const PieceRows& rows);

// Over a picture of the pieces. A left sleeve that is not drawn is shown on the sleeve, whose
// mirror image it is.
void paintRowBand(QPainter& painter, const Picture& picture, const KnitGarment& knit,
                  const PieceRows& rows, const PictureColours& colours, const PictureView& view);

} // namespace scye
