#include "model/sizes.h"
#include "model/units.h"

#include <gtest/gtest.h>

#include <type_traits>

namespace scye {
namespace {

Sizes sizesWith(std::initializer_list<std::pair<Field, double>> values) {
  Sizes s;
  s.origins.fill(Origin::GivenBody);
  for (const auto& [f, v] : values)
    s.values[std::size_t(f)] = v;
  return s;
}

void takenOnGarment(Sizes& s, Field f) {
  s.origins[std::size_t(f)] = Origin::GivenGarment;
}

TEST(Sizes, bodyMeasurementGrowsByItsEase) {
  const Sizes s = sizesWith({{Field::Bust, 92}, {Field::EaseBust, -6}, {Field::NeckBase, 36}});
  EXPECT_DOUBLE_EQ(s.finished(Field::Bust), 86);
  EXPECT_DOUBLE_EQ(s.body(Field::Bust), 92);
  EXPECT_DOUBLE_EQ(s.finished(Field::NeckBase), 36) << "has no ease";
}

TEST(Sizes, flatGarmentGirthIsHalfAndHoldsItsEase) {
  Sizes s = sizesWith({{Field::Bust, 49}});
  s.usualEase[std::size_t(Field::EaseBust)] = 6;
  takenOnGarment(s, Field::Bust);
  EXPECT_DOUBLE_EQ(s.finished(Field::Bust), 98);
  EXPECT_DOUBLE_EQ(s.body(Field::Bust), 92);
  s.values[std::size_t(Field::EaseBust)] = 2; // wider than that garment
  EXPECT_DOUBLE_EQ(s.finished(Field::Bust), 100);
  EXPECT_DOUBLE_EQ(s.body(Field::Bust), 92);
}

TEST(Sizes, flatGarmentLengthIsWholeAndHoldsItsEase) {
  Sizes s = sizesWith({{Field::CrossBack, 38}, {Field::CrossShoulder, 40}});
  s.usualEase[std::size_t(Field::EaseCrossBack)] = 1;
  takenOnGarment(s, Field::CrossBack);
  EXPECT_DOUBLE_EQ(s.finished(Field::CrossBack), 38);
  EXPECT_DOUBLE_EQ(s.body(Field::CrossBack), 37);
}

// Depth ease is taken off sleeve and body, so wrist and hem stay where they are.
TEST(Sizes, depthEaseLeavesHemAndWristInPlace) {
  Sizes s = sizesWith({{Field::ArmholeDepth, 18}, // from the nape; tip and nape at one height here
                       {Field::EaseArmholeDepth, 2},
                       {Field::HemToUnderarm, 35},
                       {Field::SleeveToUnderarm, 44}});
  EXPECT_DOUBLE_EQ(s.finished(Field::ArmholeDepth) + s.finished(Field::HemToUnderarm), 18 + 35);
  EXPECT_DOUBLE_EQ(s.finished(Field::SleeveToUnderarm), 42);
  takenOnGarment(s, Field::SleeveToUnderarm);
  EXPECT_DOUBLE_EQ(s.finished(Field::SleeveToUnderarm), 44) << "the garment's sleeve as it is";
  takenOnGarment(s, Field::ArmholeDepth);
  EXPECT_DOUBLE_EQ(s.finished(Field::HemToUnderarm), 33) << "2 cm deeper than that garment";
}

TEST(Counts, stayWithinTheirKind) {
  static_assert(!std::is_convertible_v<Stitches, Rows>);
  static_assert(!std::is_convertible_v<int, Stitches>);
  EXPECT_EQ(Stitches(5) + Stitches(3) * 2, Stitches(11));
  EXPECT_EQ(-(Rows(4) - Rows(6)), Rows(2));
  EXPECT_LT(Rows(3), Rows(4));
}

} // namespace
} // namespace scye
