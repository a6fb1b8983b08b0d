// The sentences as they are read; their patterns stand in resources/phrases/en/directions.txt.
#include "core/directions/random_pieces.h"
#include "directions/rib_words.h"
#include "directions/step_words.h"

#include <gmock/gmock.h>

namespace scye::wording {
namespace {

using testing::HasSubstr;
using testing::Not;

Action act(ActKind kind, EdgeSide side, int k = 1) {
  return {kind, side, Stitches(k), Shapes::Armhole};
}
constexpr EdgeSide R = EdgeSide::Right, L = EdgeSide::Left;
constexpr ActKind kDec = ActKind::Decrease, kInc = ActKind::Increase, kOff = ActKind::BindOff;

std::string row(std::vector<Action> actions, int number, int after,
                const Wording& wording = {builtinPhrases()}) {
  return rowText(Words(wording), actions, number, Stitches(after));
}

// Place and name of decreases one stitch in from the edge, leaning with it; increases likewise:
// common practice.
TEST(Wording, DecreasesAreNamedAndPlaced) {
  EXPECT_EQ(row({act(kDec, R), act(kDec, L)}, 17, 30), "k1, ssk, work to last 3 sts, k2tog, k1");
  EXPECT_EQ(row({act(kDec, R)}, 17, 30), "k1, ssk, work to end");
  EXPECT_EQ(row({act(kDec, L)}, 17, 30), "work to last 3 sts, k2tog, k1");
  EXPECT_EQ(row({act(kDec, R), act(kDec, L)}, 18, 30), "p1, p2tog, work to last 3 sts, ssp, p1");
  EXPECT_EQ(row({act(kDec, L)}, 18, 30), "p1, p2tog, work to end");
  EXPECT_EQ(row({act(kDec, R)}, 18, 30), "work to last 3 sts, ssp, p1");
}

TEST(Wording, IncreasesAreNamedAndPlaced) {
  EXPECT_EQ(row({act(kInc, R), act(kInc, L)}, 17, 30), "k1, M1R, work to last st, M1L, k1");
  EXPECT_EQ(row({act(kInc, L)}, 18, 30), "p1, M1LP, work to end");
  EXPECT_EQ(row({act(kDec, R), act(kInc, L)}, 17, 30), "k1, ssk, work to last st, M1L, k1");
}

TEST(Wording, WithTooFewStitchesNoneIsKeptBeside) {
  EXPECT_EQ(row({act(kDec, R), act(kDec, L)}, 17, 4), "k1, ssk, work to last 3 sts, k2tog, k1");
  EXPECT_EQ(row({act(kDec, R), act(kDec, L)}, 17, 3), "ssk, work to last 2 sts, k2tog");
  EXPECT_EQ(row({act(kDec, L)}, 18, 1), "p2tog, work to end");
  EXPECT_EQ(row({act(kOff, R, 5), act(kDec, L)}, 17, 2),
            "bind off 5 sts, work to last 2 sts, k2tog");
}

TEST(Wording, BindOffsComeFirstInTheirRow) {
  EXPECT_EQ(row({act(kOff, R, 5)}, 17, 30), "bind off 5 sts, work to end");
  EXPECT_EQ(row({act(kOff, R, 1), act(kInc, L)}, 17, 30),
            "bind off 1 st, work to last st, M1L, k1");
  EXPECT_EQ(row({act(kOff, L, 6)}, 18, 0), "bind off the last 6 sts and fasten off");
  EXPECT_EQ(row({act(ActKind::Close, R, 20)}, 17, 0),
            "bind off the remaining 20 sts and fasten off");
}

TEST(Wording, ADividedPieceTellsWhatIsHeld) {
  EXPECT_EQ(row({act(ActKind::Rest, L, 54), act(kOff, R, 6)}, 17, 14),
            "bind off 6 sts, work until there are 14 sts on the right needle, turn; leave the "
            "other 54 sts on a holder");
  EXPECT_EQ(row({act(ActKind::Rest, L, 54), act(kDec, L)}, 17, 14),
            "work 12 sts, k2tog, k1, turn; leave the other 54 "
            "sts on a holder");
  EXPECT_EQ(row({act(ActKind::Rejoin, R, 54), act(kOff, R, 34)}, 17, 20),
            "with RS facing, return the 54 held sts to the needle and join the yarn, bind off 34 "
            "sts, work to end");
}

PieceSteps of(PieceId id) {
  PieceSteps piece;
  piece.id = id;
  return piece;
}

Action from(int from, Action action) {
  action.from = Stitches(from);
  return action;
}

// Wrap and turn, and what is told of it: common practice.
TEST(Wording, ShortRowsSayWhereTheyAreTurned) {
  constexpr ActKind kWait = ActKind::Wait;
  EXPECT_EQ(row({act(kWait, L, 6)}, 17, 30), "work to last 6 sts, w&t");
  EXPECT_EQ(row({act(kWait, R, 1)}, 18, 30), "work to last st, w&t");
  EXPECT_EQ(row({from(6, act(kWait, L, 5))}, 17, 30), "work to 5 sts before the wrapped st, w&t");
  EXPECT_EQ(row({from(6, act(kWait, L, 1))}, 17, 30), "work to 1 st before the wrapped st, w&t");
  EXPECT_EQ(row({act(ActKind::TakeUp, L, 11)}, 17, 30), "work to end, picking up the wraps");
  EXPECT_EQ(row({act(kDec, R), act(kWait, L, 6)}, 17, 30), "k1, ssk, work to last 6 sts, w&t");
  EXPECT_EQ(row({act(kOff, R, 3), act(ActKind::TakeUp, L, 6)}, 17, 30),
            "bind off 3 sts, work to end, picking up the wraps");
  EXPECT_EQ(row({from(6, act(ActKind::Rest, L, 54)), act(kDec, L)}, 17, 14),
            "work 12 sts, k2tog, k1, turn; leave the other 60 sts on a holder");
}

TEST(Wording, AStepTellsWhatWaits) {
  Step step;
  step.kind = StepKind::Row, step.first = step.last = 18, step.actions = {act(ActKind::Wait, R, 6)};
  step.stitches = Stitches(1), step.waiting = Stitches(12);
  EXPECT_EQ(stepText(Words{Wording{builtinPhrases()}}, step, {}, of(PieceId::Front)),
            "Row 18 (WS): work to last 6 sts, w&t (1 st, 12 waiting).");
}

TEST(Wording, ASpreadRowCountsItsPlaces) {
  const auto spread = [](int before, int more) {
    return row({act(ActKind::IncreaseEvenly, R, more)}, 7, before + more);
  };
  // Gaps between the new stitches and the edges, one more than new stitches: 9 = 3 + 3 + 3.
  EXPECT_EQ(spread(9, 2), "M1 after every 3 sts, 2 times, work to end");
  EXPECT_EQ(spread(10, 2), "M1 after the next 4 sts, then M1 after the next 3 sts, work to end");
  EXPECT_EQ(spread(50, 40), "M1 after every 2 sts, 5 times, then M1 after every st, 31 times, then "
                            "M1 after every 2 sts, 4 times, "
                            "work to end");
  EXPECT_EQ(spread(9, 8), "M1 after every st, 8 times, work to end");
}

TEST(Wording, AButtonholeIsCountedFromItsEdge) {
  constexpr ActKind kHole = ActKind::Buttonhole;
  EXPECT_EQ(row({from(2, act(kHole, R, 3))}, 17, 30),
            "work 2 sts, make a buttonhole over the next 3 sts, work to end");
  EXPECT_EQ(row({from(2, act(kHole, L, 3))}, 17, 30),
            "work to last 5 sts, make a buttonhole over the next 3 sts, work to end");
  EXPECT_EQ(row({from(1, act(kHole, R, 1)), act(kDec, L)}, 17, 30),
            "work 1 st, make a buttonhole over the next 1 st, work to last 3 sts, k2tog, k1");
  EXPECT_EQ(row({act(kDec, R), from(2, act(kHole, L, 3))}, 17, 30),
            "k1, ssk, work to last 5 sts, make a buttonhole over the next 3 sts, work to end");
}

// Counted off by hand: the columns of each row, and the stitches that they make.
TEST(Wording, ARibIsWrittenOutOnBothSides) {
  const Words words{Wording{builtinPhrases()}};
  const auto row = [&](RibKind kind, RibSides sides, int selvedge, int stitches, bool rightSide) {
    const RibStitch rib = ribStitch(kind);
    const RibEnds ends = fittedEnds(rib, sides, Stitches(selvedge), Stitches(stitches));
    EXPECT_TRUE(canWriteOut(rib, ends, Stitches(stitches)));
    return ribRowText(words, rib, ends, Stitches(stitches), rightSide);
  };
  using enum RibKind;
  using enum RibSides;
  EXPECT_EQ(row(TwoTwo, BothSewn, 1, 118, true), "k2, *p2, k2; repeat from * to end");
  EXPECT_EQ(row(TwoTwo, BothSewn, 1, 118, false), "p2, *k2, p2; repeat from * to end");
  EXPECT_EQ(row(TwoTwo, BothSewn, 0, 20, true), "k1, *p2, k2; repeat from * to last 3 sts, p2, k1");
  EXPECT_EQ(row(TwoTwo, BothSewn, 2, 24, false),
            "p3, *k2, p2; repeat from * to last 5 sts, k2, p3");
  EXPECT_EQ(row(OneOne, BothSewn, 1, 20, true), "k2, *p1, k1; repeat from * to end");
  EXPECT_EQ(row(OneOne, BothSewn, 0, 20, true), "k1, *p1, k1; repeat from * to last st, p1");
  EXPECT_EQ(row(ThreeOne, LeftFree, 1, 19, true), "k3, *p1, k3; repeat from * to end");
  EXPECT_EQ(row(Seed, BothSewn, 1, 20, true), "*k1, p1; repeat from * to end");
  EXPECT_EQ(row(Seed, BothSewn, 1, 20, false), "*p1, k1; repeat from * to end");
  EXPECT_EQ(row(Seed, BothSewn, 1, 21, false), "*k1, p1; repeat from * to last st, k1");
  // Too many by two: they lie at the seam.
  EXPECT_EQ(row(TwoTwo, BothSewn, 1, 120, true),
            "k3, *p2, k2; repeat from * to last 5 sts, p2, k3");
  EXPECT_EQ(row(TwoTwo, BothSewn, 1, 6, true), "k2, *p2, k2; repeat from * to end");
}

TEST(Wording, AFacingIsMeasuredFromItsFold) {
  const Words words{Wording{builtinPhrases()}};
  Step step;
  step.first = 1, step.last = 6, step.stitches = Stitches(40), step.fromCastOn = 1.5;
  step.kind = StepKind::Facing;
  EXPECT_EQ(stepText(words, step, {}, of(PieceId::Back)),
            "Rows 1 to 6: work the facing, ending with a WS row (40 sts).");
  step.kind = StepKind::Fold, step.first = step.last = 7;
  EXPECT_EQ(stepText(words, step, {}, of(PieceId::Back)),
            "Row 7 (RS): purl across, for the fold line (40 sts).");
  step.kind = StepKind::Even, step.first = 8, step.last = 20, step.fromCastOn = 5,
  step.fromFold = 3.5;
  EXPECT_EQ(stepText(words, step, {}, of(PieceId::Back)),
            "Rows 8 to 20: work 13 rows even, ending with a WS row; the piece measures 3.5 cm from "
            "the fold (40 sts).");
}

TEST(Wording, TermsAreData) {
  EXPECT_EQ(row({act(kOff, R, 5)}, 17, 30, {.phrases = builtinPhrases(), .terms = "uk"}),
            "cast off 5 sts, work to end");
  Phrases phrases = builtinPhrases();
  EXPECT_TRUE(phrases
                  .add("dir.de.row.bindOff = {k, plural, one {# M.} other {# M.}} "
                       "abketten\ndir.de.row.toEnd = die R. beenden\n")
                  .empty());
  EXPECT_EQ(row({act(kOff, R, 5)}, 17, 30, {.phrases = phrases, .terms = "de"}),
            "5 M. abketten, die R. beenden");
  EXPECT_EQ(row({act(kDec, R)}, 17, 30, {.phrases = phrases, .terms = "de"}),
            "k1, ssk, die R. beenden");
}

Step repeated(int every, int times) {
  Step step;
  step.kind = StepKind::Repeat, step.first = 18, step.last = 17 + every * times, step.like = 17;
  step.every = every, step.times = times, step.actions = {act(kDec, R)},
  step.stitches = Stitches(1);
  return step;
}

TEST(Wording, RepeatsNameTheRowTheyRepeat) {
  const Words words{Wording{builtinPhrases()}};
  const auto text = [&](int every, int times) {
    return stepText(words, repeated(every, times), {}, of(PieceId::Back));
  };
  EXPECT_EQ(text(2, 3),
            "Rows 18 to 23: decrease as on row 17 on every 2nd row, 3 times more (1 st).");
  EXPECT_EQ(text(22, 2),
            "Rows 18 to 61: decrease as on row 17 on every 22nd row, 2 times more (1 st).");
  EXPECT_EQ(text(6, 1), "Rows 18 to 23: work 5 rows even, then decrease as on row 17 (1 st).");
  EXPECT_EQ(text(1, 1),
            "Row 18 (WS): decrease as on row 17; on WS rows: work to last 2 sts, ssp (1 st).");
  EXPECT_EQ(text(1, 2), "Rows 18 and 19: decrease as on row 17 on every row, 2 times more; on WS "
                        "rows: work to last 2 sts, "
                        "ssp (1 st).");
}

// Every text that can come out, in both terms and units.
class EveryText : public testing::Test {
protected:
  void check(const Directions& d) {
    for (const char* terms : {"us", "uk"})
      for (const LengthUnit unit : {LengthUnit::Centimetre, LengthUnit::Inch}) {
        const Wording wording{.phrases = builtinPhrases(), .terms = terms, .unit = unit};
        for (const DirectionLine& line : directionLines(d, wording))
          check(line, terms);
      }
  }

private:
  static void check(const DirectionLine& line, const std::string& terms) {
    EXPECT_EQ(line.text.find_first_of("[]{}"), std::string::npos) << line.text;
    EXPECT_FALSE(line.text.empty());
    EXPECT_THAT(line.text, Not(HasSubstr(terms == "uk" ? "bind off" : "cast off")));
    if (line.kind != LineKind::Step) return;
    if (line.last == 0) { // the cast-on tells its stitches once
      EXPECT_THAT(line.text,
                  testing::ContainsRegex("^(Cast on) " + std::to_string(line.stitches.value()) +
                                         " sts?( with (the smaller|[0-9.]+ mm) needles)?\\.$"));
      return;
    }
    const std::string n = std::to_string(line.stitches.value());
    EXPECT_THAT(line.text, testing::ContainsRegex(" \\(" + n + (n == "1" ? " st" : " sts") +
                                                  "(, [0-9]+ waiting)?\\)\\.$"));
    const std::string first = std::to_string(line.first);
    EXPECT_TRUE(line.text.starts_with("Row " + first + " (") ||
                line.text.starts_with("Rows " + first + " to ") ||
                line.text.starts_with("Rows " + first + " and "))
        << line.text;
  }
};

TEST_F(EveryText, OfGarmentsIsComplete) {
  test::RandomDesigns designs(test::propertySeed(41));
  for (int i = 0; i < 60; ++i) {
    const GarmentDraft draft = draftGarment(designs.plausible());
    const KnitGarment garment = knitGarment(draft);
    check(directionsFor(draft, garment, makingUp(draft, garment)));
  }
}

TEST_F(EveryText, OfInventedPiecesIsComplete) {
  test::RandomPieces pieces(test::propertySeed(42));
  Directions d;
  d.size = {0.45, 0.33};
  for (int i = 0; i < 200; ++i) {
    d.pieces = {stepsOf(pieces.next(), d.size)};
    check(d);
  }
}

} // namespace
} // namespace scye::wording
