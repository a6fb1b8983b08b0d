// What a technical editor holds against each other (several editors' published checklists): what is
// laid out is what is used, counts add up, ribs meet at the seams, sizes are those that are
// knitted.
#include "core/directions/reader.h"
#include "directions/directions.h"
#include "garment/derived.h"
#include "support/random_designs.h"

#include <gmock/gmock.h>

#include <regex>

namespace scye::pattern {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string textOf(const Derived& d) {
  return directionsText(d.directions, {builtinPhrases()});
}

// The number after `words`, or nothing.
std::optional<int> figureAfter(const std::string& text, const std::string& words) {
  const auto at = text.find(words);
  if (at == text.npos) return std::nullopt;
  return std::stoi(text.substr(at + words.size()));
}

int countOf(const std::string& text, const std::string& what) {
  int n = 0;
  for (std::size_t at = text.find(what); at != text.npos; at = text.find(what, at + 1))
    ++n;
  return n;
}

// Buttonholes in the lines of a front or told for a band, and the loop of a slit.
int fastenings(const std::string& text) {
  int n = countOf(text, ", make a buttonhole over the next ");
  std::smatch found;
  if (std::regex_search(text, found, std::regex("make ([0-9]+)\\s+buttonholes\\s+over")))
    n += std::stoi(found[1]);
  else if (std::regex_search(text, std::regex("the\\s+middle\\s+one,\\s+make\\s+a\\s+buttonhole")))
    n += 1;
  if (std::regex_search(text, std::regex("a\\s+button\\s+and\\s+a\\s+loop"))) n += 1;
  return n;
}

TEST(Pattern, ButtonsAreAsManyAsTheirHoles) {
  test::RandomDesigns designs(test::propertySeed(71));
  int buttoned = 0;
  for (int i = 0; i < 500; ++i) {
    const std::string text = textOf(derive(designs.plausible()));
    const int told = figureAfter(text, "\nButtons: ").value_or(0) +
                     figureAfter(text, "\nButton: ").value_or(0); // for holes, and for a loop
    ASSERT_EQ(told, fastenings(text)) << "design " << i << "\n" << text;
    buttoned += told > 0;
  }
  EXPECT_GT(buttoned, 100);
}

// As a knitter sees the rib from the right side, from the left end of the row; without what the
// seams take.
std::vector<bool> seen(const reader::PieceRead& piece, int selvedgeLeft, int selvedgeRight) {
  std::vector<bool> row(piece.rib.rbegin(), piece.rib.rend());
  row.erase(row.end() - selvedgeRight, row.end());
  row.erase(row.begin(), row.begin() + selvedgeLeft);
  return row;
}

// Columns over and over round what is sewn together: each is followed by its like a repeat later.
void expectRepeats(const std::vector<bool>& row, int repeat, bool round) {
  const std::size_t n = row.size();
  ASSERT_TRUE(!round || n % std::size_t(repeat) == 0) << n;
  for (std::size_t i = 0; i + (round ? 0 : std::size_t(repeat)) < n; ++i)
    ASSERT_EQ(row[i], row[(i + std::size_t(repeat)) % n]) << "stitch " << i << " of " << n;
}

const reader::PieceRead& piece(const reader::Reading& reading, std::string_view name) {
  for (const reader::PieceRead& p : reading.pieces)
    if (p.name.starts_with(name)) return p;
  ADD_FAILURE() << "no " << name;
  return reading.pieces.front();
}

void append(std::vector<bool>& to, const std::vector<bool>& more) {
  to.insert(to.end(), more.begin(), more.end());
}

// Common practice: a rib goes on across every seam. Back, front and sleeve are laid side by side as
// they are sewn.
TEST(Pattern, RibsMeetAtTheSeams) {
  for (const auto& [kind, repeat] : {std::pair{RibKind::TwoTwo, 4},
                                     {RibKind::OneOne, 2},
                                     {RibKind::ThreeOne, 4},
                                     {RibKind::Seed, 2}})
    for (const Garment garment : {Garment::Pullover, Garment::Jacket})
      for (int selvedge = 0; selvedge <= 2; ++selvedge)
        for (const double stitches : {12.0, 16.0, 18.0, 22.0, 27.0, 36.0})
          for (const double bust : {72.0, 91.0, 118.0}) {
            SCOPED_TRACE(testing::Message() << int(kind) << " " << int(garment) << " " << selvedge
                                            << " " << stitches << " " << bust);
            Design design;
            design.choose(Choice::Rib, kind)
                .choose(Choice::Garment, garment)
                .set(Field::Bust, bust);
            design.set(Field::Selvedge, selvedge).set(Field::SwatchStitches, stitches);
            design.set(Field::SwatchWidth, 10);
            const reader::Reading read = reader::read(textOf(derive(design)));
            ASSERT_TRUE(read.complaints.empty()) << read.complaints.front().why;
            std::vector<bool> body = seen(piece(read, "Back"), selvedge, selvedge);
            ASSERT_FALSE(body.empty());
            if (garment == Garment::Pullover) {
              append(body, seen(piece(read, "Front"), selvedge, selvedge));
              expectRepeats(body, repeat, true);
            } else {
              // Seen from outside, going round to the right: the left front, the back, the right
              // front.
              std::vector<bool> row = seen(piece(read, "Left front"), 0, selvedge);
              append(row, body);
              append(row, seen(piece(read, "Right front"), selvedge, 0));
              expectRepeats(row, repeat, false);
            }
            expectRepeats(seen(piece(read, "Sleeve"), selvedge, selvedge), repeat, true);
          }
}

// The sizes at the head are those that the row tables measure.
// A facing lies under the body, stitch to stitch: nothing is added above it for a rib that is not
// there, and it is cast on with the needles it is knitted with.
TEST(Pattern, AFacingIsAsWideAsWhatItLiesUnder) {
  test::RandomDesigns designs(test::propertySeed(78));
  int faced = 0;
  for (int i = 0; i < 60; ++i) {
    const Derived d = derive(designs.plausible().choose(Choice::Hem, HemMade::Faced));
    const KnitPiece* back = d.knit.piece(PieceId::Back);
    if (!back || back->foldRow < Rows(0)) continue;
    ++faced;
    EXPECT_EQ(back->addedAfter(Rows(0)), Stitches(0)) << "design " << i;
    const std::string text = textOf(d);
    const auto facing = text.find("work the facing"), castOn = text.rfind("Cast on", facing);
    ASSERT_NE(facing, text.npos);
    EXPECT_THAT(text.substr(castOn, facing - castOn), Not(HasSubstr("smaller needles")));
    EXPECT_THAT(text.substr(castOn, facing - castOn), Not(HasSubstr("Change to")));
  }
  EXPECT_GT(faced, 40);
}

TEST(Pattern, SizesAreThoseThatAreKnitted) {
  test::RandomDesigns designs(test::propertySeed(72));
  for (int i = 0; i < 200; ++i) {
    const Derived d = derive(designs.plausible());
    const KnitPiece* back = d.knit.piece(PieceId::Back);
    if (!back || (back->splitRow >= Rows(0) && back->splitRow < back->underarmRow)) continue;
    const StitchSize& size = d.knit.lattice.size;
    const Stitches seams = 2 * d.knit.lattice.selvedge;
    for (const FinishedSize& told : d.directions.finished) {
      if (told.key == "backWidth") {
        EXPECT_NEAR(
            told.cm,
            size.across(back->rows[std::size_t(back->underarmRow.value()) - 1].stitches() - seams),
            1e-9);
      }
      if (told.key == "length") {
        const Rows below = std::max(back->foldRow - Rows(1), Rows(0));
        EXPECT_NEAR(told.cm, size.up(back->lastRow() - below), 2.1 * size.height);
      }
      EXPECT_GE(told.cm, 0) << told.key;
    }
  }
}

TEST(Pattern, EaseIsWhatTheGarmentHasOverTheBody) {
  Design design;
  design.set(Field::Bust, 92).set(Field::UpperArm, 29);
  const Derived d = derive(design);
  for (const FinishedSize& told : d.directions.finished) {
    if (told.key == "bust") {
      EXPECT_NEAR(told.ease.value_or(-99), told.cm - 92, 1e-9);
    }
    if (told.key == "upperArm") {
      EXPECT_NEAR(told.ease.value_or(-99), told.cm - 29, 1e-9);
    }
    if (told.key == "crossBack") {
      EXPECT_FALSE(told.ease) << "nobody measured it";
    }
  }
}

// A swatch that is not washed, rows that were never counted: it stands at the head.
TEST(Pattern, WhatIsNotMetStandsAtTheHead) {
  Design design;
  design.set(Field::Bust, 92);
  const std::string before = textOf(derive(design));
  EXPECT_LT(before.find("Not met yet"), before.find("Materials"));
  EXPECT_THAT(before, HasSubstr("has not been washed"));
  EXPECT_THAT(before, HasSubstr("Rows were not counted"));
  design.set(Field::SwatchStitches, 22).set(Field::SwatchRows, 30);
  design.choose(Choice::Washed, int(YesNo::Yes));
  EXPECT_THAT(textOf(derive(design)), Not(HasSubstr("Not met yet")));
}

TEST(Pattern, TheSeamIsTheOneThatWasPlanned) {
  for (const auto& [selvedge, words] : {std::pair{0, "taking in no stitch"},
                                        {1, "one stitch from the edge"},
                                        {2, "2 stitches from the edge"}}) {
    Design design;
    design.set(Field::Bust, 92).set(Field::Selvedge, selvedge);
    const std::string text = std::regex_replace(textOf(derive(design)), std::regex("\n  "), " ");
    EXPECT_EQ(countOf(text, words), 2) << text.substr(text.find("Finishing"));
  }
}

// Shoulders that are joined by three needles are never fastened off.
TEST(Pattern, ThreeNeedlesFindTheirStitches) {
  Design design;
  design.set(Field::Bust, 92).choose(Choice::ShoulderWork, ShoulderWork::ShortRows);
  design.choose(Choice::ShoulderJoin, ShoulderJoin::ThreeNeedles);
  for (const BackNeck back : {BackNeck::Shaped, BackNeck::Straight})
    for (const Garment garment : {Garment::Pullover, Garment::Jacket}) {
      const std::string text = textOf(
          derive(Design(design).choose(Choice::BackNeck, back).choose(Choice::Garment, garment)));
      const reader::Reading read = reader::read(text);
      EXPECT_TRUE(read.complaints.empty());
      EXPECT_THAT(text, HasSubstr("third needle"));
      const std::string body = text.substr(0, text.find("\nSleeve (make"));
      EXPECT_THAT(body, Not(HasSubstr("fasten off")));
      EXPECT_EQ(countOf(body, "on a holder, without working them"),
                back == BackNeck::Straight ? 3 : 4);
    }
}

TEST(Pattern, PlainEdgesAreKeptFlatOrSaidToCurl) {
  Design design;
  design.set(Field::Bust, 92).choose(Choice::Hem, HemMade::Plain);
  EXPECT_THAT(textOf(derive(design)), HasSubstr("will curl"));
  const std::string garter = textOf(derive(design.choose(Choice::PlainEdge, PlainEdge::Garter)));
  EXPECT_THAT(garter, Not(HasSubstr("will curl")));
  EXPECT_THAT(garter, HasSubstr("Rows 1 to 4: knit every row"));
}

} // namespace
} // namespace scye::pattern
