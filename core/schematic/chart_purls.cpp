#include "schematic/chart_drawing.h"

#include <algorithm>

namespace scye {
namespace {

// Whether a stitch of the lower edge, or of a band that goes on from it, shows its purl face;
// counted from the row's right edge as the piece was cast on.
class EdgeStitch {
public:
  EdgeStitch(const KnitPiece& piece, int stitches)
      : piece_(piece), stitches_(stitches),
        ends_(fittedEnds(piece.rib, piece.sides, piece.selvedge, Stitches(stitches))),
        garter_(piece.edge == EdgeMade::Garter ||
                (piece.edge == EdgeMade::Ribbed && piece.rib.kind == RibKind::Garter)),
        known_(piece.edge == EdgeMade::Ribbed &&
               canWriteOut(piece.rib, ends_, Stitches(stitches))) {}

  [[nodiscard]] bool purl(int row, int fromRight) const {
    if (fromRight < 0 || fromRight >= stitches_) return false;
    const bool rightSide = row % 2 == 1, garterBand = inBand(row, fromRight) && bandIsGarter();
    if (row > piece_.hemRows.value() && !inBand(row, fromRight)) return false;
    if (garterBand) return !rightSide;
    if (piece_.foldRow > Rows(0)) return row == piece_.foldRow.value();
    if (garter_) return !rightSide;
    return known_ &&
           showsPurl(piece_.rib, ends_, Stitches(stitches_), Stitches(fromRight), rightSide);
  }

private:
  [[nodiscard]] bool inBand(int row, int fromRight) const {
    if (piece_.neckRow > Rows(0) && row >= piece_.neckRow.value()) return false;
    const int band = piece_.band.value();
    return piece_.sides == RibSides::LeftFree ? fromRight >= stitches_ - band : fromRight < band;
  }
  // From the cast-on: no edge that lies flat goes on into it.
  [[nodiscard]] bool bandIsGarter() const {
    return piece_.edge != EdgeMade::Ribbed || piece_.rib.kind == RibKind::Plain;
  }

  const KnitPiece& piece_;
  int stitches_;
  RibEnds ends_;
  bool garter_, known_;
};

bool hasButtonhole(const ChartGrid& grid, int row, int column) {
  return std::any_of(grid.marks.begin(), grid.marks.end(), [&](const ChartMark& m) {
    return m.symbol == ChartSymbol::Buttonhole && m.row == row && m.columns.has(column);
  });
}

} // namespace

std::vector<ChartMark> purlMarks(const KnitPiece& piece, const ChartGrid& grid) {
  std::vector<ChartMark> marks;
  const int castOn = grid.castOn.size();
  const EdgeStitch edge(piece, castOn);
  for (const ChartLine& l : grid.lines) {
    const bool above = l.row > piece.hemRows.value();
    if (above && piece.band == Stitches(0)) continue;
    if (!above && l.section != SectionId::Undivided) continue;
    // A band keeps to the free edge, where the front neither grows nor narrows below the neck.
    const bool fromLeft = piece.sides == RibSides::LeftFree && above;
    const auto purls = [&](int column) {
      const int fromRight =
          fromLeft ? castOn - 1 - (column - l.cells.from) : l.cells.to - 1 - column;
      return edge.purl(l.row, fromRight) && !hasButtonhole(grid, l.row, column);
    };
    for (int from = l.cells.from; from < l.cells.to;) {
      const bool purl = purls(from);
      int to = from + 1;
      while (to < l.cells.to && purls(to) == purl)
        ++to;
      if (purl) marks.push_back({ChartSymbol::Purl, l.row, {from, to}});
      from = to;
    }
  }
  return marks;
}

} // namespace scye
