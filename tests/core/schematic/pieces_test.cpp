#include "schematic/schematic.h"

#include "pictures.h"
#include "support/random_designs.h"

#include <gmock/gmock.h>

#include <cmath>

namespace scye {
namespace {

std::vector<Design> shapes() {
  std::vector<Design> designs;
  for (const Garment garment : {Garment::Pullover, Garment::Jacket})
    for (const Neckline neck : {Neckline::Round, Neckline::Vee, Neckline::Square, Neckline::Boat})
      for (const double bust : {46.0, 92.0, 150.0}) {
        Design d;
        d.choose(Choice::Garment, garment).choose(Choice::Neckline, neck).set(Field::Bust, bust);
        if (bust < 50) d.choose(Choice::Figure, Figure::Baby);
        if (bust > 100) d.choose(Choice::SideSeam, SideSeam::Shaped);
        designs.push_back(d);
        d.set(Field::SleeveLength, 8);
        designs.push_back(d);
      }
  return designs;
}

// The rate over random designs is printed; at the letters of the default it is to be none.
TEST(PieceSchematic, FiguresNeverLieOnOneAnother) {
  test::RandomDesigns designs(test::propertySeed(61));
  const int count = 1500;
  int bad = 0;
  for (int i = 0; i < count; ++i) {
    const Design design = designs.plausible();
    const GarmentDraft draft = draftGarment(design);
    SchematicOptions o;
    o.unit = i % 2 ? LengthUnit::Inch : LengthUnit::Centimetre;
    o.perRow = i % 4;
    const Picture picture = pieceSchematic(draft, builtinPhrases(), o);
    EXPECT_TRUE(test::finite(picture)) << i;
    const auto found = test::overlappingLabels(picture);
    EXPECT_THAT(found, testing::IsEmpty()) << "design " << i;
    bad += !found.empty();
  }
  std::cout << bad << " of " << count << " pictures with figures on one another\n";
}

TEST(PieceSchematic, FiguresOfEveryShapeStandClear) {
  for (const Design& design : shapes()) {
    const Picture picture = pieceSchematic(draftGarment(design), builtinPhrases(), {});
    EXPECT_THAT(test::overlappingLabels(picture), testing::IsEmpty());
    EXPECT_THAT(test::badWords(picture), testing::IsEmpty());
    const Box box = picture.box();
    for (const Group& g : picture.groups)
      for (const HotSpot& h : g.hotSpots) {
        EXPECT_TRUE((h.box.low.array() >= box.low.array() - 1e-9).all());
        EXPECT_TRUE((h.box.high.array() <= box.high.array() + 1e-9).all());
      }
  }
}

// Every figure is the length of what it measures: the bust's ends lie on the outline.
TEST(PieceSchematic, MeasuresHalfFrontsFromTheirOwnFrontEdge) {
  for (const BandMade band : {BandMade::KnittedOn, BandMade::PickedUp}) {
    Design design;
    design.set(Field::Bust, 92)
        .choose(Choice::Garment, Garment::Jacket)
        .choose(Choice::BandMade, band);
    const GarmentDraft draft = draftGarment(design);
    const Piece& front = *draft.piece(PieceId::LeftFront);
    const double hem = front.edges.front().path.length();
    const Picture picture = pieceSchematic(draft, builtinPhrases(), {});
    for (const Group& g : picture.groups) {
      if (g.piece != PieceId::LeftFront) continue;
      EXPECT_TRUE(std::any_of(g.labels.begin(), g.labels.end(), [&](const Label& l) {
        return l.text == builtinPhrases().length(hem, LengthUnit::Centimetre);
      }));
    }
  }
}

TEST(PieceSchematic, PiecesStandApart) {
  for (const int perRow : {0, 1, 2, 3}) {
    SchematicOptions o;
    o.perRow = perRow;
    Design jacket;
    jacket.set(Field::Bust, 110).choose(Choice::Garment, Garment::Jacket);
    const Picture picture = pieceSchematic(draftGarment(jacket), builtinPhrases(), o);
    for (std::size_t i = 0; i < picture.groups.size(); ++i)
      for (std::size_t j = 0; j < i; ++j) {
        const Box a = picture.groups[i].box(), b = picture.groups[j].box();
        const Vec2 shared = a.high.cwiseMin(b.high) - a.low.cwiseMax(b.low);
        EXPECT_LT(shared.minCoeff(), 0) << i << " and " << j;
      }
  }
}

TEST(PieceSchematic, LightsWhatTheValueInHandChanges) {
  Design design;
  design.set(Field::Bust, 92);
  SchematicOptions o;
  o.lit = Field::EaseBust;
  const GarmentDraft draft = draftGarment(design);
  EXPECT_FALSE(test::strokesOf(pieceSchematic(draft, builtinPhrases(), o), Role::Lit).empty());
  o.lit.reset();
  EXPECT_TRUE(test::strokesOf(pieceSchematic(draft, builtinPhrases(), o), Role::Lit).empty());
}

TEST(FitComparison, WordsNeverLieOnOneAnother) {
  test::RandomDesigns designs(test::propertySeed(62));
  for (int i = 0; i < 300; ++i) {
    const GarmentDraft draft = draftGarment(designs.plausible());
    const KnitGarment knitted = i % 2 ? knitGarment(draft) : KnitGarment{};
    SchematicOptions o;
    o.textHeight = designs.uniform(0.4, 0.9);
    o.perRow = i % 3;
    if (i % 2) o.knitted = &knitted;
    const Picture picture = fitComparison(draft, builtinPhrases(), o);
    EXPECT_THAT(test::overlappingLabels(picture), testing::IsEmpty()) << i;
    EXPECT_THAT(test::badWords(picture), testing::IsEmpty()) << i;
  }
}

} // namespace
} // namespace scye
