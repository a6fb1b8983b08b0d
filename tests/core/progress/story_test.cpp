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
  int met = 0;
  double worst = 0;
  for (unsigned seed = 1; seed <= kStories; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Knitter knitter(design, seed);
    knitter.knitsTheBodice();
    knitter.knitsToARandomRowOfTheSleeves();
    knitter.refits();
    knitter.finishes();
    EXPECT_TRUE(knitter.countsAgree());
    const double off = knitter.worstSeam();
    if (std::abs(off) > std::abs(worst)) worst = off;
    met += std::abs(off) <= 0.3 ? 1 : 0;
  }
  RecordProperty("met", met);
  std::printf("%s: %d of %d met, the worst off by %.2f cm\n", GetParam().c_str(), met, kStories,
              worst);
  EXPECT_GE(met, 99);
}

INSTANTIATE_TEST_SUITE_P(Demos, Stories, ::testing::ValuesIn(demoNames()),
                         [](const auto& named) { return named.param; });

} // namespace
} // namespace scye
