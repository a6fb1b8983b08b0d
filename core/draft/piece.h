// A drafted piece: its seam lines as named edges, in cm, seen from its right side; x = 0 at the
// garment's centre line, y up from the cast-on edge.
#pragma once

#include "curve/path.h"

#include <string_view>
#include <vector>

namespace scye {

// Sleeve: both, or the right one where the cap's halves differ; LeftSleeve is then its mirror
// image.
enum class PieceId : std::uint8_t { Back, Front, LeftFront, RightFront, Sleeve, LeftSleeve };
enum class EdgeKind : std::uint8_t {
  CastOn,
  Side,
  Underarm,
  Armhole,
  Shoulder,
  Neck,
  Opening,
  SleeveSeam,
  Cap,
  Crown,
};

[[nodiscard]] std::string_view pieceKey(PieceId id); // "back", "leftFront", ...
[[nodiscard]] std::string_view edgeKey(EdgeKind kind);

struct PieceEdge {
  EdgeKind kind;
  Path path;
};

struct Piece {
  PieceId id = PieceId::Back;
  // Round the piece counter-clockwise, from the left end of the cast-on edge; each edge starts
  // where the one before ends, the last one ends where the first starts.
  std::vector<PieceEdge> edges;

  [[nodiscard]] Path outline() const;
  [[nodiscard]] Box box() const;
};

// The piece that has `half` (edges from the centre of the cast-on edge round to the centre line at
// the top, x >= 0) on its right and the mirror image of it on its left.
[[nodiscard]] Piece mirrored(PieceId id, const std::vector<PieceEdge>& half);

} // namespace scye
