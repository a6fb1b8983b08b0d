#include "shaping/even_shaping.h"

#include <gtest/gtest.h>

#include <numeric>
#include <random>

namespace scye {
namespace {

TEST(EvenShaping, saysWhatAKnitterWouldSay) {
  // 8 increases in rows 1 to 54: every 6th row 5 times, then every 8th row 3 times.
  const EvenShaping out = shapeEvenly({.changes = 8, .firstRow = 1, .lastRow = 53});
  ASSERT_EQ(out.runs.size(), 2);
  EXPECT_EQ(out.runs[0].every, Rows(6));
  EXPECT_EQ(out.runs[0].times, 5);
  EXPECT_EQ(out.runs[1].every, Rows(8));
  EXPECT_EQ(out.runs[1].times, 3);
  EXPECT_EQ(out.start, -1);
}

TEST(EvenShaping, isAsEvenAsWholeNumbersAllow) {
  std::mt19937 rng(51);
  for (int i = 0; i < 1000; ++i) {
    const auto upTo = [&](int low, int high) {
      return std::uniform_int_distribution(low, high)(rng);
    };
    EvenRequest request{.changes = upTo(1, 30), .firstRow = upTo(1, 40)};
    request.lastRow = request.firstRow + upTo(0, 120);
    request.oddRightSide = upTo(0, 1) == 1;
    const EvenShaping out = shapeEvenly(request);
    const std::vector<int> rows = changeRows(out);
    EXPECT_LE(out.runs.size(), 2);
    int rightSideRows = 0;
    for (int row = request.firstRow; row <= request.lastRow; ++row)
      rightSideRows += row % 2 == (request.oddRightSide ? 1 : 0);
    EXPECT_EQ(out.fits, rightSideRows >= request.changes);
    EXPECT_EQ(rows.size(), std::min(rightSideRows, request.changes));
    std::vector<int> gaps;
    for (std::size_t k = 0; k < rows.size(); ++k) {
      EXPECT_GE(rows[k], request.firstRow);
      EXPECT_LE(rows[k], request.lastRow);
      EXPECT_EQ(rows[k] % 2, request.oddRightSide ? 1 : 0);
      gaps.push_back(rows[k] - (k ? rows[k - 1] : out.start));
    }
    if (gaps.empty()) continue;
    const auto [least, most] = std::minmax_element(gaps.begin(), gaps.end());
    EXPECT_LE(*most - *least, 2);
    EXPECT_TRUE(std::is_sorted(gaps.begin(), gaps.end()));
    EXPECT_GE(rows.back() + *least + 2, request.lastRow); // it fills the range
  }
}

TEST(EvenShaping, tooCloseIsSaid) {
  EXPECT_TRUE(shapeEvenly({.changes = 10, .firstRow = 1, .lastRow = 40, .atLeast = Rows(4)}).fits);
  EXPECT_FALSE(shapeEvenly({.changes = 11, .firstRow = 1, .lastRow = 40, .atLeast = Rows(4)}).fits);
  EXPECT_TRUE(shapeEvenly({.changes = 0, .firstRow = 1, .lastRow = 0}).fits);
}

// Printed shoulders (common practice in handbooks of the time): 19 stitches a side as 7, 6, 6 in "A
// Serviceable Sweater", 1918; 26 as 6, 6, 7, 7 from memory of printed patterns.
TEST(ShoulderSteps, areThosePrinted) {
  const auto steps = [](const std::vector<scye::Run>& runs) {
    std::vector<int> all;
    for (const scye::Run& run : runs)
      all.insert(all.end(), run.times, run.stitches.value());
    return all;
  };
  EXPECT_EQ(steps(shoulderSteps(Stitches(19), 3)), (std::vector{7, 6, 6}));
  EXPECT_EQ(steps(shoulderSteps(Stitches(26), 4, LargerSteps::Last)), (std::vector{6, 6, 7, 7}));
  EXPECT_EQ(steps(shoulderSteps(Stitches(26), 2)), (std::vector{13, 13}));
  EXPECT_EQ(steps(shoulderSteps(Stitches(2), 4)), (std::vector{1, 1}));
  EXPECT_TRUE(shoulderSteps(Stitches(0), 3).empty());
}

} // namespace
} // namespace scye
