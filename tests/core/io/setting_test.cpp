#include "io/setting.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace scye {
namespace {

using testing::HasSubstr;
using testing::Optional;

std::optional<std::string> apply(Design& design, std::string_view setting) {
  return applySetting(design, setting, builtinPhrases());
}

TEST(Setting, FieldsTakeNumbersInCmOrInches) {
  Design design;
  EXPECT_EQ(apply(design, "bust=94"), std::nullopt);
  EXPECT_EQ(design.given(Field::Bust), 94);
  EXPECT_EQ(apply(design, "ease.bust=+8.5cm"), std::nullopt);
  EXPECT_EQ(design.given(Field::EaseBust), 8.5);
  EXPECT_EQ(apply(design, "ease.bust=-2 in"), std::nullopt);
  EXPECT_EQ(design.given(Field::EaseBust), -5.08); // 2.54 cm to the inch, exact by definition
  EXPECT_EQ(apply(design, "swatch.stitches=22.5"), std::nullopt);
  EXPECT_EQ(design.given(Field::SwatchStitches), 22.5);
  EXPECT_EQ(apply(design, "scoop.back=5e-1"), std::nullopt);
  EXPECT_EQ(design.given(Field::ScoopBack), 0.5);
}

TEST(Setting, AMeasurementKeepsItsSourceUnlessAnotherIsNamed) {
  Design design;
  design.set(Field::Bust, 47, Source::Garment);
  EXPECT_EQ(apply(design, "bust=48"), std::nullopt);
  EXPECT_EQ(design.source(Field::Bust), Source::Garment);
  EXPECT_EQ(apply(design, "bust=96@body"), std::nullopt);
  EXPECT_EQ(design.source(Field::Bust), Source::Body);
  EXPECT_EQ(apply(design, "bust=20in@garment"), std::nullopt);
  EXPECT_EQ(design, Design().set(Field::Bust, 50.8, Source::Garment));
}

TEST(Setting, ChoicesTakeTheirOptions) {
  Design design;
  EXPECT_EQ(apply(design, "garment=jacket"), std::nullopt);
  EXPECT_EQ(design.as<Garment>(), Garment::Jacket);
}

TEST(Setting, WhatMakesNoSenseIsToldAndChangesNothing) {
  const std::pair<const char*, const char*> cases[] = {
      {"bust", "NAME=VALUE"},
      {"=3", "NAME=VALUE"},
      {"", "NAME=VALUE"},
      {"knee=3", "nothing is called \"knee\""},
      {"bust=", "no number"},
      {"bust=94,5", "no number"},
      {"bust=94 cm in", "no number"},
      {"scoop.back=0.5cm", "no number"},
      {"ease.bust=8@garment", "no number"},
      {"bust=nan", "not a number"},
      {"bust=inf", "not a number"},
      {"bust=1e999", "no number"},
      {"bust=94in", "at most 220 cm"},
      {"pattern.multiple=2.5", "whole numbers only"},
      {"garment=coat", "pullover, jacket"},
  };
  const Design before = Design().set(Field::Bust, 90).choose(Choice::Garment, Garment::Jacket);
  for (const auto& [setting, reason] : cases) {
    Design design = before;
    EXPECT_THAT(apply(design, setting), Optional(HasSubstr(reason))) << setting;
    EXPECT_EQ(design, before) << setting;
  }
}

} // namespace
} // namespace scye
