// Increases spread over a row. What "evenly" means is taken from its definition, not from the code:
// the gaps between the new stitches, and from them to the edges, differ by one stitch at most.
#include "shaping/even_shaping.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace scye {
namespace {

TEST(EvenIncreases, GapsAreAsEqualAsWholeStitchesCanBe) {
  for (int before = 2; before <= 80; ++before)
    for (int more = 1; more < before; ++more) {
      std::vector<int> gaps;
      int worked = 0;
      for (const EvenIncrease& run : evenIncreases(Stitches(before), Stitches(more)))
        for (int i = 0; i < run.times; ++i)
          gaps.push_back(run.after), worked += run.after;
      ASSERT_EQ(int(gaps.size()), more) << before;
      gaps.push_back(before - worked); // worked to the end
      const auto [least, most] = std::minmax_element(gaps.begin(), gaps.end());
      EXPECT_GE(*least, 1) << before << " + " << more;
      EXPECT_LE(*most - *least, 1) << before << " + " << more;
    }
}

TEST(EvenIncreases, HasThreeRunsAtMostAndNoTwoAlike) {
  for (int before = 2; before <= 80; ++before)
    for (int more = 1; more < before; ++more) {
      const std::vector<EvenIncrease> runs = evenIncreases(Stitches(before), Stitches(more));
      EXPECT_LE(runs.size(), 3u);
      for (std::size_t i = 1; i < runs.size(); ++i)
        EXPECT_NE(runs[i].after, runs[i - 1].after);
    }
}

} // namespace
} // namespace scye
