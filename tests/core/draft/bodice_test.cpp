#include "draft/bodice.h"

#include "draft/complete.h"
#include "model/phrases.h"
#include "support/outline.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

Bodice bodiceOf(const Design& d) {
  return draftBodice(complete(d));
}

const Piece& pieceOf(const std::vector<Piece>& pieces, PieceId id) {
  for (const Piece& p : pieces)
    if (p.id == id) return p;
  ADD_FAILURE() << "no piece " << pieceKey(id);
  return pieces.front();
}

TEST(Bodice, heightsStandOnEachOther) {
  Design d;
  d.set(Field::HemToUnderarm, 36).set(Field::ArmholeDepth, 19).set(Field::EaseArmholeDepth, 2);
  d.set(Field::ShoulderDrop, 3).set(Field::BackNeckDrop, 2).set(Field::BackWaistLength, 40);
  d.set(Field::FrontNeckDrop, 8).set(Field::NeckBand, 2.5).set(Field::HemDepth, 6);
  const BodiceHeights at = bodiceOf(d).at;
  EXPECT_DOUBLE_EQ(at.underarm, 34) << "depth ease lowers the underarm";
  EXPECT_DOUBLE_EQ(at.tip, 54);
  EXPECT_DOUBLE_EQ(at.neckPoint, 57);
  EXPECT_DOUBLE_EQ(at.nape, 55);
  EXPECT_DOUBLE_EQ(at.waist, 15);
  EXPECT_DOUBLE_EQ(at.hip, -5);
  EXPECT_DOUBLE_EQ(at.hem, 6);
  EXPECT_DOUBLE_EQ(bodiceOf(d).frontAt.neckLow, 57 - 8 - 2.5)
      << "the band fills what the knitted neck leaves";
}

// A standing band takes nothing of the neck's width; a folded one lies inside the knitted edge.
TEST(Bodice, aHighNeckIsKnittedAsWideAsItIsWorn) {
  Design d;
  d.set(Field::NeckWidth, 15).set(Field::NeckBand, 6).set(Field::FrontNeckDrop, 7);
  EXPECT_DOUBLE_EQ(bodiceOf(d).halfNeck, 7.5 + 6);
  const Bodice high = bodiceOf(d.choose(Choice::Neckline, Neckline::High));
  EXPECT_DOUBLE_EQ(high.halfNeck, 7.5);
  EXPECT_DOUBLE_EQ(high.frontAt.neckPoint - high.frontAt.neckLow, 7);
}

TEST(Bodice, aStraightBackNeckLeavesTheWaistWhereItIs) {
  Design d;
  const Bodice shaped = bodiceOf(d),
               straight = bodiceOf(d.choose(Choice::BackNeck, BackNeck::Straight));
  EXPECT_DOUBLE_EQ(straight.at.waist, shaped.at.waist);
  EXPECT_DOUBLE_EQ(straight.at.neckLow, straight.at.neckPoint);
  EXPECT_DOUBLE_EQ(straight.backHalf.back().path.length(), straight.halfNeck);
}

// What is folded in lies below the lower edge and lengthens nothing that is worn.
TEST(Bodice, aFacingLiesBelowTheLowerEdge) {
  Design d;
  const Bodice ribbed = bodiceOf(d);
  const Bodice faced = bodiceOf(d.choose(Choice::Hem, HemMade::Faced).set(Field::HemDepth, 3));
  EXPECT_DOUBLE_EQ(faced.at.fold, 3);
  EXPECT_DOUBLE_EQ(faced.at.hem, 3);
  for (const auto y :
       {&BodiceHeights::waist, &BodiceHeights::underarm, &BodiceHeights::tip, &BodiceHeights::nape})
    EXPECT_NEAR(faced.at.*y - faced.at.fold, ribbed.at.*y, 1e-12);
  EXPECT_DOUBLE_EQ(bodiceOf(d.choose(Choice::Hem, HemMade::Plain)).at.hem, 0);
}

// Lengths of the body in their order, from the shortest (common practice): each reaches further
// down.
TEST(Bodice, bodyLengthsAreInTheirOrder) {
  for (const Figure figure : {Figure::Woman, Figure::Man, Figure::Child, Figure::Baby}) {
    double before = 0;
    for (const BodyLength length :
         {BodyLength::Cropped, BodyLength::Waist, BodyLength::HighHip, BodyLength::Hip}) {
      Design d;
      d.choose(Choice::Figure, figure).choose(Choice::BodyLength, length);
      const Bodice b = bodiceOf(d);
      EXPECT_GT(b.at.underarm, before);
      EXPECT_EQ(length == BodyLength::Cropped, b.at.waist < 0)
          << "only a cropped body ends above the waist";
      before = b.at.underarm;
    }
  }
}

