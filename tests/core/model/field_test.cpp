#include "model/field.h"

#include "model/phrases.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace scye {
namespace {

TEST(Fields, keyLeadsBackToItsField) {
  std::set<std::string_view> keys;
  for (int i = 0; i < kFieldCount; ++i) {
    const FieldInfo& f = info(Field(i));
    EXPECT_EQ(int(f.id), i);
    EXPECT_EQ(fieldByKey(f.key), f.id) << f.key;
    EXPECT_TRUE(keys.insert(f.key).second) << "twice: " << f.key;
  }
  EXPECT_FALSE(fieldByKey("bus"));
  EXPECT_FALSE(fieldByKey(""));
}

TEST(Fields, rangeIsNotEmptyAndASliderMoves) {
  for (int i = 0; i < kFieldCount; ++i) {
    const FieldInfo& f = info(Field(i));
    EXPECT_LT(f.low, f.high) << f.key;
    EXPECT_GT(f.span, 0) << f.key;
    EXPECT_LE(f.span, f.high - f.low) << f.key;
  }
}

TEST(Fields, measurementAndEaseLeadToEachOther) {
  int eases = 0;
  for (int i = 0; i < kFieldCount; ++i) {
    const Field f = Field(i);
    if (const auto ease = easeOf(f)) {
      EXPECT_TRUE(isMeasurement(f));
      EXPECT_EQ(info(*ease).group, FieldGroup::Ease);
      EXPECT_EQ(measurementOf(*ease), f);
      ++eases;
    }
    EXPECT_EQ(measurementOf(f).has_value(), info(f).group == FieldGroup::Ease) << info(f).key;
  }
  EXPECT_EQ(eases, 10);
}

TEST(Choices, keysAndOptionsLeadBack) {
  for (int i = 0; i < kChoiceCount; ++i) {
    const ChoiceInfo& c = info(Choice(i));
    EXPECT_EQ(int(c.id), i);
    EXPECT_EQ(choiceByKey(c.key), c.id);
    EXPECT_GE(c.options.size(), 2u);
    int at = 0;
    for (std::string_view option : c.options)
      EXPECT_EQ(optionByKey(c.id, option), at++) << option;
    EXPECT_FALSE(optionByKey(c.id, "another"));
  }
  EXPECT_FALSE(choiceByKey("colour"));
}

TEST(Choices, optionsStandInTheOrderOfTheirTypes) {
  EXPECT_EQ(optionByKey(Choice::Figure, "baby"), int(Figure::Baby));
  EXPECT_EQ(optionByKey(Choice::Garment, "jacket"), int(Garment::Jacket));
  EXPECT_EQ(optionByKey(Choice::Neckline, "square"), int(Neckline::Square));
  EXPECT_EQ(optionByKey(Choice::SideSeam, "shaped"), int(SideSeam::Shaped));
  EXPECT_EQ(optionByKey(Choice::SleeveLine, "fitted"), int(SleeveLine::Fitted));
  EXPECT_EQ(optionByKey(Choice::SleeveFrom, "shoulder"), int(SleeveFrom::Shoulder));
  EXPECT_EQ(optionByKey(Choice::CapLean, "leaning"), int(CapLean::Leaning));
  EXPECT_EQ(optionByKey(Choice::WorkedOut, "capEase"), int(WorkedOut::CapEase));
  EXPECT_EQ(optionByKey(Choice::BandMade, "pickedUp"), int(BandMade::PickedUp));
  EXPECT_EQ(optionByKey(Choice::Washed, "yes"), int(YesNo::Yes));
}

TEST(BuiltinPhrases, nameEveryFieldChoiceAndOption) {
  const Phrases& phrases = builtinPhrases();
  for (int i = 0; i < kFieldCount; ++i)
    EXPECT_TRUE(phrases.has("field." + std::string(info(Field(i)).key))) << info(Field(i)).key;
  for (int i = 0; i < kChoiceCount; ++i) {
    const ChoiceInfo& c = info(Choice(i));
    const std::string key = "choice." + std::string(c.key);
    EXPECT_TRUE(phrases.has(key)) << key;
    for (std::string_view option : c.options)
      EXPECT_TRUE(phrases.has(key + "." + std::string(option))) << key << "." << option;
  }
}

} // namespace
} // namespace scye
