// The row tables of all pieces as comma-separated values, a line a row:
//   piece,section,row,side,action,stitches,left_edge,right_edge
// Edges in stitches from x = 0, as they stand after the row, with every digit they have. Lines end
// in \n.
#pragma once

#include "knit/knit_garment.h"

#include <string>

namespace scye {

[[nodiscard]] std::string rowTableCsv(const KnitGarment& garment);

} // namespace scye
