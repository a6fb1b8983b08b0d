#include "draft/piece.h"

#include "support/outline.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

Piece pieceAlong(const std::vector<Vec2>& corners) {
  return {PieceId::Back, {{EdgeKind::CastOn, Path::polyline(corners)}}};
}

TEST(Outline, questionsSeeWhatTheyAreAskedFor) {
  const Piece square = pieceAlong({{0, 0}, {2, 0}, {2, 2}, {0, 2}, {0, 0}});
  EXPECT_EQ(test::widestGap(square), 0);
  EXPECT_DOUBLE_EQ(test::signedArea(square), 4);
  EXPECT_EQ(test::selfCrossings(square), 0);
  const Piece bowTie = pieceAlong({{0, 0}, {2, 2}, {2, 0}, {0, 2}, {0, 0}});
  EXPECT_EQ(test::selfCrossings(bowTie), 1);
  const Piece clockwise = pieceAlong({{0, 0}, {0, 2}, {2, 2}, {2, 0}, {0, 0}});
  EXPECT_DOUBLE_EQ(test::signedArea(clockwise), -4);
  EXPECT_DOUBLE_EQ(test::widestGap(pieceAlong({{0, 0}, {3, 4}})), 5);
}

TEST(Piece, isMirroredAboutTheCentreLine) {
  const std::vector<PieceEdge> half{{EdgeKind::CastOn, Path::polyline({{0, 0}, {5, 0}})},
                                    {EdgeKind::Side, Path::polyline({{5, 0}, {4, 9}})},
                                    {EdgeKind::Neck, Path::polyline({{4, 9}, {0, 8}})}};
  const Piece piece = mirrored(PieceId::Front, half);
  ASSERT_EQ(piece.edges.size(), 4u)
      << "cast-on, side, neck, side: what the centre cuts is whole again";
  EXPECT_EQ(piece.edges[0].path.start(), Vec2(-5, 0));
  EXPECT_EQ(piece.edges[0].path.end(), Vec2(5, 0));
  EXPECT_EQ(piece.edges[2].path.start(), Vec2(4, 9));
  EXPECT_EQ(piece.edges[2].path.end(), Vec2(-4, 9));
  EXPECT_EQ(test::widestGap(piece), 0);
  EXPECT_EQ(piece.outline().start(), piece.outline().end());
  EXPECT_DOUBLE_EQ(test::signedArea(piece), 2 * (9 * 4.5 - 0.5 * 4 * 1));
  EXPECT_EQ(piece.box().size(), Vec2(10, 9));
}

} // namespace
} // namespace scye
