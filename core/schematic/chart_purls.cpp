#include "schematic/chart_drawing.h"

#include <algorithm>

namespace scye {
namespace {

// Whether a stitch below the body shows its purl face, counted from the row's right edge.
class LowerEdge {
public:
  LowerEdge(const KnitPiece& piece, int stitches)
      : piece_(piece), stitches_(stitches),
        ends_(fittedEnds(piece.rib, piece.sides, piece.selvedge, stitches)),
        garter_(piece.edge == EdgeMade::Garter ||
                (piece.edge == EdgeMade::Ribbed && piece.rib.kind == RibKind::Garter)),
        known_(piece.edge == EdgeMade::Ribbed && canWriteOut(piece.rib, ends_, stitches)) {}

  [[nodiscard]] bool purl(int row, int fromRight) const {
    const bool rightSide = row % 2 == 1;
    if (piece_.foldRow > 0) return row == piece_.foldRow;
    if (garter_) return !rightSide;
    return known_ && showsPurl(piece_.rib, ends_, stitches_, fromRight, rightSide);
  }

private:
  const KnitPiece& piece_;
  int stitches_;
  RibEnds ends_;
  bool garter_, known_;
};

} // namespace

std::vector<ChartMark> purlMarks(const KnitPiece& piece, const ChartGrid& grid) {
  std::vector<ChartMark> marks;
  const LowerEdge edge(piece, grid.castOn.size());
  for (const ChartLine& l : grid.lines) {
    if (l.section != SectionId::Body || l.row > piece.hemRows) continue;
    for (int from = l.cells.from; from < l.cells.to;) {
      const auto purls = [&](int column) { return edge.purl(l.row, l.cells.to - 1 - column); };
      int to = from + 1;
      while (to < l.cells.to && purls(to) == purls(from))
        ++to;
      if (purls(from)) marks.push_back({ChartSymbol::Purl, l.row, {from, to}});
      from = to;
    }
  }
  return marks;
}

} // namespace scye
