// A knitted piece laid over its draft: the stairs of its row table in cm, moved from the edges of
// the fabric to the seam lines, so that both can be compared where they are sewn.
//   x: a sewn edge lies its selvedge stitches further in than the fabric ends; a neck, and a front
//   edge
//      that is picked up, its pick-up stitch; a front band that is knitted on, and a slit, nothing.
//      Where that leaves less than nothing (the last stitches of a shoulder) the sides meet in the
//      middle. Where short rows are turned over the bust nothing is sewn, and the stitches as they
//      are bound the notch that the turns leave; it closes when the piece is worked.
//   y: row r reaches from (r - 1) to r row heights; a change worked in row r shows at the foot of
//   it, a
//      bind-off as the flat step it is. A shoulder by short rows has the steps of its turns; the
//      row over all of them is drawn on the highest only. Cast-on and centre line are those of the
//      draft.
// Exact to rounding, given that the lattice counted the same edges (knit/lattice.h).
#pragma once

#include "curve/path.h"
#include "knit/knit_garment.h"

namespace scye {

struct EdgeFinish {
  Stitches selvedge{1}; // of sewn edges
  Stitches neck{1};     // of a neck edge
  Stitches front{0};    // of a jacket's front edge below the neck
};
[[nodiscard]] EdgeFinish edgeFinish(const GarmentDraft& draft, const KnitGarment& knitted);

// Once round the piece, counter-clockwise; empty for an empty row table.
[[nodiscard]] Path knittedOutline(const KnitPiece& piece, const StitchSize& size,
                                  const EdgeFinish& finish);

// The same of its first `lines` lines: what has been worked.
[[nodiscard]] Path workedOutline(const KnitPiece& piece, int lines, const StitchSize& size,
                                 const EdgeFinish& finish);

// The chords by which knit/edge_length.h measures an edge, as a line: x inward from the seam, y up
// from the underarm line. Horizontal along the underarm bind-off, straight up to the first event,
// then a chord an event. `flatTop` cm more at the end: half a crown.
[[nodiscard]] Path knittedChords(const KnittedEdge& edge, const StitchSize& size,
                                 double flatTop = 0);

// The armhole's edge of a bodice piece, or the cap's of a sleeve, on one side, read from the row
// table.
[[nodiscard]] KnittedEdge seamEdge(const KnitPiece& piece, EdgeSide side, Rows end);

} // namespace scye
