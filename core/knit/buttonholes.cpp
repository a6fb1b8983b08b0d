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

Buttonholes buttonholes(const GarmentDraft& g, const Lattice& l, Rows neckRow) {
  Buttonholes out;
  out.piece = buttonholePiece(g.sizes.style);
  if (l.band <= Stitches(0)) return out;
  out.wanted = int(g.sizes[Field::Buttons]);
  if (l.band < kLeastBand) return out;
  const double h = l.size.height;
  constexpr double kHole = 1.5; // cm, for a button a little larger
  out.stitches = std::clamp(Stitches(int(std::lround(kHole / l.size.width))), Stitches(1),
                            std::max(Stitches(1), l.band - Stitches(4)));
  out.from = std::max(Stitches(0), (l.band - out.stitches) / 2);

  const Rows above = l.foldRow > Rows(0) ? l.foldRow : l.hemRows;
  // From a right-side row to the next that is shaped, with two rows between.
  constexpr Rows kClear{4};
  const double first = l.size.up(above) + kButtonInset;
  const double last =
      std::min(l.size.up(neckRow - Rows(1)) - kButtonInset, l.size.up(neckRow - kClear));
  constexpr Rows kApart{4}; // closer is no row of buttonholes
  const double bust = l.size.up(l.underarmRow - Rows(1) + l.front.longer);
  double nearest = 1e300;
  for (int i = 0; i < out.wanted; ++i) {
    const double y = out.wanted == 1 ? last : first + i * (last - first) / (out.wanted - 1);
    // The right-side row nearest to y; halfway between two always the upper, or gaps would differ
    // more.
    constexpr double kTie = 1e-6;
    const Rows row(2 * int(std::lround((y / h - 0.5) / 2 + kTie)) + 1);
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
  for (const Rows row : holes.rows)
    acts.push_back({row, ActKind::Buttonhole, side, holes.stitches, Shapes::Opening, holes.from});
  return acts;
}

} // namespace scye
