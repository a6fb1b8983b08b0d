#include "support/outline.h"

#include <algorithm>

namespace scye::test {
namespace {

double cross(const Vec2& a, const Vec2& b) {
  return a.x() * b.y() - a.y() * b.x();
}

bool cross(const Vec2& a, const Vec2& b, const Vec2& c, const Vec2& d) {
  const auto side = [](const Vec2& from, const Vec2& to, const Vec2& p) {
    return cross(Vec2(to - from), Vec2(p - from));
  };
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

std::vector<Vec2> flattened(const Piece& piece) {
  std::vector<Vec2> points;
  for (const PieceEdge& e : piece.edges)
    for (const Vec2& p : e.path.flattened(16))
      points.push_back(p);
  return points;
}

double middleX(const PieceEdge& e) {
  return 0.5 * (e.path.start().x() + e.path.end().x());
}

} // namespace

double widestGap(const Piece& piece) {
  double gap = 0;
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    const Path& next = piece.edges[(i + 1) % piece.edges.size()].path;
    gap = std::max(gap, (next.start() - piece.edges[i].path.end()).norm());
  }
  return gap;
}

double signedArea(const Piece& piece) {
  const auto points = flattened(piece);
  double twice = 0;
  for (std::size_t i = 0; i < points.size(); ++i)
    twice += cross(points[i], points[(i + 1) % points.size()]);
  return 0.5 * twice;
}

int selfCrossings(const Piece& piece) {
  const auto points = flattened(piece);
  const std::size_t n = points.size();
  int crossings = 0;
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t k = i + 2; k < n; ++k)
      crossings += cross(points[i], points[(i + 1) % n], points[k], points[(k + 1) % n]);
  return crossings;
}

bool allFinite(const Piece& piece) {
  const auto points = flattened(piece);
  return std::all_of(points.begin(), points.end(), [](const Vec2& p) { return p.allFinite(); });
}

const PieceEdge* rightEdge(const Piece& piece, EdgeKind kind) {
  const PieceEdge* found = nullptr;
  for (const PieceEdge& e : piece.edges)
    if (e.kind == kind && (!found || middleX(e) > middleX(*found))) found = &e;
  return found;
}

const PieceEdge* leftEdge(const Piece& piece, EdgeKind kind) {
  const PieceEdge* found = nullptr;
  for (const PieceEdge& e : piece.edges)
    if (e.kind == kind && (!found || middleX(e) < middleX(*found))) found = &e;
  return found;
}

} // namespace scye::test
