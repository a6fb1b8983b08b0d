// What is told after the last piece, and the notes before one.
#include "directions/finishing_words.h"

#include "support/made.h"
#include "support/random_designs.h"

#include <gmock/gmock.h>

namespace scye::finishing_told {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

struct Made : test::Made {
  Directions directions;
  [[nodiscard]] std::vector<std::string> sentences(const char* terms = "us") const {
    return finishingSentences(Words(Wording{.phrases = builtinPhrases(), .terms = terms}),
                              directions);
  }
  [[nodiscard]] std::vector<std::string> notes(PieceId piece) const {
    std::vector<std::string> all;
    for (const DirectionLine& line : pieceLines(directions, piece, {builtinPhrases()}))
      if (line.kind == LineKind::Note) all.push_back(line.text);
    return all;
  }
};
Made made(const Design& design) {
  const test::Made m = test::made(design);
  return {m, directionsFor(m.draft, m.knit, makingUp(m.draft, m.knit))};
}
Design woman() {
  return Design().set(Field::Bust, 92);
}
Design jacket() {
  return woman().choose(Choice::Garment, Garment::Jacket);
}
std::string count(int n) {
  return std::to_string(n);
}

// A knitter with a row counter: rows from the bind-off, and the piece's own.
TEST(Finishing, pinsAreToldInRowsOfBothPieces) {
  const Made m = made(woman());
  const std::vector<std::string> told = m.sentences();
  const SeamMarks& back = m.directions.finishing.makingUp.marks[0];
  ASSERT_EQ(back.half, ArmholeHalf::Back);
  for (std::size_t i = 1; i + 1 < back.marks.size(); ++i) {
    const SeamMark& mark = back.marks[i];
    if (mark.cap.flat != Flat::None) continue;
    EXPECT_THAT(told,
                Contains(AllOf(StartsWith("Back pin " + count(int(i) + 1)),
                               HasSubstr("armhole row " + count(mark.armhole.up) + " (" +
                                         count(mark.armhole.row) + ") to cap row " +
                                         count(mark.cap.up) + " (" + count(mark.cap.row) + ")"))));
  }
  EXPECT_THAT(told, Contains(StartsWith("Shoulder seam to the crown bind-off: ")));
}

TEST(Finishing, theLeftArmholeIsToldWhereItDiffers) {
  int alike = 0, told = 0;
  test::RandomDesigns random(test::propertySeed(97));
  for (int i = 0; i < 240; ++i) {
    const Made m = made(random.plausible());
    if (m.directions.finishing.makingUp.marks.empty()) continue;
    const bool same = pinnedAlike(m.directions.finishing.makingUp.marks);
    const auto sentences = m.sentences();
    if (same)
      EXPECT_THAT(sentences, Not(Contains("Left armhole:")));
    else
      EXPECT_THAT(sentences, Contains("Left armhole:"));
    (same ? alike : told)++;
  }
  EXPECT_GT(alike, 20);
  EXPECT_GT(told, 5);
}

// Common practice: the ease beyond a centimetre is gathered, the rest eased in.
TEST(Finishing, gathersTellWhatBecomesOfTheCrown) {
  const Made m = made(woman()
                          .choose(Choice::CapTop, CapTop::Gathered)
                          .set(Field::CapEase, 9)
                          .set(Field::GatherWidth, 10));
  const std::vector<std::string> told = m.sentences();
  const DrawnIn& d = m.directions.finishing.top.lengths;
  EXPECT_NEAR(d.armhole, 10, 1e-9);
  EXPECT_NEAR(d.cap, 18.3, 0.5); // 10, 8 gathered and some of the centimetre
  EXPECT_THAT(told, Contains(AllOf(StartsWith("Gather the cap's top"), HasSubstr("up to 10 cm"))));
  EXPECT_THAT(told,
              Contains("The crown's " + builtinPhrases().length(d.crown, LengthUnit::Centimetre) +
                       " then take up " +
                       builtinPhrases().length(d.crownDrawn, LengthUnit::Centimetre) +
                       " of the armhole."));
  // What of the centimetre lies below the pins.
  const double below = (m.knit.right.cap - m.knit.right.armhole).mean() - (d.cap - d.armhole);
  EXPECT_GT(below, 0.2);
  EXPECT_LT(below, 0.9);
  EXPECT_THAT(told, Contains(StartsWith("Ease the other " +
                                        builtinPhrases().length(below, LengthUnit::Centimetre))));
}

TEST(Finishing, pleatsSayHowMuchEachTakes) {
  const Design pleated = woman()
                             .choose(Choice::CapTop, CapTop::Pleated)
                             .set(Field::CapEase, 9)
                             .set(Field::GatherWidth, 10)
                             .set(Field::Pleats, 4)
                             .set(Field::SwatchStitches, 22)
                             .set(Field::SwatchWidth, 10);
  const Made m = made(pleated);
  // The pleats take all that the cap is longer between the pins.
  const CapTopDrawn& top = m.directions.finishing.top;
  EXPECT_NEAR(4 * top.takes, top.lengths.cap - top.lengths.armhole, 1e-9);
  EXPECT_NEAR(4 * top.takes, (m.knit.right.cap - m.knit.right.armhole).mean() - 0.5, 0.5);
  EXPECT_THAT(
      m.sentences(),
      Contains(AllOf(StartsWith("Fold 4 pleats"),
                     HasSubstr("each taking " +
                               builtinPhrases().length(top.takes, LengthUnit::Centimetre) + " ("),
                     HasSubstr(", 2 on each side of the shoulder seam"))));
  EXPECT_THAT(made(Design(pleated).set(Field::Pleats, 5)).sentences(),
              Contains(AllOf(StartsWith("Fold 5 pleats"), HasSubstr("2 on each side"),
                             HasSubstr("one over it"))));
}

TEST(Finishing, aSmoothCapIsNotDrawnIn) {
  const std::vector<std::string> told = made(woman()).sentences();
  EXPECT_THAT(told, Not(Contains(HasSubstr("Gather"))));
  EXPECT_THAT(told, Not(Contains(HasSubstr("pleat"))));
}

TEST(Finishing, countsToPickUpAreThoseOfTheEdges) {
  const Made m = made(woman());
  const NeckPickUp& n = m.directions.finishing.makingUp.pickUps.neck;
  EXPECT_THAT(
      m.sentences(),
      Contains(StartsWith("Neck: with RS facing, from the right shoulder on, pick up and knit " +
                          count(n.back) + " sts along the back and " + count(n.front) +
                          " along the front, " + count(n.total()) + " in all")));
  const Made j = made(jacket());
  const NeckPickUp& f = j.directions.finishing.makingUp.pickUps.neck;
  EXPECT_THAT(j.sentences(),
              Contains(AllOf(HasSubstr(count(f.front) + " sts along the right front"),
                             HasSubstr(count(f.front) + " along the left front"))));
}

// At a V neck the bands go on into the neck's (common practice); else the neck goes over their
// tops.
TEST(Finishing, bandsComeBeforeTheNeckOrInOneWithIt) {
  const Design picked = jacket().choose(Choice::BandMade, BandMade::PickedUp);
  const auto told = made(picked).sentences();
  const auto at = [&](const char* start) {
    return std::find_if(told.begin(), told.end(),
                        [&](const std::string& s) { return s.starts_with(start); });
  };
  ASSERT_NE(at("Bands: with RS facing"), told.end());
  ASSERT_NE(at("Neck: "), told.end());
  EXPECT_LT(at("Bands: with RS facing"), at("Neck: "));
  EXPECT_THAT(told, Contains(AllOf(StartsWith("Right front"), HasSubstr("buttonholes"),
                                   HasSubstr("between two"))));
  const auto vee = made(Design(picked).choose(Choice::Neckline, Neckline::Vee)).sentences();
  EXPECT_THAT(vee, Contains(StartsWith("Bands and neck in one")));
  EXPECT_THAT(vee, Not(Contains(StartsWith("Bands: with RS facing"))));
}

TEST(Finishing, seamsTellOfFacingsAndShortRows) {
  const Made plain = made(woman());
  EXPECT_THAT(plain.sentences(), Not(Contains(HasSubstr("Fold the facing"))));
  EXPECT_THAT(plain.sentences(), Not(Contains(HasSubstr("short rows"))));
  const Made m = made(woman()
                          .choose(Choice::Hem, HemMade::Faced)
                          .choose(Choice::ShoulderWork, ShoulderWork::ShortRows)
                          .choose(Choice::BustShaping, BustShaping::ShortRows)
                          .set(Field::BustDepth, 4));
  const auto told = m.sentences();
  EXPECT_THAT(told, Contains(StartsWith("Fold the facing")));
  EXPECT_THAT(told, Contains(AllOf(StartsWith("Sew the shoulder seams"), HasSubstr("short rows"))));
  EXPECT_THAT(told, Contains(AllOf(StartsWith("The short rows over the bust"),
                                   HasSubstr(count(m.directions.finishing.sideBack) + " rows"))));
  EXPECT_THAT(m.notes(PieceId::Front), Contains(HasSubstr("work the wrap together with its st")));
  EXPECT_THAT(m.notes(PieceId::Back), Not(Contains(HasSubstr("wrap"))));
}

// The side seam of a half front lies at the edge that short rows over the bust do not reach.
TEST(Finishing, theSideOfAJacketsFrontIsTheOneAwayFromItsOpening) {
  const Made m =
      made(jacket().choose(Choice::BustShaping, BustShaping::ShortRows).set(Field::BustDepth, 4));
  const Finishing& f = m.directions.finishing;
  ASSERT_GT(f.bustLonger, 0);
  EXPECT_EQ(f.sideFront, f.sideBack);
}

TEST(Finishing, anUnevenSeamIsTold) {
  Made m = made(woman());
  m.directions.finishing.sideFront = m.directions.finishing.sideBack + 4;
  const std::string recipe =
      seamRecipe(Words(Wording{builtinPhrases()}),
                 sewRows(m.directions.finishing.sideBack, m.directions.finishing.sideFront));
  EXPECT_THAT(m.sentences(),
              Contains(AllOf(StartsWith("The back's side edges"), HasSubstr(recipe))));
}

TEST(SeamRecipe, isInWords) {
  const Words words{Wording{builtinPhrases()}};
  EXPECT_EQ(seamRecipe(words, sewRows(120, 126)), "20 rows to 21 rows, 6 times");
  EXPECT_EQ(seamRecipe(words, sewRows(100, 103)),
            "34 rows to 35 rows, once, then 33 rows to 34 rows, 2 times");
  EXPECT_EQ(seamRecipe(words, sewRows(5, 10)), "1 row to 2 rows, 5 times");
  EXPECT_EQ(seamRecipe(words, sewRows(80, 80)), "row to row");
}

TEST(PieceNotes, tellTheButtonholesThatAreInTheLines) {
  const Made m = made(jacket());
  const Buttonholes& holes = m.directions.finishing.buttonholes;
  ASSERT_FALSE(holes.rows.empty());
  const auto right = m.notes(PieceId::RightFront);
  EXPECT_THAT(right, Contains(StartsWith(count(int(holes.rows.size())) + " buttonholes over " +
                                         count(holes.stitches.value()))));
  EXPECT_THAT(right, Contains(StartsWith("A buttonhole over " + count(holes.stitches.value()) +
                                         " sts in one row")));
  ASSERT_GT(holes.bustHole, 0);
  EXPECT_THAT(right, Contains("Counted from below, number " + count(holes.bustHole) +
                              " lies at the bust."));
  EXPECT_THAT(m.notes(PieceId::LeftFront), Not(Contains(HasSubstr("buttonhole"))));
  const Made chosen = made(jacket().choose(Choice::ButtonSide, ButtonSide::Left));
  EXPECT_THAT(chosen.notes(PieceId::LeftFront), Contains(HasSubstr("buttonholes over")));
}

} // namespace
} // namespace scye::finishing_told
