// The words of the measuring guide.
#include "schematic/guide_tape.h"

#include "model/phrases.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

TEST(GuideTexts, areThereForEveryMeasurementAndNoOther) {
  const Phrases& phrases = builtinPhrases();
  for (int i = 0; i < kFieldCount; ++i) {
    const Field f = Field(i);
    const std::string key = "guide." + std::string(info(f).key);
    for (const char* part : {".body", ".alone", ".spoils"})
      EXPECT_EQ(phrases.has(key + part), isMeasurement(f)) << key << part;
    EXPECT_EQ(phrases.has(key + ".garment"), canTakeOn(f, Source::Garment)) << key;
  }
}

TEST(GuideTexts, areShortAndWhole) {
  const Phrases& phrases = builtinPhrases();
  int texts = 0;
  for (const std::string& key : phrases.keys()) {
    if (!key.starts_with("guide.") || key.starts_with("guide.sheet.")) continue;
    const std::string text = phrases.say(key);
    EXPECT_EQ(text.find_first_of("[]{}"), std::string::npos) << key << ": " << text;
    EXPECT_LE(text.size(), 300u) << key;
    if (key.ends_with(".body") || key.ends_with(".garment") || key.ends_with(".alone") ||
        key.ends_with(".spoils")) {
      ++texts;
      EXPECT_EQ(text.back() == '.', !key.starts_with("guide.title.")) << key;
    }
  }
  EXPECT_GT(texts, 75);
}

// A flat width is half the way round: every girth says so, and only girths do.
TEST(GuideTexts, sayOfFlatGirthsThatTheyAreHalf) {
  for (int i = 0; i < kFieldCount; ++i) {
    const Field f = Field(i);
    if (!canTakeOn(f, Source::Garment)) continue;
    const std::string text = builtinPhrases().say("guide." + std::string(info(f).key) + ".garment");
    EXPECT_EQ(text.find("half the way round") != std::string::npos,
              info(f).kind == FieldKind::Girth)
        << text;
  }
}

} // namespace
} // namespace scye
