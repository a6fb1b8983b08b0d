// Buttonholes of a jacket whose band is knitted on, in whole rows: from 1.5 cm above the hem to 1.5
// cm below the neck, evenly spaced to within a row, each on a right-side row and clear of the
// neck's shaping by two rows (common practice). They lie in the middle of the band.
#pragma once

#include "knit/acts.h"
#include "seam/garment_draft.h"

namespace scye {

inline constexpr Stitches kLeastBand{3}; // one on each side of the smallest hole

struct Buttonholes {
  PieceId piece = PieceId::RightFront; // that has them
  int wanted = 0;
  std::vector<Rows> rows; // of that piece, ascending; fewer than wanted where there is no room
  Stitches stitches{0};   // each
  Stitches from{0};       // from the front edge to each
  int bustHole = 0;       // which of them, from 1, lies nearest the bust line; 0: none reaches it
  [[nodiscard]] bool crowded() const { return int(rows.size()) < wanted; }
};

// Women right, men left (common practice), or as chosen.
[[nodiscard]] PieceId buttonholePiece(const GarmentStyle& style);
// For a picked-up band or a pullover: none wanted. `neckRow`: where the front's neck begins.
[[nodiscard]] Buttonholes buttonholes(const GarmentDraft& draft, const Lattice& lattice,
                                      Rows neckRow);
[[nodiscard]] Acts buttonholeActs(const Buttonholes& holes,
                                  PieceId piece); // none in the other front

} // namespace scye
