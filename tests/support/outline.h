// What can be asked of a drafted piece's outline, by code that shares nothing with the drafting.
#pragma once

#include "draft/piece.h"

namespace scye::test {

// How far apart, at worst, one edge's end and the next one's start lie (the last meets the first),
// cm.
[[nodiscard]] double widestGap(const Piece& piece);
// By the shoelace formula on the flattened outline, cm2; positive when it runs counter-clockwise.
[[nodiscard]] double signedArea(const Piece& piece);
// How often two parts of the flattened outline cross that are no neighbours.
[[nodiscard]] int selfCrossings(const Piece& piece);
[[nodiscard]] bool allFinite(const Piece& piece);
// The one edge of that kind on the piece's right (x larger) or left; nothing when there is none.
[[nodiscard]] const PieceEdge* rightEdge(const Piece& piece, EdgeKind kind);
[[nodiscard]] const PieceEdge* leftEdge(const Piece& piece, EdgeKind kind);

} // namespace scye::test
