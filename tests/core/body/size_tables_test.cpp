// The tables built in against tests/data/body-tables.csv: Craft Yarn Council, Standards and
// Guidelines, body measurement tables, inches, transcribed apart from the program.
#include "body/size_tables.h"

#include "model/units.h"
#include "support/csv_table.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

constexpr Figure kFigures[] = {Figure::Woman, Figure::Man, Figure::Child, Figure::Baby};

Figure figureOfGroup(const std::string& group) {
  if (group == "man") return Figure::Man;
  if (group == "child" || group == "youth") return Figure::Child;
  if (group == "baby") return Figure::Baby;
  EXPECT_EQ(group, "woman");
  return Figure::Woman;
}

TEST(SizeTables, areTheMidpointsOfThePrintedRanges) {
  const test::CsvTable printed = test::CsvTable::data("body-tables.csv");
  std::size_t sizes = 0;
  for (Figure f : kFigures)
    sizes += publishedSizes(f).size();
  ASSERT_EQ(printed.rows(), sizes);
  std::size_t next[4] = {};
  for (std::size_t row = 0; row < printed.rows(); ++row) {
    const Figure figure = figureOfGroup(printed.text(row, "group"));
    const TableSize& ours = publishedSizes(figure)[next[int(figure)]++];
    SCOPED_TRACE(printed.text(row, "group") + " " + printed.text(row, "size"));
    const auto middle = [&](const std::string& low, const std::string& high) {
      return 0.5 * (printed.number(row, low) + printed.number(row, high));
    };
    EXPECT_EQ(ours.name, printed.text(row, "size"));
    EXPECT_DOUBLE_EQ(ours.bust, middle("chest_lo_in", "chest_hi_in"));
    EXPECT_DOUBLE_EQ(ours.waist, middle("waist_lo", "waist_hi"));
    EXPECT_DOUBLE_EQ(ours.hip, middle("hip_lo", "hip_hi"));
    EXPECT_DOUBLE_EQ(ours.crossBack, middle("cross_back_lo", "cross_back_hi"));
    EXPECT_DOUBLE_EQ(ours.armToUnderarm, printed.number(row, "arm_to_underarm"));
    EXPECT_DOUBLE_EQ(ours.upperArm, printed.number(row, "upper_arm"));
    EXPECT_DOUBLE_EQ(ours.armholeDepth, middle("armhole_depth_lo", "armhole_depth_hi"));
    // A man's printed back length is a hip length, another measure.
    EXPECT_DOUBLE_EQ(ours.backLength,
                     figure == Figure::Man ? 0 : middle("back_len_lo", "back_len_hi"));
  }
}

void expectSize(const TableSize& cm, const TableSize& a, const TableSize& b) {
  const auto near = [](double ours, double one, double other) {
    if (one != 0 && other != 0) {
      EXPECT_NEAR(ours, kCmPerInch * 0.5 * (one + other), 1e-9);
    }
  };
  near(cm.waist, a.waist, b.waist);
  near(cm.hip, a.hip, b.hip);
  near(cm.crossBack, a.crossBack, b.crossBack);
  near(cm.backLength, a.backLength, b.backLength);
  near(cm.armToUnderarm, a.armToUnderarm, b.armToUnderarm);
  near(cm.upperArm, a.upperArm, b.upperArm);
  near(cm.armholeDepth, a.armholeDepth, b.armholeDepth);
}

TEST(SizeTables, giveBackEachPrintedSizeAtItsBust) {
  for (Figure f : kFigures)
    for (const TableSize& size : publishedSizes(f)) {
      SCOPED_TRACE(size.name);
      const TableSize found = sizeAtBust(f, kCmPerInch * size.bust);
      EXPECT_EQ(found.name, size.name);
      expectSize(found, size, size);
    }
}

TEST(SizeTables, giveTheMeanHalfwayBetweenTwoSizes) {
  for (Figure f : kFigures) {
    const auto sizes = publishedSizes(f);
    for (std::size_t i = 0; i + 1 < sizes.size(); ++i) {
      SCOPED_TRACE(sizes[i].name);
      expectSize(sizeAtBust(f, kCmPerInch * 0.5 * (sizes[i].bust + sizes[i + 1].bust)), sizes[i],
                 sizes[i + 1]);
    }
  }
}

TEST(SizeTables, goOnWithTheLastStepBeyondTheirEnds) {
  for (Figure f : kFigures) {
    const auto sizes = publishedSizes(f);
    const auto beyond = [&](const TableSize& last, const TableSize& before) {
      SCOPED_TRACE(last.name);
      const TableSize found = sizeAtBust(f, kCmPerInch * (1.5 * last.bust - 0.5 * before.bust));
      EXPECT_EQ(found.name, last.name);
      EXPECT_NEAR(found.upperArm, kCmPerInch * (1.5 * last.upperArm - 0.5 * before.upperArm), 1e-9);
      EXPECT_NEAR(found.armholeDepth,
                  kCmPerInch * (1.5 * last.armholeDepth - 0.5 * before.armholeDepth), 1e-9);
    };
    beyond(sizes.front(), sizes[1]);
    beyond(sizes.back(), sizes[sizes.size() - 2]);
  }
}

// Youth 16 has no printed waist: the step from 12 to 14 goes on.
TEST(SizeTables, bridgeWhatIsNotPrinted) {
  EXPECT_NEAR(sizeAtBust(Figure::Child, kCmPerInch * 32.5).waist, kCmPerInch * 27.5, 1e-9);
  EXPECT_EQ(sizeAtBust(Figure::Man, 100).backLength, 0) << "printed for no man";
}

TEST(SizeTables, neverShrinkToNothing) {
  for (Figure f : kFigures) {
    const TableSize tiny = sizeAtBust(f, 20);
    EXPECT_GE(tiny.upperArm, 0.5 * kCmPerInch * publishedSizes(f).front().upperArm);
    EXPECT_GE(tiny.armholeDepth, 0.5 * kCmPerInch * publishedSizes(f).front().armholeDepth);
  }
}

} // namespace
} // namespace scye
