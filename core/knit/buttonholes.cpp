#include "knit/buttonholes.h"

#include "draft/complete.h"

#include <algorithm>
#include <cmath>

namespace scye {

PieceId buttonholePiece(const GarmentStyle& style) {
  switch (style.buttonSide) {
  case ButtonSide::Right:
    return PieceId::RightFront;
  case ButtonSide::Left:
    return PieceId::LeftFront;
  case ButtonSide::Usual:
    break;
  }
  return style.figure == Figure::Man ? PieceId::LeftFront : PieceId::RightFront;
}

Buttonholes buttonholes(const GarmentDraft& g, const Lattice& l, int neckRow) {
  Buttonholes out;
  out.piece = buttonholePiece(g.sizes.style);
  if (l.band <= 0) return out;
  out.wanted = int(g.sizes[Field::Buttons]);
  if (l.band < kLeastBand) return out;
  const double w = l.size.width, h = l.size.height;
  constexpr double kHole = 1.5; // cm, for a button a little larger
  out.stitches = std::clamp(int(std::lround(kHole / w)), 1, std::max(1, l.band - 4));
  out.from = std::max(0, (l.band - out.stitches) / 2);

  const int above = l.foldRow > 0 ? l.foldRow : l.hemRows;
  constexpr int kClear =
      4; // from a right-side row to the next that is shaped, with two rows between
  const double first = above * h + kButtonInset;
  const double last = std::min((neckRow - 1) * h - kButtonInset, (neckRow - kClear) * h);
  constexpr int kApart = 4; // rows: closer is no row of buttonholes
  const double bust = (l.underarmRow - 1 + l.front.longer) * h;
  double nearest = 1e300;
  for (int i = 0; i < out.wanted; ++i) {
    const double y = out.wanted == 1 ? last : first + i * (last - first) / (out.wanted - 1);
    // The right-side row nearest to y; halfway between two always the upper, or gaps would differ
    // more.
    constexpr double kTie = 1e-6;
    const int row = 2 * int(std::lround((y / h - 0.5) / 2 + kTie)) + 1;
    if (row <= above || row > neckRow - kClear) continue;
    if (!out.rows.empty() && row - out.rows.back() < kApart) continue;
    out.rows.push_back(row);
    if (bust <= last + kButtonInset && std::abs(y - bust) < nearest) {
      nearest = std::abs(y - bust);
      out.bustHole = int(out.rows.size());
    }
  }
  return out;
}

Acts buttonholeActs(const Buttonholes& holes, PieceId piece) {
  Acts acts;
  if (piece != holes.piece) return acts;
  // Seen from the right side the left front's opening is at its left.
  const EdgeSide side = piece == PieceId::LeftFront ? EdgeSide::Left : EdgeSide::Right;
  for (const int row : holes.rows)
    acts.push_back(
        {row, ActKind::Buttonhole, side, Stitches(holes.stitches), Shapes::Opening, holes.from});
  return acts;
}

} // namespace scye
