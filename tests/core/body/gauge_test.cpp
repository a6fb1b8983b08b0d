#include "body/advice.h"
#include "body/gauge.h"
#include "draft/complete.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

using Use = SwatchReading::Use;

Design counted() {
  Design d;
  d.set(Field::Bust, 94).set(Field::SwatchStitches, 22).set(Field::SwatchRows, 30);
  return d;
}

TEST(Gauge, OfOneSwatchIsItsCountOverItsLength) {
  const GaugeReport g = gaugeReport(counted());
  ASSERT_TRUE(g.across && g.along);
  EXPECT_NEAR(g.across->size.value, 10.0 / 22, 1e-12);
  EXPECT_NEAR(g.along->size.value, 10.0 / 30, 1e-12);
  EXPECT_NEAR(complete(counted()).stitch.width, 10.0 / 22, 1e-12);
}

TEST(Gauge, PoolsSwatchesOfTheSameFabricAndNoOthers) {
  Design d = counted();
  d.swatches.push_back({"larger", Use::Same, 45, 20, 0, 10, 0});
  d.swatches.push_back({"rib", Use::OtherPattern, 26, 10, 32, 10, 0});
  d.swatches.push_back({"off the needles", Use::BeforeWashing, 24, 10, 30, 10, 0});
  const GaugeReport g = gaugeReport(d);
  // Least squares through the origin: (22*10 + 45*20) / (100 + 400) stitches a centimetre.
  EXPECT_NEAR(1 / g.across->size.value, (22.0 * 10 + 45 * 20) / 500, 1e-12);
  EXPECT_NEAR(complete(d).stitch.width, g.across->size.value, 1e-12);
  EXPECT_NEAR(g.along->size.value, 10.0 / 30, 1e-12) << "the larger one's rows were not counted";
  ASSERT_TRUE(g.otherAcross);
  EXPECT_EQ(g.otherLabel, "rib");
  EXPECT_NEAR(g.otherAcross->size.value, 10.0 / 26, 1e-12);
  EXPECT_LT(g.across->size.deviation / g.across->size.value,
            gaugeReport(counted()).across->size.deviation / (10.0 / 22))
      << "more counting, more certain";
  ASSERT_TRUE(g.washedAcross());
  EXPECT_GT(*g.washedAcross(), 0) << "fewer stitches in 10 cm after washing: it grew";
}

TEST(Gauge, WeighsWhatWasWeighed) {
  Design d = counted();
  EXPECT_EQ(gaugeReport(d).gramsPerSquareMetre, 0);
  d.set(Field::SwatchWeight, 3);
  EXPECT_NEAR(gaugeReport(d).gramsPerSquareMetre, 300, 1e-9);
}

TEST(Advice, NamesAYarnThatDoesNotGoWithItsGauge) {
  Design d = counted();
  d.choose(Choice::YarnClass, 6 + 1); // super bulky, 7-11 stitches: Craft Yarn Council
  EXPECT_TRUE(findCode(adviceOn(d, complete(d)), "yarn.tight"));
  d.choose(Choice::YarnClass, 3 + 1); // light, 21-24
  EXPECT_FALSE(findCode(adviceOn(d, complete(d)), "yarn.tight"));
}

TEST(Advice, DoubtsAHalfGirthAndCorrectsIt) {
  Design d = counted();
  d.set(Field::Waist, 76).set(Field::Hip, 50.5).set(Field::UpperArm, 29.5);
  const Findings advice = adviceOn(d, complete(d));
  const Finding* doubt = findCode(advice, "doubt.half");
  ASSERT_TRUE(doubt);
  EXPECT_EQ(doubt->fields.front(), Field::Hip);
  ASSERT_FALSE(doubt->remedies.empty());
  const Design mended = applied(d, doubt->remedies.back());
  EXPECT_NEAR(*mended.given(Field::Hip), 101, 1e-9);
  EXPECT_FALSE(findCode(adviceOn(mended, complete(mended)), "doubt.half"));
}

} // namespace
} // namespace scye
