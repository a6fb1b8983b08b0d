// Headings, notes and the beginnings of lines, as the reader understands them.
#pragma once

#include "core/directions/reader_words.h"

#include <optional>
#include <vector>

namespace scye::reader {

// "Neck and shoulder, right-hand side: rows 177 to 181 (5 rows, 1.7 cm)", or "Hem" without rows.
struct PartHeading {
  std::string_view section = "body";
  bool upper = false; // an armhole or a cap is in it
  bool hasRows = false;
  int first = 0, last = 0;
  double length = 0;
  bool inches = false;
};
[[nodiscard]] std::optional<PartHeading> partHeading(std::string_view text);

// "At the same time: at the beginning of RS rows the armhole edge and shoulder, at their end the
// neck edge ..."
struct EdgeNames {
  std::vector<std::string_view> right, left;
};
[[nodiscard]] std::optional<EdgeNames> atTheSameTime(std::string_view text);

enum class WorkSide { Any, Right, Wrong };

// "Row 153 (RS, neck edge and armhole edge): ", "Rows 154 to 159 (neck edge): ".
struct RowsNamed {
  int first = 0, last = 0;
  WorkSide side = WorkSide::Any; // told for one row only
  std::vector<std::string_view> edges;
};
[[nodiscard]] std::optional<RowsNamed> takeRows(Finger& finger);

// "k2, *p2, k2; repeat from * to last 3 sts, p2, k1" over so many stitches: which are knitted, in
// the order of the work; nothing where it does not come out.
[[nodiscard]] std::optional<std::vector<bool>> takeRib(Finger& finger, int stitches);

// "every row" is 1, "every 4th row" 4.
[[nodiscard]] std::optional<int> takeEvery(Finger& finger);

} // namespace scye::reader
