#include "model/wearer.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

Design measured() {
  Design d;
  d.title = "Harbour jacket";
  d.wearer = "Maren Holm";
  d.choose(Choice::Figure, Figure::Woman);
  d.set(Field::Bust, 94).set(Field::UpperArm, 29.5).set(Field::Waist, 41, Source::Garment);
  d.set(Field::EaseBust, 8);
  return d;
}

TEST(Wearer, KeepsBodyMeasurementsAndTheDayOnly) {
  const Design w = wearerOf(measured(), "2026-05-01");
  EXPECT_EQ(w.wearer, "Maren Holm");
  EXPECT_EQ(w.measuredOn, "2026-05-01");
  EXPECT_EQ(w.given(Field::Bust), 94);
  EXPECT_FALSE(w.has(Field::Waist)) << "taken on a garment, so not hers";
  EXPECT_FALSE(w.has(Field::EaseBust));
  EXPECT_TRUE(w.title.empty());
}

TEST(Wearer, DressesAnotherDesignAndLeavesItsStyle) {
  Design other;
  other.title = "Bolero";
  other.set(Field::EaseBust, 2).set(Field::Hip, 99).set(Field::Wrist, 10, Source::Garment);
  const Design worn = forWearer(other, wearerOf(measured(), "2026-05-01"));
  EXPECT_EQ(worn.title, "Bolero");
  EXPECT_EQ(worn.given(Field::Bust), 94);
  EXPECT_EQ(worn.given(Field::EaseBust), 2);
  EXPECT_FALSE(worn.has(Field::Hip)) << "another body's hip must not stay";
  EXPECT_EQ(worn.given(Field::Wrist), 10) << "taken on a garment, so not a body's";
}

TEST(Wearer, ChangesSinceAreNamedFieldByField) {
  const Design d = measured();
  Design kept = wearerOf(d, "2026-05-01");
  EXPECT_TRUE(changedSince(d, kept).empty());
  kept.set(Field::Bust, 96).set(Field::Hip, 101);
  EXPECT_EQ(changedSince(d, kept), (std::vector{Field::Bust, Field::Hip}));
}

} // namespace
} // namespace scye
