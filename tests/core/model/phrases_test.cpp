#include "model/phrases.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

namespace scye {
namespace {

Phrases phrasesOf(std::string_view file) {
  Phrases phrases;
  EXPECT_TRUE(phrases.add(file).empty());
  return phrases;
}

TEST(NumberText, roundsAndDropsTrailingZeros) {
  EXPECT_EQ(numberText(3), "3");
  EXPECT_EQ(numberText(3.10), "3.1");
  EXPECT_EQ(numberText(3.146), "3.15");
  EXPECT_EQ(numberText(2.96, 1), "3");
  EXPECT_EQ(numberText(120, 0), "120");
  EXPECT_EQ(numberText(-0.001), "0") << "no minus before nothing";
  EXPECT_EQ(numberText(-1.5), "-1.5");
}

TEST(LengthText, speaksCentimetresToTheMillimetre) {
  EXPECT_EQ(lengthText(41.52, LengthUnit::Centimetre), "41.5 cm");
  EXPECT_EQ(lengthText(7, LengthUnit::Centimetre), "7 cm");
}

TEST(LengthText, speaksInchesToTheQuarter) {
  const auto inches = [](double in) { return lengthText(2.54 * in, LengthUnit::Inch); };
  EXPECT_EQ(inches(16.25), "16 1/4 in");
  EXPECT_EQ(inches(16.6), "16 1/2 in");
  EXPECT_EQ(inches(0.75), "3/4 in");
  EXPECT_EQ(inches(2), "2 in");
  EXPECT_EQ(inches(1.95), "2 in") << "rounding carries into the whole";
  EXPECT_EQ(inches(0.1), "0 in");
  EXPECT_EQ(inches(-0.1), "0 in");
  EXPECT_EQ(inches(-2.5), "-2 1/2 in");
}

TEST(Phrases, fillPlacesByTheirKind) {
  const Phrases p = phrasesOf("side.back = back\n"
                              "all = {l}; {n}; {p}; {t}; {k}\n");
  const Params params{lengthParam("l", 25.4), numberParam("n", 4.5), percentParam("p", 0.655),
                      textParam("t", "words"), phraseParam("k", "side.back")};
  EXPECT_EQ(p.say("all", params), "25.4 cm; 4.5; 66 %; words; back");
  EXPECT_EQ(p.say("all", params, LengthUnit::Inch), "10 in; 4.5; 66 %; words; back");
}

TEST(Phrases, chooseSingularOrPlural) {
  const Phrases p = phrasesOf("st = {n} {n|stitch|stitches}\nbare = {n|one}\n");
  EXPECT_EQ(p.say("st", {numberParam("n", 1)}), "1 stitch");
  EXPECT_EQ(p.say("st", {numberParam("n", 0)}), "0 stitches");
  EXPECT_EQ(p.say("st", {numberParam("n", 12)}), "12 stitches");
  EXPECT_EQ(p.say("bare", {numberParam("n", 3)}), "one") << "without a plural the one form serves";
}

TEST(Phrases, goOnAfterABackslash) {
  const Phrases p = phrasesOf("long = one \\\n   two \\\n three\nnext = four\n");
  EXPECT_EQ(p.say("long"), "one two three");
  EXPECT_EQ(p.say("next"), "four");
}

TEST(Phrases, takeALastLineThatGoesOnIntoNothing) {
  EXPECT_EQ(phrasesOf("last = one \\\n").say("last"), "one");
  EXPECT_EQ(phrasesOf("last = one \\").say("last"), "one");
}

TEST(Phrases, skipCommentsAndBlankLines) {
  const Phrases p = phrasesOf("# a = b\n\n  # c = d \\\n e = f\r\n");
  EXPECT_THAT(p.keys(), testing::ElementsAre("e"));
  EXPECT_EQ(p.say("e"), "f");
}

TEST(Phrases, tellProblemsWithTheirLineAndTakeTheRest) {
  Phrases p;
  const auto problems = p.add("a = b\nno equals sign\nc = d\nbroken \\\nover two lines\n");
  ASSERT_EQ(problems.size(), 2u);
  EXPECT_EQ(problems[0].line, 2);
  EXPECT_THAT(problems[0].text, testing::HasSubstr("no equals sign"));
  EXPECT_EQ(problems[1].line, 4) << "the line on which the phrase began";
  EXPECT_EQ(p.say("c"), "d");
}

TEST(Phrases, laterFilesOverlayEarlierOnes) {
  Phrases p = phrasesOf("a = one\nb = two\n");
  p.add("a = eins\n");
  EXPECT_EQ(p.say("a"), "eins");
  EXPECT_EQ(p.say("b"), "two");
}

TEST(Phrases, holdOtherPhrases) {
  const Phrases p = phrasesOf("inner = {n} rows\nouter = work {@inner} even\n");
  EXPECT_EQ(p.say("outer", {numberParam("n", 6)}), "work 6 rows even");
}

TEST(Phrases, showWhatIsMissing) {
  const Phrases p =
      phrasesOf("a = {there} and {gone}\nopen = {never closed\nself = again {@self}\n");
  EXPECT_EQ(p.say("unknown"), "[unknown]");
  EXPECT_EQ(p.say("a", {textParam("there", "x")}), "x and {gone}");
  EXPECT_EQ(p.say("open"), "{never closed");
  EXPECT_THAT(p.say("self"), testing::HasSubstr("[self]")) << "a phrase that holds itself ends";
}

// Every phrase file of the program reads without a complaint, and all its words are built in.
TEST(BuiltinPhrases, areTheFilesInResources) {
  std::size_t words = 0;
  for (const auto& file : std::filesystem::directory_iterator(SCYE_RESOURCES "/phrases")) {
    std::ifstream in(file.path());
    std::ostringstream text;
    text << in.rdbuf();
    Phrases read;
    for (const auto& problem : read.add(text.str()))
      ADD_FAILURE() << file.path() << ":" << problem.line << ": " << problem.text;
    for (const std::string& key : read.keys())
      EXPECT_TRUE(builtinPhrases().has(key)) << file.path() << ": " << key;
    words += read.keys().size();
  }
  EXPECT_EQ(words, builtinPhrases().keys().size()) << "no phrase stands in two files";
  EXPECT_GT(words, 100u);
}

} // namespace
} // namespace scye
