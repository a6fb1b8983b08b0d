#include "knit/on_stitches.h"

#include "seam/walk.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace scye {
namespace {

double knittedSize(const KnitGarment& k, const std::string& key) {
  for (const Rounded& r : k.rounded)
    if (r.key == key) return r.knitted;
  ADD_FAILURE() << key;
  return 0;
}

const PieceEdge& edge(const Piece& piece, EdgeKind kind) {
  return *std::find_if(piece.edges.begin(), piece.edges.end(),
                       [&](const PieceEdge& e) { return e.kind == kind; });
}

TEST(OnStitches, drawsWhatIsKnittedAgainst) {
  test::RandomDesigns random(test::propertySeed(2331));
  int caps = 0;
  for (int i = 0; i < 100; ++i) {
    const GarmentDraft g = draftGarment(random.plausible());
    const KnitGarment k = knitGarment(g);
    if (!k.gaugeUsable) continue;
    const GarmentDraft drawn = onStitches(g, k);
    for (const Piece& piece : drawn.pieces) {
      const std::vector<PieceEdge>& edges = piece.edges;
      for (std::size_t n = 0; n < edges.size(); ++n)
        EXPECT_LT((edges[n].path.end() - edges[(n + 1) % edges.size()].path.start()).norm(), 1e-9)
            << i << " " << pieceKey(piece.id) << " " << n;
    }
    EXPECT_NEAR(2 * drawn.bodice.back.halfBust, knittedSize(k, "backWidth"), 1e-9);
    const Piece& back = *drawn.piece(PieceId::Back);
    EXPECT_NEAR(edge(back, EdgeKind::Underarm).path.start().x(), 0.5 * knittedSize(k, "backWidth"),
                1e-9);
    if (!k.capKnitted) continue;
    ++caps;
    const Piece& sleeve = *drawn.piece(PieceId::Sleeve);
    EXPECT_NEAR(2 * edge(sleeve, EdgeKind::Underarm).path.start().x(), knittedSize(k, "upperArm"),
                1e-9);
    // The cap is drawn as long as the armhole is knitted, ease and all, with the crown as wanted.
    const double cap = SeamWalk(drawn, ArmholeHalf::Back).cap().length() +
                       SeamWalk(drawn, ArmholeHalf::Front).cap().length();
    const double armhole = 0.5 * (k.left.armhole.mean() + k.right.armhole.mean());
    EXPECT_NEAR(cap, armhole + k.easeWanted, 1e-6) << i;
    EXPECT_NEAR(edge(sleeve, EdgeKind::Crown).path.length(), g.sizes[Field::CrownWidth], 1e-9);
  }
  EXPECT_GT(caps, 80);
}

} // namespace
} // namespace scye
