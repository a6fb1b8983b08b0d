// Back and front(s) as continuous outlines, from completed sizes. Heights (cm from the cast-on
// edge): underarm = facing + hem to underarm; shoulder tip = underarm + armhole depth; neck point =
// tip + shoulder drop; nape = neck point - back neck drop; waist = nape - back waist length, or
// where it was set. Bust short rows open a wedge in the front's side seams: the middle grows, the
// seams stay as long as the back's, and what lies above stands higher in the front by the wedge's
// depth.
#pragma once

#include "draft/armhole.h"
#include "draft/piece.h"
#include "model/sizes.h"

namespace scye {

inline constexpr double kLeastBody = 1; // cm below the underarm; less is drawn so, and blocks

inline constexpr double kBustBelowUnderarm =
    2.5; // cm from the underarm to the wedge (common practice: 2.5-5)

struct BodiceHeights {
  double fold = 0;  // the finished lower edge: above the cast-on where there is a facing
  double hem = 0;   // top of the rib or facing
  double hip = 0;   // may lie below the cast-on edge
  double waist = 0; // may lie below the cast-on edge
  double underarm = 0, tip = 0, neckPoint = 0, nape = 0;
  double neckLow = 0; // lowest point of the piece's knitted neck
};

// The wedge of the bust short rows, at each side seam of the front. Depth 0: there is none.
struct BustWedge {
  double low = 0;   // y of its lower line at the side seam
  double depth = 0; // at the side seam
  double reach = 0; // how far in its point lies
};

struct Bodice {
  BodiceHeights at;      // of the back
  BodiceHeights frontAt; // of the front
  BustWedge bust;
  ArmholeShape back, front;
  double halfNeck = 0;  // knitted: half the finished width and one band
  double openingX = 0;  // jacket: x of the front edge of the left front's seam line (0: pullover)
  double bandInner = 0; // jacket: x where neck and V start
  double neckEdge = 0;  // length of the finished neck edge, inside the band, front and back
  double hemGirth = 0;  // finished girth at the cast-on edge
  Path backSide, frontSide; // side seams, the front's as if it had no wedge
  // Half pieces, x >= 0: cast-on (from the centre or front edge), side, underarm, armhole,
  // shoulder, neck and, for a jacket front, its opening.
  std::vector<PieceEdge> backHalf, frontHalf;
};

[[nodiscard]] ArmholeShape backArmhole(const Sizes& sizes);
[[nodiscard]] ArmholeShape frontArmhole(const Sizes& sizes);
[[nodiscard]] Bodice draftBodice(const Sizes& sizes);
// One piece back, and one front (pullover) or two (jacket).
[[nodiscard]] std::vector<Piece> bodicePieces(const GarmentStyle& style, const Bodice& bodice);

} // namespace scye
