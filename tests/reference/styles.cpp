// Every style on every published body size (Craft Yarn Council, Standards and Guidelines, body
// measurement tables), everything else left to the starting values; and what a style's starting
// values aim at.
#include "body/size_tables.h"
#include "garment/derived.h"
#include "support/record.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace scye {
namespace {

std::set<std::string> warned(const Design& d, Severity least) {
  std::set<std::string> codes;
  for (const Finding& f : findingsOf(d))
    if (f.severity >= least) codes.insert(f.code);
  return codes;
}

// Every style's starting values, one option at a time, on every published body and at the gauges of
// three yarn classes (bulky, light, super fine: the same council's yarn weight system): nothing
// forbids the garment, and hardly anything is warned of that the usual garment of that size is not
// warned of too.
TEST(Styles, suitEveryPublishedSizeAtTheirStartingValues) {
  constexpr Choice kNoStyle[] = {Choice::Figure, Choice::Garment,  Choice::WorkedOut,
                                 Choice::Washed, Choice::FillFrom, Choice::YarnClass};
  int garments = 0, warnings = 0;
  for (Figure figure : {Figure::Woman, Figure::Man, Figure::Child, Figure::Baby})
    for (const TableSize& size : publishedSizes(figure))
      for (Garment garment : {Garment::Pullover, Garment::Jacket})
        for (const auto& [stitches, rows] :
             {std::pair(14.0, 20.0), std::pair(22.0, 30.0), std::pair(28.0, 38.0)}) {
          Design usual;
          usual.choose(Choice::Figure, figure)
              .choose(Choice::Garment, garment)
              .choose(Choice::Washed, YesNo::Yes);
          usual.set(Field::Bust, kCmPerInch * size.bust);
          usual.set(Field::SwatchStitches, stitches).set(Field::SwatchRows, rows);
          const std::set<std::string> before = warned(usual, Severity::Warning);
          for (int c = 0; c < kChoiceCount; ++c) {
            if (std::ranges::find(kNoStyle, Choice(c)) != std::end(kNoStyle)) continue;
            for (int option = 1; option < int(info(Choice(c)).options.size()); ++option) {
              const Design d = Design(usual).choose(Choice(c), option);
              SCOPED_TRACE(std::string(size.name) + " " + std::string(info(Choice(c)).key) + " " +
                           std::to_string(option));
              EXPECT_TRUE(warned(d, Severity::Blocking).empty());
              ++garments;
              for (const std::string& code : warned(d, Severity::Warning))
                warnings += !before.contains(code);
            }
          }
        }
  test::record("garments", garments);
  test::record("warnings the usual garment has not", warnings);
  EXPECT_LT(warnings, 0.05 * garments);
}

// Common practice: a cap is made shallower for moving by a wider sleeve in the same armhole, higher
// for dress by a narrower one.
TEST(Styles, shallowAndHighCapsLieOnEitherSideOfTheUsual) {
  for (Figure figure : {Figure::Woman, Figure::Man, Figure::Child, Figure::Baby})
    for (const TableSize& size : publishedSizes(figure)) {
      const auto ratio = [&](CapRise rise) {
        Design d;
        d.choose(Choice::Figure, figure)
            .choose(Choice::CapRise, rise)
            .set(Field::Bust, kCmPerInch * size.bust);
        const GarmentDraft g = draftGarment(d);
        return g.cap.height / g.sizes.finished(Field::ArmholeDepth);
      };
      SCOPED_TRACE(size.name);
      EXPECT_LT(ratio(CapRise::Shallow), ratio(CapRise::Usual) - 0.02);
      EXPECT_GT(ratio(CapRise::High), ratio(CapRise::Usual) + 0.02);
      EXPECT_GT(ratio(CapRise::Shallow), figure == Figure::Baby ? 0.5 : 0.45);
      EXPECT_LT(ratio(CapRise::High), 0.9);
    }
}

// Shoulders of printed patterns, group by group: 7, 6 and 6 stitches of 19 in three steps ("A
// Serviceable Sweater", Handbook of Wool Knitting and Crochet, 1918, Project Gutenberg 26113); 13
// to 17 twice, and 6, 6, 7 and 7 (printed patterns of 5.5 x 7 and 6.5 x 8 to the inch). Short rows
// leave the same groups waiting as stepped bind-offs take away.
TEST(Styles, shouldersAreSteppedAsInPrint) {
  const auto groups = [](int stitches, int steps) {
    std::vector<int> out;
    for (const scye::Run& run : shoulderSteps(Stitches(stitches), steps))
      out.insert(out.end(), std::size_t(run.times), run.stitches.value());
    std::ranges::sort(out);
    return out;
  };
  EXPECT_EQ(groups(19, 3), (std::vector{6, 6, 7}));
  for (int each = 13; each <= 17; ++each)
    EXPECT_EQ(groups(2 * each, 2), (std::vector{each, each}));
  EXPECT_EQ(groups(26, 4), (std::vector{6, 6, 7, 7}));
}

// Common practice: a full sleeve has one and a half to two and a half times its cuff; gathers lie
// two to three thick at most; buttons sit 5 to 10 cm apart.
TEST(Styles, startingValuesKeepToThePractice) {
  for (Figure figure : {Figure::Woman, Figure::Man, Figure::Child, Figure::Baby})
    for (const TableSize& size : publishedSizes(figure)) {
      SCOPED_TRACE(size.name);
      Design d;
      d.choose(Choice::Figure, figure).choose(Choice::Garment, Garment::Jacket);
      d.choose(Choice::SleeveLine, SleeveLine::Full).choose(Choice::CapTop, CapTop::Gathered);
      d.set(Field::Bust, kCmPerInch * size.bust);
      const GarmentDraft g = draftGarment(d);
      const double fullness = g.sizes[Field::FullGirth] / g.sizes[Field::CuffGirth];
      EXPECT_GE(fullness, 1.5);
      EXPECT_LE(fullness, 2.5);
      EXPECT_LE(1 + (g.cap.easeWanted - 1) / g.sizes[Field::GatherWidth], 2.5);
      const KnitGarment k = knitGarment(g);
      const std::vector<Rows>& holes = k.buttonholes.rows;
      ASSERT_GE(holes.size(), 2u);
      // Each lies within a row of its place.
      const double h = k.lattice.size.height, apart = (holes[1] - holes[0]).value() * h;
      EXPECT_GE(apart, 5 - 2 * h);
      EXPECT_LE(apart, 10 + 2 * h);
    }
}

} // namespace
} // namespace scye
