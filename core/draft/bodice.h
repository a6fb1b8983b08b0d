// Back and front(s) as continuous outlines, from completed sizes. Heights (cm from the cast-on edge):
// underarm = hem to underarm; shoulder tip = underarm + armhole depth; neck point = tip + shoulder drop;
// nape = neck point - back neck drop; waist = nape - back waist length.
#pragma once

#include "draft/armhole.h"
#include "draft/piece.h"
#include "model/sizes.h"

namespace scye {

inline constexpr double kLeastBody = 1; // cm below the underarm; less is drawn so, and blocks

struct BodiceHeights {
  double hem = 0;      // top of the rib or hem
  double hip = 0;      // may lie below the cast-on edge
  double waist = 0;    // may lie below the cast-on edge
  double underarm = 0, tip = 0, neckPoint = 0, nape = 0;
  double frontNeck = 0; // lowest point of the knitted front neck
};

struct Bodice {
  BodiceHeights at;
  ArmholeShape back, front;
  double halfNeck = 0;      // knitted: half the finished width and one band
  double openingX = 0;      // jacket: x of the front edge of the left front's seam line (0: pullover)
  double bandInner = 0;     // jacket: x where neck and V start
  double neckEdge = 0;      // length of the finished neck edge, inside the band, front and back
  double hemGirth = 0;      // finished girth at the cast-on edge
  // Half pieces, x >= 0: cast-on (from the centre or front edge), side, underarm, armhole, shoulder, neck
  // and, for a jacket front, its opening.
  std::vector<PieceEdge> backHalf, frontHalf;
};

[[nodiscard]] ArmholeShape backArmhole(const Sizes& sizes);
[[nodiscard]] ArmholeShape frontArmhole(const Sizes& sizes);
[[nodiscard]] Bodice draftBodice(const Design& design, const Sizes& sizes);
// One piece back, and one front (pullover) or two (jacket).
[[nodiscard]] std::vector<Piece> bodicePieces(const Design& design, const Bodice& bodice);

} // namespace scye
