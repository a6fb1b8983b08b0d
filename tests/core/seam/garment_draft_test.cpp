#include "seam/garment_draft.h"

#include "support/outline.h"
#include "support/random_designs.h"
#include "support/record.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

TEST(GarmentDraft, hasThePiecesOfItsGarment) {
  Design d;
  EXPECT_EQ(draftGarment(d).pieces.size(), 3u);
  d.choose(Choice::Garment, Garment::Jacket);
  const GarmentDraft jacket = draftGarment(d);
  EXPECT_EQ(jacket.pieces.size(), 4u);
  EXPECT_NE(jacket.piece(PieceId::LeftFront), nullptr);
  EXPECT_NE(jacket.piece(PieceId::Sleeve), nullptr);
  EXPECT_EQ(jacket.piece(PieceId::Front), nullptr);
  EXPECT_EQ(jacket.design, d);
}

TEST(GarmentDraft, isAFunctionOfItsDesign) {
  test::RandomDesigns random(3);
  const Design d = random.plausible();
  const GarmentDraft a = draftGarment(d), b = draftGarment(d);
  EXPECT_EQ(a.findings, b.findings);
  EXPECT_EQ(a.cap.height, b.cap.height);
  EXPECT_EQ(a.sizes.values, b.sizes.values);
}

// What is measured along the drawn edges is what was matched.
TEST(GarmentDraft, drawnEdgesAreTheMatchedOnes) {
  const auto seed = test::propertySeed(1501);
  test::RandomDesigns random(seed);
  for (int i = 0; i < 1000; ++i) {
    const GarmentDraft g = draftGarment(random.plausible());
    if (!g.cap.found) continue;
    const Piece &back = *g.piece(PieceId::Back), &sleeve = *g.piece(PieceId::Sleeve);
    ASSERT_NEAR(test::rightEdge(back, EdgeKind::Underarm)->path.length() +
                    test::rightEdge(back, EdgeKind::Armhole)->path.length(),
                g.cap.armholeBack, 1e-9);
    double edge = 0;
    for (const PieceEdge& e : sleeve.edges)
      if (e.kind == EdgeKind::Underarm || e.kind == EdgeKind::Cap || e.kind == EdgeKind::Crown)
        edge += e.path.length();
    ASSERT_NEAR(edge, g.cap.cap(), 1e-9);
    // The front half lies on the right; its part of the crown ends at the mark.
    const double right = test::rightEdge(sleeve, EdgeKind::Underarm)->path.length() +
                         test::rightEdge(sleeve, EdgeKind::Cap)->path.length();
    const PieceEdge* crown = test::rightEdge(sleeve, EdgeKind::Crown);
    ASSERT_NEAR(crown->path.start().x() - g.cap.crownMark + right, g.cap.capFront, 1e-9);
  }
}

TEST(GarmentDraft, sleeveStandsOnItsSeamsAndReachesTheCrown) {
  const GarmentDraft g = draftGarment(Design().set(Field::SleeveLength, 42));
  const Piece& sleeve = *g.piece(PieceId::Sleeve);
  EXPECT_NEAR(sleeve.box().size().y(), 42 + g.cap.height, 1e-9);
  EXPECT_NEAR(sleeve.box().size().x(), g.sizes.finished(Field::UpperArm), 1e-9);
  EXPECT_NEAR(test::rightEdge(sleeve, EdgeKind::SleeveSeam)->path.length(),
              test::leftEdge(sleeve, EdgeKind::SleeveSeam)->path.length(), 1e-9);
}

TEST(GarmentDraft, sleeveFromTheShoulderTipEndsAtTheWrist) {
  Design d;
  d.choose(Choice::SleeveFrom, SleeveFrom::Shoulder).set(Field::SleeveToShoulder, 57);
  for (double ease : {1.0, 4.0, 7.0}) {
    const GarmentDraft g = draftGarment(d.set(Field::EaseUpperArm, ease));
    ASSERT_TRUE(g.cap.found);
    EXPECT_NEAR(g.sleeve.length + g.cap.height, 57, 1e-9) << "the solved cap height is taken off";
    EXPECT_NEAR(g.piece(PieceId::Sleeve)->box().size().y(), 57, 1e-9);
  }
}

TEST(GarmentDraft, outlinesAreClosedAndCleanWhateverTheStyle) {
  const auto seed = test::propertySeed(1502);
  test::RandomDesigns random(seed);
  int drafted = 0;
  for (int i = 0; i < 2000; ++i) {
    const GarmentDraft g = draftGarment(random.plausible());
    for (const Piece& p : g.pieces) {
      SCOPED_TRACE("design " + std::to_string(i) + " " + std::string(pieceKey(p.id)));
      ASSERT_TRUE(test::allFinite(p));
      ASSERT_LT(test::widestGap(p), 1e-9);
      ASSERT_GT(test::signedArea(p), 0);
      if (!anyBlocking(g.findings)) {
        ASSERT_EQ(test::selfCrossings(p), 0);
      }
    }
    drafted += !anyBlocking(g.findings);
  }
  test::record("draftedWithoutBlocking", drafted);
  EXPECT_GT(drafted, 1000);
}

// Whatever stands in the fields: a garment comes back, finite and joined, and where its pieces
// cross themselves a finding blocks.
TEST(GarmentDraft, anyDesignGivesAGarment) {
  const auto seed = test::propertySeed(1503);
  test::RandomDesigns random(seed);
  for (int i = 0; i < 4000; ++i) {
    const GarmentDraft g = draftGarment(random.wild());
    ASSERT_TRUE(std::isfinite(g.cap.height));
    ASSERT_TRUE(std::isfinite(g.cap.cap()));
    for (const Piece& p : g.pieces) {
      SCOPED_TRACE("design " + std::to_string(i) + " " + std::string(pieceKey(p.id)));
      ASSERT_TRUE(test::allFinite(p));
      ASSERT_LT(test::widestGap(p), 1e-9);
      if (!anyBlocking(g.findings)) {
        EXPECT_EQ(test::selfCrossings(p), 0);
        EXPECT_GT(test::signedArea(p), 0);
      }
    }
  }
}

} // namespace
} // namespace scye
