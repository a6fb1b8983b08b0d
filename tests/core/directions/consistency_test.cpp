// What one line of the directions says of buttons, stitches, yarn and notions, the others say too.
// Everything is taken from the printed lines; the yarn is worked out anew from the stitches that
// the text reader has knitted.
#include "core/directions/reader.h"
#include "directions/directions.h"
#include "support/made.h"
#include "support/random_designs.h"

#include <gtest/gtest.h>

#include <cmath>
#include <regex>

namespace scye::consistency {
namespace {

constexpr int kDesigns = 500;

struct Printed {
  std::vector<DirectionLine> lines;
  std::string text;

  // The first number of each line that the pattern matches.
  [[nodiscard]] std::vector<int> numbers(const std::string& pattern) const {
    const std::regex wanted(pattern);
    std::vector<int> found;
    for (const DirectionLine& line : lines)
      for (std::sregex_iterator at(line.text.begin(), line.text.end(), wanted), end; at != end;
           ++at)
        found.push_back(at->size() > 1 && (*at)[1].matched ? std::stoi((*at)[1]) : 1);
    return found;
  }
  [[nodiscard]] bool says(const std::string& pattern) const { return !numbers(pattern).empty(); }
};

Printed printed(const test::Made& made) {
  const Directions d = directionsFor(made.draft, made.knit, makingUp(made.draft, made.knit));
  return {directionLines(d, {builtinPhrases()}), directionsText(d, {builtinPhrases()})};
}

int sumOf(const std::vector<int>& numbers) {
  int sum = 0;
  for (const int n : numbers)
    sum += n;
  return sum;
}

TEST(Consistency, buttonsAreAsManyAsTheirHoles) {
  test::RandomDesigns designs(test::propertySeed(2901));
  int buttoned = 0, looped = 0;
  for (int i = 0; i < kDesigns; ++i) {
    SCOPED_TRACE(i);
    Design design = designs.plausible();
    if (i % 2 == 0) design.choose(Choice::Garment, Garment::Jacket);
    const test::Made made = test::made(design);
    if (!made.knit.impossible.empty() || made.knit.pieces.empty()) continue;
    const Printed p = printed(made);
    int worked = int(p.numbers("make a buttonhole over").size()); // in rows, or the only one
    worked += sumOf(p.numbers("make (\\d+) buttonholes over"));
    const std::vector<int> bought = p.numbers("^Buttons: (\\d+), for (?:a hole|holes)");
    const std::vector<int> sewn = p.numbers("^Sew the (?:(\\d+) buttons|button) on opposite");
    EXPECT_EQ(sumOf(bought), worked);
    EXPECT_EQ(sumOf(sewn), worked);
    EXPECT_EQ(bought.size(), worked > 0 ? 1u : 0u);
    EXPECT_EQ(sewn.size(), worked > 0 ? 1u : 0u);
    if (const auto told = p.numbers("^(\\d+) buttonholes? over"); !told.empty()) {
      EXPECT_EQ(told, std::vector{worked});
    }
    for (const int bust : p.numbers("^Counted from below, number (\\d+)")) {
      EXPECT_LE(bust, worked);
    }
    EXPECT_EQ(p.says("^Button: 1, for a loop"), p.says("with a button and a loop"));
    buttoned += worked > 0;
    looped += p.says("^Button: 1, for a loop");
  }
  EXPECT_GT(buttoned, kDesigns / 5);
  EXPECT_GT(looped, 0);
}

TEST(Consistency, notionsAreThoseThatAreUsed) {
  test::RandomDesigns designs(test::propertySeed(2902));
  int held = 0, marked = 0;
  for (int i = 0; i < kDesigns; ++i) {
    SCOPED_TRACE(i);
    const test::Made made = test::made(designs.plausible());
    if (!made.knit.impossible.empty() || made.knit.pieces.empty()) continue;
    const Printed p = printed(made);
    const bool holder = p.says("^Also: .*stitch holder"), marker = p.says("^Also: .*marker"),
               hook = p.says("^Also: .*crochet hook");
    bool onHolder = false, atMarker = false, withHook = false;
    for (const DirectionLine& line : p.lines) {
      if (line.text.starts_with("Also: ")) continue;
      onHolder |= line.text.find("holder") != std::string::npos;
      atMarker |= line.text.starts_with("Mark the ") || line.text.starts_with("Place a marker");
      withHook |= line.text.find("round of crochet") != std::string::npos;
    }
    EXPECT_EQ(holder, onHolder);
    EXPECT_EQ(marker, atMarker);
    EXPECT_EQ(hook, withHook);
    held += holder, marked += marker;
  }
  EXPECT_GT(held, 0);
  EXPECT_GT(marked, 0);
}

TEST(Consistency, yarnGoesRoundForTheStitchesThatAreTold) {
  test::RandomDesigns designs(test::propertySeed(2903));
  int compared = 0;
  for (int i = 0; i < kDesigns; ++i) {
    SCOPED_TRACE(i);
    Design design = designs.plausible();
    design.clear(Field::SwatchWeight); // with one weighed nothing is ranged
    design.set(Field::BallWeight, 50).set(Field::BallLength, 125).set(Field::YarnReserve, 0.1);
    const test::Made made = test::made(design);
    if (!made.knit.impossible.empty() || made.knit.pieces.empty()) continue;
    const Printed p = printed(made);
    const reader::Reading reading = reader::read(p.text);
    EXPECT_TRUE(reading.complaints.empty());
    double stitches = 0;
    for (const reader::PieceRead& piece : reading.pieces)
      for (const reader::RowRead& row : piece.rows)
        stitches += row.stitches * (piece.name.find("make 2") == std::string::npos ? 1.0 : 2.0);
    // A stitch takes 3.6 to 4.3 times its width (as the program says of its source); a rib a tenth
    // more; bands, seams and ends take the rest. Told rounded up to tens, the upper with a tenth in
    // reserve.
    const double metres = stitches * made.knit.lattice.size.width / 100;
    const auto low = p.numbers("^Yarn: roughly (\\d+) to"),
               high = p.numbers("^Yarn: roughly \\d+ to (\\d+) m"),
               grams = p.numbers("^Yarn: roughly .*, \\d+ to (\\d+) g"),
               balls = p.numbers("That is (\\d+) balls? of 50 g");
    ASSERT_EQ(low.size(), 1u);
    ASSERT_EQ(high.size(), 1u);
    ASSERT_EQ(grams.size(), 1u);
    ASSERT_EQ(balls.size(), 1u);
    EXPECT_GE(low.front(), 3.6 * metres);
    EXPECT_LE(low.front(), 3.6 * metres * 1.5 + 10);
    EXPECT_GE(high.front(), 1.1 * 4.3 * metres);
    EXPECT_LE(high.front(), 1.1 * 4.3 * metres * 1.5 + 10);
    EXPECT_NEAR(grams.front(), high.front() * 50 / 125.0, 10);
    EXPECT_GE(balls.front() * 50, grams.front() - 10);
    EXPECT_LT((balls.front() - 1) * 50, grams.front());
    ++compared;
  }
  EXPECT_GT(compared, kDesigns / 2);
}

} // namespace
} // namespace scye::consistency