TEST(Bodice, theWaistIsWorkedOutOrGiven) {
  Design d;
  d.choose(Choice::SideSeam, SideSeam::Shaped);
  const double workedOut = bodiceOf(d).at.waist;
  const Bodice b = bodiceOf(d.set(Field::WaistHeight, workedOut + 3));
  EXPECT_DOUBLE_EQ(b.at.waist, workedOut + 3);
  EXPECT_DOUBLE_EQ(b.at.underarm, bodiceOf(Design()).at.underarm);
}

// The wedge lengthens the front's middle by its depth; both parts of the side seam together are as
// long as the back's (common practice: short rows over the bust change no seam).
TEST(Bodice, shortRowsOverTheBustLeaveTheSeamsAlike) {
  test::RandomDesigns random(test::propertySeed(1305));
  for (int i = 0; i < 500; ++i) {
    Design d = random.plausible();
    d.choose(Choice::BustShaping, BustShaping::ShortRows).set(Field::BustDepth, 3);
    const Bodice b = bodiceOf(d);
    ASSERT_DOUBLE_EQ(b.bust.depth, 3);
    ASSERT_NEAR(b.frontAt.underarm - b.at.underarm, 3, 1e-12);
    ASSERT_NEAR(b.frontAt.hem, b.at.hem, 1e-12);
    const Path side = b.frontHalf[1].path;
    const double slopes = 2 * std::hypot(b.bust.reach, 1.5);
    ASSERT_NEAR(side.length() - slopes, b.frontSide.length(), 1e-9);
    ASSERT_NEAR(b.frontHalf[3].path.length(), armholeCurve(b.front).length(), 1e-9);
  }
}

// Common practice: the depth is what the front is longer from shoulder to waist than the back.
TEST(Bodice, shortRowsOverTheBustMakeUpForTheFrontLength) {
  Design d;
  d.set(Field::BackWaistLength, 41).set(Field::BackNeckDrop, 2).set(Field::FrontWaistLength, 46.5);
  d.choose(Choice::BustShaping, BustShaping::ShortRows);
  EXPECT_DOUBLE_EQ(bodiceOf(d).bust.depth, 3.5);
  EXPECT_DOUBLE_EQ(bodiceOf(d.choose(Choice::BustShaping, BustShaping::None)).bust.depth, 0);
}

TEST(Bodice, backAndFrontShareTheBust) {
  Design d;
  d.set(Field::Bust, 95).set(Field::EaseBust, 5).set(Field::BackShare, 0.48);
  const Bodice b = bodiceOf(d);
  EXPECT_DOUBLE_EQ(b.back.halfBust, 24);
  EXPECT_DOUBLE_EQ(b.front.halfBust, 26);
}

TEST(Bodice, neckIsKnittedWiderByItsBand) {
  Design d;
  d.set(Field::NeckWidth, 15).set(Field::NeckBand, 2.5);
  EXPECT_DOUBLE_EQ(bodiceOf(d).halfNeck, 10);
  d.choose(Choice::Neckline, Neckline::Vee).set(Field::FrontNeckDrop, 20);
  // Finished: two straight sides of a V, and the back neck.
  const double vee = 2 * std::hypot(7.5, 20.0);
  EXPECT_GT(bodiceOf(d).neckEdge, vee + 15);
  EXPECT_LT(bodiceOf(d).neckEdge, vee + 15 + 2 * complete(d)[Field::BackNeckDrop]);
}

// The band is centred on the jacket's centre line.
TEST(Bodice, frontReachesHalfABandPastTheCentreOrStopsHalfABandShort) {
  Design d;
  d.choose(Choice::Garment, Garment::Jacket).set(Field::ButtonBand, 3);
  EXPECT_DOUBLE_EQ(bodiceOf(d).openingX, -1.5);
  EXPECT_DOUBLE_EQ(bodiceOf(d).bandInner, 1.5);
  d.choose(Choice::BandMade, BandMade::PickedUp);
  EXPECT_DOUBLE_EQ(bodiceOf(d).openingX, 1.5);
  EXPECT_DOUBLE_EQ(bodiceOf(d).bandInner, 1.5);
}

TEST(Bodice, piecesAreThoseOfTheGarment) {
  Design d;
  auto pieces = bodicePieces(styleOf(d), bodiceOf(d));
  ASSERT_EQ(pieces.size(), 2u);
  EXPECT_EQ(pieces[1].id, PieceId::Front);
  d.choose(Choice::Garment, Garment::Jacket);
  pieces = bodicePieces(styleOf(d), bodiceOf(d));
  ASSERT_EQ(pieces.size(), 3u);
  EXPECT_EQ(pieces[1].id, PieceId::LeftFront);
  EXPECT_EQ(pieces[2].id, PieceId::RightFront);
}

