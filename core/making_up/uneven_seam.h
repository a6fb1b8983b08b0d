// Sewing two edges with unequal rows: so many rows of one to so many of the other. The edges are
// divided into as many groups as there are rows too many (or as the shorter edge has rows), each a
// row longer on one side: within a row as even as can be, and told in at most two lines (common
// practice: the rows too many are spread over the whole seam). Exact: the lines' rows sum to both
// edges.
#pragma once

#include "knit/row_table.h"

#include <vector>

namespace scye {

struct SeamLine {
  int first = 0, second = 0; // rows of the two edges sewn to one another
  int times = 1;
  bool operator==(const SeamLine&) const = default;
};

// Empty where an edge has no rows. Equal edges are one line, 1 to 1.
[[nodiscard]] std::vector<SeamLine> sewRows(int first, int second);

// The rows of a piece's side seam at that edge: those before row `end` in which the edge is worked.
// Short rows that turn before the edge do not reach it.
[[nodiscard]] int seamRows(const RowTable& rows, EdgeSide side, Rows end);

} // namespace scye
