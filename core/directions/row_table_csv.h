// The row tables of all pieces as comma-separated values, a line a row:
//   piece,section,row,side,action,stitches,left_edge,right_edge
// Edges in stitches from x = 0, as they stand after the row, with every digit they have. Lines end
// in \n. Actions are joined by ", ", the right edge first; quoted then:
//   cast on 114                     increase right 1, decrease left 1    bind off right 6
//   close right 20                  all that is left is bound off
//   rest 28, rejoin 28              the left half goes to a holder, and comes back from it
//   wait left 4                     the row is turned before the 4 stitches at its end; they wait
//   take up left 12                 the row goes to the end over the 12 that waited there
//   spread 36                       increases over the whole row; half of them moves each edge
//   buttonhole right 3 from 2       over the third to fifth stitch from that edge; the count stays
//   work even
// Where stitches wait, count and edges are those of the stitches in work; waiting ones that are on
// a holder are no part of "rest" either.
#pragma once

#include "knit/knit_garment.h"

#include <string>

namespace scye {

[[nodiscard]] std::string rowTableCsv(const KnitGarment& garment);

} // namespace scye
