// Small tools on lists of acts.
#pragma once

#include "knit/lattice.h"
#include "knit/row_table.h"
#include "shaping/even_shaping.h"

namespace scye {

using Acts = std::vector<Act>;

void append(Acts& to, const Acts& more);
void sortActs(Acts& acts); // by row; in a row rest and rejoin first, then right before left
[[nodiscard]] Acts between(const Acts& acts, Rows first, Rows last); // both included

// The events of an edge as acts; underarm bind-offs keep their name.
[[nodiscard]] Acts edgeActs(const KnittedEdge& edge, EdgeSide side, Shapes shapes);

// The shaping of a side or sleeve seam: between its corners evenly on right-side rows, never in the
// rib. Changes for which a stretch has no room move up to the next one. `outward`: how many
// stitches further out the edge has to be cast on for all that is worked.
[[nodiscard]] Acts seamActs(const std::vector<SeamPlace>& places, Rows ribRows, EdgeSide side,
                            Shapes shapes, Stitches& outward);

} // namespace scye
