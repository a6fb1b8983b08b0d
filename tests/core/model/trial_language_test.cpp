// The made-up language is what the tests that use it rely on: whole, longer, unlike English.
#include "support/trial_language.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cctype>

#include <cctype>

namespace scye {
namespace {

std::size_t letters(std::string_view text) {
  return std::size_t(
      std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

TEST(TrialLanguage, changesEveryWordAndMakesItLonger) {
  Phrases english;
  english.add(test::englishPhraseFiles());
  const Phrases& trial = test::trialPhrases();
  for (const std::string& key : english.keys()) {
    if (key == "language.rules") continue;
    EXPECT_TRUE(trial.has(key)) << key;
    for (const MessagePart& part : *english.message(key))
      if (part.kind == MessagePart::Kind::Text) {
        const std::string words = test::trialWords(part.text);
        EXPECT_EQ(test::firstEnglishWord(words), "") << key;
        if (test::firstEnglishWord(part.text).empty()) continue;
        const auto plain = std::count_if(part.text.begin(), part.text.end(),
                                         [](unsigned char c) { return std::isalpha(c) != 0; });
        EXPECT_GE(double(letters(words)), 1.4 * double(plain)) << key;
      }
  }
}

TEST(TrialLanguage, readsWithoutAComplaint) {
  Phrases phrases(test::kTrialLanguage);
  for (const auto& problem : phrases.add(test::trialPhraseFile()))
    ADD_FAILURE() << problem.line << ": " << problem.text;
  EXPECT_THAT(phrases.loose(), testing::IsEmpty());
}

TEST(TrialLanguage, hasThreePluralFormsAndADecimalComma) {
  const Phrases& trial = test::trialPhrases();
  const auto sts = [&](int n) { return trial.say("count.sts", {numberParam("n", n)}); };
  EXPECT_EQ(sts(1), "1 šţůů");
  EXPECT_EQ(sts(21), "21 šţůů");
  EXPECT_EQ(sts(3), "3 šţšůůŷ");
  EXPECT_EQ(sts(5), "5 šţšůů");
  EXPECT_EQ(trial.length(41.52, LengthUnit::Centimetre), "41,5 čɱůů");
}

} // namespace
} // namespace scye
