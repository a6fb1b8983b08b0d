// A garment from the design to the last sleeve, as somebody knits it whose gauge and armholes come
// out otherwise than planned.

#include "core/progress/knitter.h"
#include "support/random_designs.h"

namespace scye {
namespace {

class Stories : public ::testing::TestWithParam<std::string> {};

TEST_P(Stories, EndWithACapThatMeetsItsArmhole) {
  const Design design = demoDesign(GetParam());
  constexpr int kStories = 100;
  int met = 0, inTheBodice = 0, recounts = 0;
  double worst = 0;
  for (unsigned seed = 1; seed <= kStories; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Knitter knitter(design, seed);
    knitter.knitsToARandomRow();
    knitter.measures();
    knitter.refits();
    // An armhole is known once its pieces are off the needles.
    knitter.finishesTheBodice();
    knitter.measures();
    knitter.refits();
    knitter.finishes();
    EXPECT_TRUE(knitter.countsAgree());
    EXPECT_TRUE(knitter.seamsMeet());
    const double off = knitter.worstSeam();
    if (std::abs(off) > 0.3)
      std::printf("%s: seed %u off by %.2f\n", GetParam().c_str(), seed, off);
    if (std::abs(off) > std::abs(worst)) worst = off;
    met += std::abs(off) <= 0.3 ? 1 : 0;
    inTheBodice += knitter.stoppedInTheBodice() ? 1 : 0;
    recounts += knitter.recounts();
  }
  RecordProperty("met", met);
  std::printf("%s: %d of %d met, the worst off by %.2f cm; %d were in the bodice, %d recounted\n",
              GetParam().c_str(), met, kStories, worst, inTheBodice, recounts);
  EXPECT_GE(met, 99);
  EXPECT_GT(inTheBodice, kStories / 4);
}

INSTANTIATE_TEST_SUITE_P(Demos, Stories, ::testing::ValuesIn(demoNames()),
                         [](const auto& named) { return named.param; });

} // namespace
} // namespace scye
