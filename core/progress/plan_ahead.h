// A piece on the needles planned anew from the row it is at: what is worked stays, what lies ahead
// is led to where it is wanted now. Below the underarm the side is shaped over the rows that are
// left; in a cap the rest of it is searched again (shaping/cap_shaping.h), as a cap of its own that
// begins on the stitches there are.
#pragma once

#include "progress/present.h"

namespace scye {

// The line up to which a piece is fixed: the one it has been worked to, and the row after a
// right-side row, because what is done at the beginning of two rows belongs together.
[[nodiscard]] int fixedLines(const KnitPiece& piece, int worked);

// The first `lines` lines of `worked`, then on to the end of `target`. What does not meet is shaped
// away over the rows that are left at that edge, and where there are none taken into the shoulder,
// neck or underarm. Nothing once a neck is divided or the shoulders have begun, or where the
// stitches do not come out. Not for a cap under way.
[[nodiscard]] std::optional<KnitPiece> continued(const KnitPiece& worked, int lines,
                                                 const KnitPiece& target);

// The number of stitches at the upper arm that a sleeve under way can still come to, nearest to
// `wanted`; `underarmRow` of the sleeve as it is wanted.
[[nodiscard]] Stitches reachableWidth(const KnitPiece& worked, int lines, Rows underarmRow,
                                      Stitches wanted);

// A cap under way, led on so that its edge is `length` long by the mean of its measures. `whole`:
// as the whole cap would be asked for, with its armholes; `frontRight`: whether the front half is
// at the right edge. Nothing where no such rest can be worked.
struct CapAhead {
  KnitPiece piece;
  double off = 0; // cm, by which its edge is longer than wanted
};
[[nodiscard]] std::optional<CapAhead> capAhead(const KnitPiece& worked, int lines,
                                               const CapRequest& whole, double length,
                                               bool frontRight);

// A sleeve as the mirror image of the other one. Nothing where its rows do not come out.
[[nodiscard]] std::optional<KnitPiece> mirroredSleeve(const KnitPiece& sleeve);

// `more` rows worked even after row `after` of the body (less than nothing: so many even rows left
// out). Nothing where they are odd in number or shaping is worked in rows that would be left out.
[[nodiscard]] std::optional<KnitPiece> strayed(const KnitPiece& piece, Rows after, Rows more);

} // namespace scye
