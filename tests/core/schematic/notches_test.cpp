#include "schematic/notches.h"

#include "pictures.h"
#include "schematic/cap_shape.h"
#include "support/random_designs.h"

#include <gmock/gmock.h>

namespace scye::notches {
namespace {

double distanceTo(const Path& path, const Vec2& p) {
  double least = 1e300;
  const std::vector<Vec2> points = path.flattened(400);
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Vec2 d = points[i] - points[i - 1];
    const double t = d.squaredNorm() > 0
                         ? std::clamp((p - points[i - 1]).dot(d) / d.squaredNorm(), 0.0, 1.0)
                         : 0.0;
    least = std::min(least, (points[i - 1] + t * d - p).norm());
  }
  return least;
}

TEST(PieceNotches, LieOnTheOutlineWithTheSameNumbersOnBothPieces) {
  test::RandomDesigns designs(test::propertySeed(63));
  for (int i = 0; i < 150; ++i) {
    const GarmentDraft draft = draftGarment(designs.plausible());
    if (!draft.cap.found) continue;
    std::vector<int> onBody, onCap;
    for (const Piece& piece : draft.pieces)
      for (const PieceNotch& n : pieceNotches(draft, piece.id)) {
        ASSERT_LT(distanceTo(piece.outline(), n.at), 1e-3) << i << " " << pieceKey(piece.id);
        ASSERT_NEAR(n.inward.norm(), 1, 1e-9);
        // On the sleeve the back's notches lie left of the shoulder mark; on bodies each edge has
        // them all.
        const bool frontPiece = piece.id != PieceId::Back && piece.id != PieceId::Sleeve;
        if (piece.id == PieceId::Sleeve && n.at.x() < draft.cap.crownMark)
          onCap.push_back(n.number);
        if (piece.id == PieceId::Back && n.at.x() < 0) onBody.push_back(n.number);
        if (frontPiece) {
          EXPECT_GE(n.number, 1);
        }
      }
    EXPECT_EQ(onBody, onCap) << i;
  }
}

// A step along `inward` leads into the fabric.
TEST(PieceNotches, PointIntoTheFabric) {
  for (const Garment garment : {Garment::Pullover, Garment::Jacket}) {
    const GarmentDraft draft =
        draftGarment(Design().set(Field::Bust, 92).choose(Choice::Garment, garment));
    for (const Piece& piece : draft.pieces)
      for (const PieceNotch& n : pieceNotches(draft, piece.id)) {
        // Crossings of a ray to the left with the outline: odd within.
        const Vec2 p = n.at + 0.3 * n.inward;
        const std::vector<Vec2> points = piece.outline().flattened(200);
        int crossings = 0;
        for (std::size_t k = 1; k < points.size(); ++k) {
          const Vec2 &a = points[k - 1], &b = points[k];
          if ((a.y() > p.y()) == (b.y() > p.y())) continue;
          crossings += a.x() + (p.y() - a.y()) / (b.y() - a.y()) * (b.x() - a.x()) < p.x();
        }
        EXPECT_EQ(crossings % 2, 1) << pieceKey(piece.id) << " " << n.number;
      }
  }
}

TEST(PieceSchematic, NumbersItsNotchesUnlessTheyAreUnwanted) {
  const GarmentDraft draft = draftGarment(Design().set(Field::Bust, 92));
  const auto numbers = [&](const SchematicOptions& o) {
    std::size_t count = 0;
    for (const Group& g : pieceSchematic(draft, builtinPhrases(), o).groups)
      for (const Label& l : g.labels)
        count += l.role == Role::Notch;
    return count;
  };
  std::size_t all = 0;
  for (const Piece& piece : draft.pieces)
    all += pieceNotches(draft, piece.id).size();
  EXPECT_GE(numbers({}), all - 2);
  SchematicOptions none;
  none.notches = false;
  EXPECT_EQ(numbers(none), 0u);
  SchematicOptions bare;
  bare.dimensions = false;
  EXPECT_EQ(numbers(bare), 0u);
}

TEST(FitComparison, ShowsWhereItIsGathered) {
  for (const CapTop top : {CapTop::Smooth, CapTop::Gathered, CapTop::Pleated}) {
    const GarmentDraft draft =
        draftGarment(Design().set(Field::Bust, 92).choose(Choice::CapTop, top));
    const Picture picture = fitComparison(draft, builtinPhrases(), {});
    int told = 0;
    for (const Group& g : picture.groups)
      for (const Label& l : g.labels)
        told += l.text.ends_with(top == CapTop::Pleated ? " in pleats" : " gathered");
    EXPECT_EQ(told, top == CapTop::Smooth ? 0 : 2);
    EXPECT_THAT(test::overlappingLabels(picture), testing::IsEmpty());
    EXPECT_THAT(test::badWords(picture), testing::IsEmpty());
  }
}

TEST(CapShapePicture, FollowsItsTwoFullnesses) {
  const auto picture = [](double lower, double upper, std::optional<Field> lit = {}) {
    SchematicOptions o;
    o.lit = lit;
    return capShapePicture(draftGarment(Design()
                                            .set(Field::Bust, 92)
                                            .set(Field::LowerFullness, lower)
                                            .set(Field::UpperFullness, upper)),
                           builtinPhrases(), o);
  };
  const Picture flat = picture(0.3, 0.4), full = picture(0.6, 0.4);
  EXPECT_THAT(test::badWords(full), testing::IsEmpty());
  EXPECT_THAT(test::overlappingLabels(full), testing::IsEmpty());
  const auto arms = [](const Picture& p) { return test::strokesOf(p, Role::Measure); };
  ASSERT_EQ(arms(flat).size(), 4u); // two arms, two knobs
  EXPECT_LT(arms(flat)[0]->path.length(), arms(full)[0]->path.length());
  EXPECT_EQ(full.groups[0].labels[1].text, "lower fullness at the underarm, 60 %");
  EXPECT_EQ(test::strokesOf(picture(0.5, 0.5, Field::UpperFullness), Role::Lit).size(), 2u);
  EXPECT_TRUE(test::strokesOf(full, Role::Lit).empty());
}

// The drawn edge is the drafted one.
TEST(CapShapePicture, IsTheDraftedHalf) {
  const GarmentDraft draft = draftGarment(Design().set(Field::Bust, 92));
  const Picture picture = capShapePicture(draft, builtinPhrases(), {});
  const auto outline = test::strokesOf(picture, Role::Outline);
  ASSERT_EQ(outline.size(), 1u);
  EXPECT_NEAR(outline[0]->path.length(), capEdge(draft.cap.back, draft.cap.height).first, 1e-9);
}

} // namespace
} // namespace scye::notches
