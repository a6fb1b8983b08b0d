#include "draft/piece.h"

#include "model/enum_keys.h"

namespace scye {

std::string_view pieceKey(PieceId id) {
  static constexpr EnumKeys<PieceId, PieceId::LeftSleeve> kKeys{{
      {PieceId::Back, "back"},
      {PieceId::Front, "front"},
      {PieceId::LeftFront, "leftFront"},
      {PieceId::RightFront, "rightFront"},
      {PieceId::Sleeve, "sleeve"},
      {PieceId::LeftSleeve, "leftSleeve"},
  }};
  return kKeys[id];
}

std::string_view edgeKey(EdgeKind kind) {
  static constexpr EnumKeys<EdgeKind, EdgeKind::Crown> kKeys{{
      {EdgeKind::CastOn, "castOn"},
      {EdgeKind::Side, "side"},
      {EdgeKind::Underarm, "underarm"},
      {EdgeKind::Armhole, "armhole"},
      {EdgeKind::Shoulder, "shoulder"},
      {EdgeKind::Neck, "neck"},
      {EdgeKind::Opening, "opening"},
      {EdgeKind::SleeveSeam, "sleeveSeam"},
      {EdgeKind::Cap, "cap"},
      {EdgeKind::Crown, "crown"},
  }};
  return kKeys[kind];
}

Path Piece::outline() const {
  if (edges.empty()) return {};
  Path path(edges.front().path.start());
  for (const PieceEdge& e : edges)
    path.append(e.path);
  return path;
}

Box Piece::box() const {
  Box box;
  for (const PieceEdge& e : edges)
    box.add(e.path);
  return box;
}

Piece mirrored(PieceId id, const std::vector<PieceEdge>& half) {
  Piece piece{id, {}};
  const auto joined = [](const Path& a, const Path& b) {
    Path path(a.start());
    return path.append(a).append(b);
  };
  for (const PieceEdge& e : half)
    piece.edges.push_back(e);
  for (auto it = half.rbegin(); it != half.rend(); ++it)
    piece.edges.push_back({it->kind, it->path.mirroredX().reversed()});
  // The edges cut by the centre line, at the top and at the cast-on, become whole.
  const std::size_t top = half.size() - 1;
  piece.edges[top].path = joined(piece.edges[top].path, piece.edges[top + 1].path);
  piece.edges.erase(piece.edges.begin() + std::ptrdiff_t(top) + 1);
  piece.edges.front().path = joined(piece.edges.back().path, piece.edges.front().path);
  piece.edges.pop_back();
  return piece;
}

} // namespace scye
