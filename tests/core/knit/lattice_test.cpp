#include "knit/lattice.h"

#include <gtest/gtest.h>

#include <cmath>

namespace scye {
namespace {

// What is shaped alike at both edges stays odd or even.
TEST(Lattice, CountsKeepTheParityOfWhatTheyAreShapedFrom) {
  for (const int like : {90, 91})
    for (const double wanted : {70.0, 70.4, 70.9, 71.0, 71.6, 72.2}) {
      const Stitches count = nearestOfParity(wanted, Stitches(like));
      EXPECT_EQ(count.value() % 2, like % 2) << wanted;
      EXPECT_LE(std::abs(count.value() - wanted), 1) << wanted;
    }
}

} // namespace
} // namespace scye
