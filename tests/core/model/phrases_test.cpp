#include "model/languages.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

namespace scye {
namespace {

Phrases phrasesOf(std::string_view file, const std::string& language = "en") {
  Phrases phrases(language);
  EXPECT_TRUE(phrases.add(file).empty());
  return phrases;
}

constexpr std::string_view kUnits =
    "unit.length.cm = {n} cm\nunit.length.inch = {n} in\nunit.percent = {n} %\n";

TEST(Lengths, areCentimetresToTheMillimetre) {
  const Phrases p = phrasesOf(kUnits);
  EXPECT_EQ(p.length(41.52, LengthUnit::Centimetre), "41.5 cm");
  EXPECT_EQ(p.length(7, LengthUnit::Centimetre), "7 cm");
}

TEST(Lengths, areWrittenWithTheSignsOfTheLanguage) {
  const Phrases p = phrasesOf(std::string(kUnits) + "share = {s}; {l}; {n}\n", "hr");
  EXPECT_EQ(p.length(41.52, LengthUnit::Centimetre), "41,5 cm");
  EXPECT_EQ(p.percent(0.125, 1), "12,5 %");
  EXPECT_EQ(p.say("share", {percentParam("s", 0.5), lengthParam("l", 7.26), numberParam("n", 4.5)}),
            "50 %; 7,3 cm; 4,5");
}

TEST(Lengths, areInchesToTheEighth) {
  const Phrases p = phrasesOf(kUnits);
  const auto inches = [&](double in) { return p.length(2.54 * in, LengthUnit::Inch); };
  EXPECT_EQ(inches(16.25), "16 1/4 in");
  EXPECT_EQ(inches(16.6), "16 5/8 in");
  EXPECT_EQ(inches(16.5), "16 1/2 in");
  EXPECT_EQ(inches(0.75), "3/4 in");
  EXPECT_EQ(inches(2), "2 in");
  EXPECT_EQ(inches(1.95), "2 in") << "rounding carries into the whole";
  EXPECT_EQ(inches(0.1), "1/8 in");
  EXPECT_EQ(inches(0.06), "0 in");
  EXPECT_EQ(inches(-0.06), "0 in");
  EXPECT_EQ(inches(-0.37), "-3/8 in");
  EXPECT_EQ(inches(-2.5), "-2 1/2 in");
  EXPECT_EQ(inches(-0.25), "-1/4 in");
}

TEST(Phrases, fillPlacesByTheirKind) {
  const Phrases p = phrasesOf(std::string(kUnits) + "side.back = back\n"
                                                    "all = {l}; {n}; {p}; {t}; {k}\n");
  const Params params{lengthParam("l", 25.4), numberParam("n", 4.5), percentParam("p", 0.655),
                      textParam("t", "words"), phraseParam("k", "side.back")};
  EXPECT_EQ(p.say("all", params), "25.4 cm; 4.5; 66 %; words; back");
  EXPECT_EQ(p.say("all", params, LengthUnit::Inch), "10 in; 4.5; 66 %; words; back");
}

TEST(Phrases, chooseThePluralFormOfTheLanguage) {
  constexpr std::string_view kFile =
      "st = {n, plural, =0 {none} one {# stitch} few {# stitcha} other {# stitches}}\n";
  const auto st = [](const Phrases& p, double n) { return p.say("st", {numberParam("n", n)}); };
  const Phrases en = phrasesOf(kFile), hr = phrasesOf(kFile, "hr"), ja = phrasesOf(kFile, "ja");
  EXPECT_EQ(st(en, 0), "none");
  EXPECT_EQ(st(en, 1), "1 stitch");
  EXPECT_EQ(st(en, 3), "3 stitches");
  EXPECT_EQ(st(en, 21), "21 stitches");
  EXPECT_EQ(st(en, 1.5), "1.5 stitches");
  EXPECT_EQ(st(hr, 21), "21 stitch");
  EXPECT_EQ(st(hr, 3), "3 stitcha");
  EXPECT_EQ(st(hr, 5), "5 stitches");
  EXPECT_EQ(st(ja, 1), "1 stitches");
}

TEST(Phrases, countThingsByTheirOwnPhrase) {
  const Phrases p = phrasesOf("count.sts = {n, plural, one {# st} other {# sts}}\n"
                              "count.nth = {n, selectordinal, one {#st} two {#nd} few {#rd} other "
                              "{#th}}\nall = {k, sts} on every {m, nth} row\n");
  EXPECT_EQ(p.say("all", {numberParam("k", 1), numberParam("m", 2)}), "1 st on every 2nd row");
  EXPECT_EQ(p.say("all", {numberParam("k", 12), numberParam("m", 111)}),
            "12 sts on every 111th row");
  EXPECT_TRUE(p.loose().empty());
  EXPECT_THAT(phrasesOf("a = {k, sts}\n").loose(), testing::ElementsAre("a: count.sts"));
}

TEST(Phrases, selectByAKey) {
  const Phrases p = phrasesOf("row = {side, select, RS {an RS} other {a WS}} row\n");
  EXPECT_EQ(p.say("row", {textParam("side", "RS")}), "an RS row");
  EXPECT_EQ(p.say("row", {textParam("side", "WS")}), "a WS row");
}

TEST(Phrases, joinListsAsTheLanguageDoes) {
  const std::vector<std::string> three{"a", "b", "c"};
  EXPECT_EQ(builtinPhrases().list(three), "a, b and c");
  EXPECT_EQ(phrasesOf("", "hr").list(three), "a, b i c");
  EXPECT_EQ(phrasesOf("", "en").list(std::span(three).first(1)), "a");
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

TEST(Phrases, showWhatIsMissing) {
  const Phrases p = phrasesOf("a = {there} and {gone}\n"
                              "count.self = {n, self}\nself = again {n, self}\n");
  EXPECT_EQ(p.say("unknown"), "[unknown]");
  EXPECT_EQ(p.say("a", {textParam("there", "x")}), "x and {gone}");
  EXPECT_EQ(p.say("self", {numberParam("n", 1)}), "again [count.self]")
      << "a phrase that holds itself ends";
}

TEST(Phrases, nameAPhraseThatIsNoMessage) {
  for (const std::string_view bad :
       {"{never closed", "{k|st|sts}", "{k, plural, one {st}}",
        "{k, plural, some {st} other {sts}}", "{bind off}", "{n, number, 0.0}", "{@other}"}) {
    Phrases p;
    const auto problems = p.add("ok = fine\nbad.key = " + std::string(bad) + "\n");
    ASSERT_EQ(problems.size(), 1u) << bad;
    EXPECT_EQ(problems[0].line, 2);
    EXPECT_THAT(problems[0].text, testing::StartsWith("bad.key: ")) << bad;
    EXPECT_EQ(p.say("bad.key"), bad) << "taken as it stands";
  }
}

// Every phrase file of the program reads without a complaint, and all its words are built in.
TEST(BuiltinPhrases, areTheFilesInResources) {
  std::map<std::string, std::size_t> words;
  for (const auto& file :
       std::filesystem::recursive_directory_iterator(SCYE_RESOURCES "/phrases")) {
    if (!file.is_regular_file()) continue;
    std::ifstream in(file.path());
    std::ostringstream text;
    text << in.rdbuf();
    const std::string language = file.path().parent_path().filename();
    Phrases read(language);
    for (const auto& problem : read.add(text.str()))
      ADD_FAILURE() << file.path() << ":" << problem.line << ": " << problem.text;
    const Phrases all = phrasesIn(language);
    for (const std::string& key : read.keys()) {
      EXPECT_TRUE(all.has(key)) << file.path() << ": " << key;
      EXPECT_TRUE(builtinPhrases().has(key) || key.starts_with("dir.") ||
                  key.starts_with(kCountPrefix))
          << file.path() << ": " << key << " is no phrase of the program";
    }
    words[language] += read.keys().size();
  }
  EXPECT_EQ(words.size(), builtinLanguages().size());
  EXPECT_EQ(words["en"], builtinPhrases().keys().size()) << "no phrase stands in two files";
  EXPECT_GT(words["en"], 100u);
  for (const std::string& language : builtinLanguages())
    EXPECT_THAT(phrasesIn(language).loose(), testing::IsEmpty()) << language;
}

TEST(Languages, areWishedForByTheEnvironmentInPosixWords) {
  EXPECT_EQ(languageTag("de_AT.UTF-8@euro"), "de-AT");
  EXPECT_EQ(languageTag("C.UTF-8"), "");
  EXPECT_EQ(languageTag("POSIX"), "");
  EXPECT_EQ(languageTag("en"), "en");
}

TEST(Languages, fallBackToTheNearestAndThenToEnglish) {
  const std::vector<std::string> there{"en", "hr", "pt-BR"};
  const auto pick = [&](std::vector<std::string> wishes) { return pickLanguage(wishes, there); };
  EXPECT_EQ(pick({"hr-HR"}), "hr");
  EXPECT_EQ(pick({"hr-Latn-HR"}), "hr");
  EXPECT_EQ(pick({"pt-br"}), "pt-BR");
  EXPECT_EQ(pick({"pt"}), "en") << "Brazilian words are not all Portuguese ones";
  EXPECT_EQ(pick({"", "xx", "hr"}), "hr");
  EXPECT_EQ(pick({}), "en");
}

} // namespace
} // namespace scye
