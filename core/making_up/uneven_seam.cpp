#include "making_up/uneven_seam.h"

#include <algorithm>

namespace scye {

std::vector<SeamLine> sewRows(int first, int second) {
  const int few = std::min(first, second), many = std::max(first, second);
  if (few <= 0) return {};
  if (few == many) return {{1, 1, few}};
  std::vector<SeamLine> lines;
  const auto add = [&](int fewer, int more, int times) {
    if (times > 0)
      lines.push_back(first < second ? SeamLine{fewer, more, times} : SeamLine{more, fewer, times});
  };
  if (const int groups = many - few; groups <= few) {
    const int rows = few / groups, larger = few % groups;
    add(rows + 1, rows + 2, larger);
    add(rows, rows + 1, groups - larger);
  } else {
    const int rows = many / few, larger = many % few;
    add(1, rows + 1, larger);
    add(1, rows, few - larger);
  }
  return lines;
}

int seamRows(const RowTable& rows, EdgeSide side, Rows end) {
  // A piece that a deep neck divides goes on at its right in the right section, at its left in the
  // left one.
  const SectionId inner = side == EdgeSide::Left ? SectionId::Right : SectionId::Left;
  int count = 0;
  bool waits = false; // stitches at this edge, beyond a turn
  for (const RowLine& line : rows) {
    if (line.row < Rows(1) || line.row >= end || line.section == inner) continue;
    for (const Act& a : line.acts) {
      if (a.side != side) continue;
      if (a.kind == ActKind::Wait) waits = true;
      if (a.kind == ActKind::TakeUp) waits = false;
    }
    count += !waits;
  }
  return count;
}

} // namespace scye
