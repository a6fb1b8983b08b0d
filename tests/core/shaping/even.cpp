#include "shaping/even_shaping.h"

#include <gtest/gtest.h>

#include <numeric>
#include <random>

namespace scye {
namespace {

TEST(EvenShaping, saysWhatAKnitterWouldSay) {
  // 8 increases in rows 1 to 54: every 6th row, and 7 rows even at the end.
  const EvenShaping one = shapeEvenly({.changes = 8, .firstRow = Rows(1), .lastRow = Rows(53)});
  ASSERT_EQ(one.runs.size(), 1);
  EXPECT_EQ(one.runs[0].every, Rows(6));
  EXPECT_EQ(one.runs[0].times, 8);
  EXPECT_EQ(one.start, Rows(-1));
  // 15 in rows 17 to 75: every 4th row, what remains on every 2nd at the end, none at the front.
  const EvenShaping two = shapeEvenly({.changes = 16, .firstRow = Rows(17), .lastRow = Rows(75)});
  ASSERT_EQ(two.runs.size(), 2);
  EXPECT_EQ(two.runs[0].every, Rows(4));
  EXPECT_EQ(two.runs[0].times, 14);
  EXPECT_EQ(two.runs[1].every, Rows(2));
  EXPECT_EQ(two.runs[1].times, 2);
}

TEST(EvenShaping, isWithinAStitchOfEvenInOneLineOrFillsTheRangeInTwo) {
  std::mt19937 rng(51);
  int oneLine = 0;
  for (int i = 0; i < 1000; ++i) {
    const auto upTo = [&](int low, int high) {
      return std::uniform_int_distribution(low, high)(rng);
    };
    EvenRequest request{.changes = upTo(1, 30), .firstRow = Rows(upTo(1, 40))};
    request.lastRow = request.firstRow + Rows(upTo(0, 120));
    request.oddRightSide = upTo(0, 1) == 1;
    const EvenShaping out = shapeEvenly(request);
    const std::vector<Rows> rows = changeRows(out);
    EXPECT_LE(out.runs.size(), 2);
    int rightSideRows = 0;
    for (Rows row = request.firstRow; row <= request.lastRow; ++row)
      rightSideRows += row % 2 == (request.oddRightSide ? 1 : 0);
    EXPECT_EQ(out.fits, rightSideRows >= request.changes);
    EXPECT_EQ(rows.size(), std::min(rightSideRows, request.changes));
    if (rows.empty()) continue;
    std::vector<int> gaps;
    const double even = 2.0 * rightSideRows / request.changes; // rows from one to the next
    for (std::size_t k = 0; k < rows.size(); ++k) {
      EXPECT_GE(rows[k], request.firstRow);
      EXPECT_LE(rows[k], request.lastRow);
      EXPECT_EQ(rows[k] % 2, request.oddRightSide ? 1 : 0);
      gaps.push_back((rows[k] - (k ? rows[k - 1] : out.start)).value());
      // So many stitches an even spread would have by then.
      if (out.fits && out.runs.size() == 1) {
        EXPECT_LE(double(k + 1) - (rows[k] - out.start).value() / even, 1 + 1e-9);
      }
    }
    const auto [least, most] = std::minmax_element(gaps.begin(), gaps.end());
    EXPECT_LE(*most - *least, 2);
    oneLine += out.runs.size() == 1;
    if (out.runs.size() == 2) {
      EXPECT_GE(out.runs[0].times, out.runs[1].times);   // remainders at the far end
      EXPECT_GE(rows.back() + Rows(2), request.lastRow); // it fills the range
    }
  }
  EXPECT_GT(oneLine, 300);
}

TEST(EvenShaping, tooCloseIsSaid) {
  EXPECT_TRUE(
      shapeEvenly({.changes = 10, .firstRow = Rows(1), .lastRow = Rows(40), .atLeast = Rows(4)})
          .fits);
  EXPECT_FALSE(
      shapeEvenly({.changes = 11, .firstRow = Rows(1), .lastRow = Rows(40), .atLeast = Rows(4)})
          .fits);
  EXPECT_TRUE(shapeEvenly({.changes = 0, .firstRow = Rows(1), .lastRow = Rows(0)}).fits);
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