// Seen from their right sides, the wearer's left front has its armhole on the right.
TEST(Bodice, frontsAreMirrorImages) {
  Design d;
  d.choose(Choice::Garment, Garment::Jacket);
  const auto pieces = bodicePieces(styleOf(d), bodiceOf(d));
  const Piece &left = pieceOf(pieces, PieceId::LeftFront),
              &right = pieceOf(pieces, PieceId::RightFront);
  ASSERT_EQ(left.edges.size(), right.edges.size());
  for (const PieceEdge& e : left.edges) {
    const PieceEdge* other = test::rightEdge(right, e.kind);
    ASSERT_NE(other, nullptr);
    const auto a = e.path.flattened(), b = other->path.mirroredX().reversed().flattened();
    ASSERT_EQ(a.size(), b.size());
    for (std::size_t i = 0; i < a.size(); ++i)
      EXPECT_LT((a[i] - b[i]).norm(), 1e-12);
  }
  EXPECT_GT(test::rightEdge(left, EdgeKind::Armhole)->path.start().x(), 0);
  EXPECT_LT(test::rightEdge(right, EdgeKind::Armhole)->path.start().x(), 0);
  EXPECT_EQ(left.edges.front().kind, EdgeKind::CastOn);
  EXPECT_EQ(right.edges.front().kind, EdgeKind::CastOn);
}

TEST(Bodice, backIsItsOwnMirrorImage) {
  const Design d;
  const Piece back = bodicePieces(styleOf(d), bodiceOf(d)).front();
  for (EdgeKind kind :
       {EdgeKind::Side, EdgeKind::Underarm, EdgeKind::Armhole, EdgeKind::Shoulder}) {
    const Path right = test::rightEdge(back, kind)->path;
    const Path left = test::leftEdge(back, kind)->path.mirroredX().reversed();
    EXPECT_LT((right.start() - left.start()).norm(), 1e-12);
    EXPECT_LT((right.end() - left.end()).norm(), 1e-12);
    EXPECT_NEAR(right.length(), left.length(), 1e-12);
  }
  EXPECT_EQ(back.edges.front().kind, EdgeKind::CastOn);
  EXPECT_NEAR(back.edges.front().path.length(), back.box().size().x(), 3)
      << "the whole cast-on edge";
}

// Over all pieces from seam to seam, with the band that is picked up between the fronts.
TEST(Bodice, piecesAddUpToTheFinishedBust) {
  for (Garment garment : {Garment::Pullover, Garment::Jacket}) {
    Design d;
    d.choose(Choice::Garment, garment).choose(Choice::BandMade, BandMade::PickedUp);
    const Sizes s = complete(d);
    double girth = garment == Garment::Jacket ? s[Field::ButtonBand] : 0;
    for (const Piece& p : bodicePieces(styleOf(d), draftBodice(s))) {
      Box box;
      for (const PieceEdge& e : p.edges)
        if (e.kind == EdgeKind::Underarm || e.kind == EdgeKind::Opening) box.add(e.path);
      girth += box.size().x();
    }
    EXPECT_NEAR(girth, s.finished(Field::Bust), 1e-9);
  }
}

TEST(Bodice, namesEveryPieceAndEdge) {
  for (int i = 0; i <= int(PieceId::LeftSleeve); ++i)
    EXPECT_TRUE(builtinPhrases().has("piece." + std::string(pieceKey(PieceId(i))))) << i;
  for (int i = 0; i <= int(EdgeKind::Crown); ++i)
    EXPECT_TRUE(builtinPhrases().has("edge." + std::string(edgeKey(EdgeKind(i))))) << i;
}

// That they do not cross themselves is checked where findings say which garments cannot be made
// (tests/core/seam/garment_draft_test.cpp).
TEST(Bodice, outlinesAreClosedWhateverTheStyle) {
  const auto seed = test::propertySeed(1301);
  test::RandomDesigns random(seed);
  for (int i = 0; i < 1500; ++i) {
    const Design d = random.plausible();
    for (const Piece& p : bodicePieces(styleOf(d), bodiceOf(d))) {
      SCOPED_TRACE("design " + std::to_string(i) + " " + std::string(pieceKey(p.id)));
      ASSERT_TRUE(test::allFinite(p));
      ASSERT_LT(test::widestGap(p), 1e-9);
      ASSERT_GT(test::signedArea(p), 0);
    }
  }
}

} // namespace
} // namespace scye
