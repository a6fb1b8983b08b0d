// The notches of seam/walk.h where they lie on the drafted pieces: on a back or front along its
// armholes, on a sleeve along both halves of its cap. A notch has the same number on both pieces;
// back and front are numbered each for itself, from the end of the underarm bind-off (1) up. The
// shoulder has no number: the seam itself marks it.
#pragma once

#include "seam/walk.h"

#include <vector>

namespace scye {

struct PieceNotch {
  int number = 0;
  Vec2 at = Vec2::Zero();     // in the piece's coordinates
  Vec2 inward = Vec2::Zero(); // unit, square to the edge, into the fabric
};

// Cost: about 20 us a side.
[[nodiscard]] std::vector<PieceNotch> pieceNotches(const GarmentDraft& draft, PieceId piece);

} // namespace scye
