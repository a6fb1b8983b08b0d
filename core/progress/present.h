// The garment as it is really being knitted: the design's own pieces, and in place of those that
// have a plan of their own that plan, with its real fabric. Everything that is told, drawn, pinned
// or counted is made of it.
#pragma once

#include "body/gauge.h"
#include "progress/work.h"

namespace scye {

// The stitch of a piece: counted in it, blocked; else as the others that were counted have come
// out; else the swatch's. `counted`: in which directions it was counted in the piece itself.
struct PieceFabric {
  StitchSize size;
  bool stitchesCounted = false, rowsCounted = false; // in this piece
  bool known = false;                                // in any piece
};
[[nodiscard]] PieceFabric fabricOf(const Work& work, PieceId piece, const GarmentDraft& draft);

// A length measured on a piece as it will be when it is washed and blocked; `across`: in the
// direction of a row. Of what was measured unwashed by what washing did to the swatch, as far as
// that is known.
[[nodiscard]] double blocked(double cm, MeasuredAs as, bool across, const GaugeReport& gauge);

// One armhole edge of a piece: its rows in their real fabric, or as long as it was measured.
// `edge`: as the piece is seen from its right side.
[[nodiscard]] EdgeLength realArmhole(const KnitPiece& piece, EdgeSide edge, const Work& work,
                                     const GarmentDraft& draft);
// The size of a stitch with which its rows come to that length.
[[nodiscard]] StitchSize realArmholeStitch(const KnitPiece& piece, const Work& work,
                                           const GarmentDraft& draft);
// One edge of a sleeve cap, likewise; `selvedge` stitches at each end of the crown do not count.
[[nodiscard]] EdgeLength realCap(const KnitPiece& sleeve, EdgeSide edge, const StitchSize& size,
                                 Stitches selvedge);

// The shaping along an armhole or a cap as it stands in a piece's rows.
[[nodiscard]] Schedule scheduleIn(const KnitPiece& piece, EdgeSide edge);

// `design`: what the design alone asks for.
[[nodiscard]] KnitGarment presentGarment(const GarmentDraft& draft, KnitGarment design,
                                         const Work& work);

} // namespace scye
