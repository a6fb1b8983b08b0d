// Every style on every published body size (Craft Yarn Council, Standards and Guidelines, body measurement
// tables), everything else left to the starting values; and what a style's starting values aim at.
#include "body/size_tables.h"
#include "knit/knit_garment.h"
#include "support/record.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace scye {
namespace {

std::set<std::string> warned(const Design& d, Severity least) {
  std::set<std::string> codes;
  for (const Finding& f : allFindings(d))
    if (f.severity >= least) codes.insert(f.code);
  return codes;
}

// Every style's starting values, one option at a time, on every published body and at the gauges of three
// yarn classes (bulky, light, super fine: the same council's yarn weight system): nothing forbids the
// garment, and hardly anything is warned of that the usual garment of that size is not warned of too.
TEST(Styles, suitEveryPublishedSizeAtTheirStartingValues) {
  constexpr Choice kNoStyle[] = {Choice::Figure, Choice::Garment, Choice::WorkedOut, Choice::Washed,
                                 Choice::FillFrom, Choice::YarnClass};
  int garments = 0, warnings = 0;
  for (Figure figure : {Figure::Woman, Figure::Man, Figure::Child, Figure::Baby})
    for (const TableSize& size : publishedSizes(figure))
      for (Garment garment : {Garment::Pullover, Garment::Jacket})
        for (const auto& [stitches, rows] : {std::pair(14.0, 20.0), std::pair(22.0, 30.0), std::pair(28.0, 38.0)}) {
          Design usual;
          usual.choose(Choice::Figure, figure).choose(Choice::Garment, garment).choose(Choice::Washed, YesNo::Yes);
          usual.set(Field::Bust, kCmPerInch * size.bust);
          usual.set(Field::SwatchStitches, stitches).set(Field::SwatchRows, rows);
          const std::set<std::string> before = warned(usual, Severity::Warning);
          for (int c = 0; c < kChoiceCount; ++c) {
            if (std::ranges::find(kNoStyle, Choice(c)) != std::end(kNoStyle)) continue;
            for (int option = 1; option < int(info(Choice(c)).options.size()); ++option) {
              const Design d = Design(usual).choose(Choice(c), option);
              SCOPED_TRACE(std::string(size.name) + " " + std::string(info(Choice(c)).key) + " " + std::to_string(option));
              EXPECT_TRUE(warned(d, Severity::Blocking).empty());
              ++garments;
              for (const std::string& code : warned(d, Severity::Warning)) warnings += !before.contains(code);
            }
          }
        }
  test::record("garments", garments);
  test::record("warnings the usual garment has not", warnings);
  EXPECT_LT(warnings, 0.05 * garments);
}

// Common practice: a cap is made shallower for moving by a wider sleeve in the same armhole, higher for dress
// by a narrower one.
TEST(Styles, shallowAndHighCapsLieOnEitherSideOfTheUsual) {
  for (Figure figure : {Figure::Woman, Figure::Man, Figure::Child})
    for (const TableSize& size : publishedSizes(figure)) {
      const auto ratio = [&](CapRise rise) {
        Design d;
        d.choose(Choice::Figure, figure).choose(Choice::CapRise, rise).set(Field::Bust, kCmPerInch * size.bust);
        const GarmentDraft g = draftGarment(d);
        return g.cap.height / g.sizes.finished(Field::ArmholeDepth);
      };
      SCOPED_TRACE(size.name);
      EXPECT_LT(ratio(CapRise::Shallow), ratio(CapRise::Usual) - 0.02);
      EXPECT_GT(ratio(CapRise::High), ratio(CapRise::Usual) + 0.02);
      EXPECT_GT(ratio(CapRise::Shallow), 0.45);
      EXPECT_LT(ratio(CapRise::High), 0.9);
    }
}

} // namespace
} // namespace scye
