// Every published body size (Craft Yarn Council, Standards and Guidelines, body measurement tables)
// as a pullover and as a jacket, everything else left to the starting values.
#include "body/size_tables.h"
#include "model/units.h"
#include "seam/room.h"
#include "support/record.h"

#include <gtest/gtest.h>

#include <cstdio>

namespace scye {
namespace {

constexpr Figure kAllFigures[] = {Figure::Woman, Figure::Man, Figure::Child, Figure::Baby};

GarmentDraft publishedGarment(Figure figure, const TableSize& size, Garment garment,
                              FillFrom from = FillFrom::Size) {
  Design d;
  d.choose(Choice::Figure, figure).choose(Choice::Garment, garment).choose(Choice::FillFrom, from);
  d.set(Field::Bust, kCmPerInch * size.bust).set(Field::UpperArm, kCmPerInch * size.upperArm);
  return draftGarment(d.set(Field::SwatchStitches, 22));
}

// Common practice: the depth less 5 cm up to a bust of 76 cm, less 7.5 up to 122, less 10 above.
double capByRuleOfThumb(double depth, double bust) {
  return depth - (bust <= 76 ? 5 : bust <= 122 ? 7.5 : 10);
}

TEST(PublishedSizes, areAllDraftedAndTheirCapsAreOfTheTradesHeight) {
  double lowest = 1, highest = 0, worst = 0, sum = 0;
  int garments = 0;
  for (Figure figure : kAllFigures)
    for (const TableSize& size : publishedSizes(figure))
      for (Garment garment : {Garment::Pullover, Garment::Jacket}) {
        SCOPED_TRACE(std::string(size.name) +
                     (garment == Garment::Jacket ? " jacket" : " pullover"));
        const GarmentDraft g = publishedGarment(figure, size, garment);
        std::string said;
        for (const Finding& f : g.findings) {
          EXPECT_NE(f.severity, Severity::Blocking) << f.code;
          if (f.severity == Severity::Warning) said += " " + f.code;
        }
        ASSERT_TRUE(g.cap.found);
        const double depth = g.sizes.finished(Field::ArmholeDepth), ratio = g.cap.height / depth;
        const double off = g.cap.height - capByRuleOfThumb(depth, g.sizes.body(Field::Bust));
        std::printf("%d %-4s %s cap %4.1f depth %4.1f ratio %.2f, off the rule of thumb %+.1f%s\n",
                    int(figure), std::string(size.name).c_str(),
                    garment == Garment::Jacket ? "jacket  " : "pullover", g.cap.height, depth,
                    ratio, off, said.c_str());
        EXPECT_GT(ratio, 0.5); // common practice
        EXPECT_LT(ratio, 0.85);
        lowest = std::min(lowest, ratio), highest = std::max(highest, ratio);
        if (figure == Figure::Woman || figure == Figure::Man)
          worst = std::max(worst, std::abs(off)), sum += off, ++garments;
      }
  test::record("lowestRatio", lowest);
  test::record("highestRatio", highest);
  test::record("adultsMeanOffRuleOfThumb", sum / garments);
  test::record("adultsMostOffRuleOfThumb", worst);
}

// Sizes that the survey hardly holds or does not: large women and men, children, babies. The girth
// round the armhole is an estimate there, extrapolated; for small bodies a small woman's scaled.
// The bars are the adults' own, 6-10 cm for a pullover and 8-12 for a jacket (common practice and
// one printed pattern); up to 11 for a youth and
// the largest, 4 at least for a baby.
TEST(PublishedSizes, startWithRoomInTheArmholeHoweverLargeOrSmall) {
  for (const FillFrom from : {FillFrom::Survey, FillFrom::Size})
    for (const Figure figure : kAllFigures)
      for (const TableSize& size : publishedSizes(figure))
        for (const Garment garment : {Garment::Pullover, Garment::Jacket}) {
          const bool jacket = garment == Garment::Jacket;
          SCOPED_TRACE(std::string(size.name) + (jacket ? " jacket" : " pullover"));
          const GarmentDraft g = publishedGarment(figure, size, garment, from);
          const double room = armholeRoom(g).value(), depth = g.sizes.finished(Field::ArmholeDepth);
          std::printf("%d %-4s %-8s by %s: room %4.1f, cap / depth %.2f\n", int(figure),
                      std::string(size.name).c_str(), jacket ? "jacket" : "pullover",
                      from == FillFrom::Size ? "size" : "survey", room, g.cap.height / depth);
          const bool baby = figure == Figure::Baby, child = figure == Figure::Child;
          EXPECT_GE(room, baby ? 4 : jacket && !child ? 8 : 6);
          EXPECT_LE(room, jacket ? 12 : child || size.bust > 52 ? 11 : 10);
          EXPECT_GE(g.cap.height / depth, 0.56);
          EXPECT_LE(g.cap.height / depth, child ? 0.78 : 0.75);
          for (const Finding& f : g.findings)
            EXPECT_EQ(f.severity, Severity::Note) << f.code;
        }
}

} // namespace
} // namespace scye
