// Words that are longer by 40 %: the pictures still keep them apart, and none stays in English.
#include "core/schematic/guide_checks.h"
#include "core/schematic/pictures.h"
#include "schematic/chart.h"
#include "schematic/guide.h"
#include "schematic/guide_sheet.h"
#include "schematic/schematic.h"
#include "support/made.h"
#include "support/outline.h"
#include "support/trial_language.h"

#include <gmock/gmock.h>

namespace scye {
namespace {

using test::firstEnglishWord;
using test::trialPhrases;

void expectTranslated(const Picture& picture) {
  for (const Group& g : picture.groups) {
    EXPECT_EQ(firstEnglishWord(g.title), "");
    for (const Label& l : g.labels)
      EXPECT_EQ(firstEnglishWord(l.text), "") << l.text;
  }
}

TEST(LongWords, stayApartInTheMeasuringGuide) {
  for (const Source where : {Source::Body, Source::Garment})
    for (const Figure figure : {Figure::Woman, Figure::Baby}) {
      const double height =
          measuringOverview(where, figure, trialPhrases(), 1).box().size().y() / 35;
      for (const Field f : measuredOn(where)) {
        const Picture picture = measuringPicture(f, where, figure, trialPhrases(), height);
        expectTranslated(picture);
        test::expectWordsApart(picture, std::string(info(f).key));
      }
      test::expectWordsApart(measuringOverview(where, figure, trialPhrases(), height), "overview");
    }
}

TEST(LongWords, stayApartAndOnTheSheetToFillIn) {
  for (const Source where : {Source::Body, Source::Garment})
    for (const LengthUnit unit : {LengthUnit::Centimetre, LengthUnit::Inch})
      for (const Picture& page : measuringSheet(trialPhrases(), where, Figure::Child, unit)) {
        expectTranslated(page);
        test::expectWordsApart(page, page.title);
        const Box box = page.box();
        EXPECT_GE(box.low.x(), kSheetBox.left - 1e-9);
        EXPECT_LE(box.high.x(), kSheetBox.right + 1e-9);
        EXPECT_GE(box.low.y(), kSheetBox.bottom - 1e-9);
      }
}

TEST(LongWords, stayApartOnPiecesComparisonAndCharts) {
  for (const Garment garment : {Garment::Pullover, Garment::Jacket}) {
    Design design;
    design.choose(Choice::Garment, garment).set(Field::Bust, 94);
    const test::Made made = test::made(design);
    std::vector<Picture> pictures{pieceSchematic(made.draft, trialPhrases(), {}),
                                  fitComparison(made.draft, trialPhrases(), {})};
    for (const KnitPiece& piece : made.knit.pieces)
      pictures.push_back(chartPicture(piece, made.knit.lattice.size, trialPhrases()));
    for (const Picture& picture : pictures) {
      expectTranslated(picture);
      EXPECT_THAT(test::overlappingLabels(picture), testing::IsEmpty());
    }
  }
}

} // namespace
} // namespace scye
