#include "io/design_file.h"

#include "fuzz/design_text.h"
#include "io/files.h"
#include "support/random_designs.h"

#include <filesystem>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <random>
#include <string>
#include <vector>

namespace scye {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

// A whole file whose interesting part stands on line 2.
std::string fileWith(const std::string& rest) {
  return "{\"format\": \"scyewright-design\", \"version\": 2,\n" + rest + "\n}\n";
}

struct BadFile {
  const char* name;
  std::string text;
  int line;
  const char* reason; // part of it
};

const std::vector<BadFile>& badFiles() {
  static const std::vector<BadFile> all{
      {"empty", "", 1, "empty"},
      {"blank", " \n\n", 1, "empty"},
      {"not JSON", "Cast on 112 stitches.\n", 1, "is wrong here"},
      {"another JSON file", "{\"name\": \"a\",\n\"size\": 3}", 1, "not a Scyewright design"},
      {"a list", "[1, 2]", 1, "not a Scyewright design"},
      {"a number", "12", 1, "not a Scyewright design"},
      {"another format", "{\"format\": \"drawing\", \"version\": 1}", 1, "not a Scyewright design"},
      {"no version", "{\"format\": \"scyewright-design\"}", 1, "version"},
      {"version of no kind", "{\"format\": \"scyewright-design\",\n\"version\": 0.5}", 2,
       "version"},
      {"newer version", "{\"format\": \"scyewright-design\",\n\"version\": 7, \"title\": \"\"}", 2,
       "newer version"},
      {"newer version after things unknown",
       "{\"colours\": [{\"a\": {}}],\n\"version\": 7,\n\"format\": \"scyewright-design\"}", 2,
       "newer version"},
      {"unknown key at the top", fileWith("\"colour\": \"red\""), 2, "\"colour\" is not known"},
      {"unknown choice", fileWith("\"choices\":\n{\"hood\": \"yes\"}"), 3, "\"hood\" is not known"},
      {"unknown option", fileWith("\"choices\": {\"garment\":\n\"coat\"}"), 3, "pullover, jacket"},
      {"unknown value", fileWith("\"values\": {\"ease.bust\": 8,\n\n\"ease.knee\": 2}"), 4,
       "\"ease.knee\" is not known"},
      {"measurement among the values", fileWith("\"values\": {\"bust\": 94}"), 2,
       "\"bust\" is not known"},
      {"value among the measurements",
       fileWith("\"measurements\": {\"ease.bust\": {\"value\": 8}}"), 2,
       "\"ease.bust\" is not known"},
      {"title of a wrong kind", fileWith("\"title\": 3"), 2, "\"title\" should be text"},
      {"choices of a wrong kind", fileWith("\"choices\": [\"jacket\"]"), 2,
       "\"choices\" should be a group"},
      {"number as text", fileWith("\"values\": {\"ease.bust\": \"8\"}"), 2,
       "\"ease.bust\" should be a number"},
      {"null", fileWith("\"values\": {\"ease.bust\":\nnull}"), 3, "should be a number"},
      {"measurement as a number", fileWith("\"measurements\": {\"bust\": 94}"), 2,
       "\"bust\" should be a group"},
      {"measurement without a value",
       fileWith("\"measurements\": {\"bust\": {\"source\": \"body\"}}"), 2,
       "\"bust\" has no value"},
      {"unknown source",
       fileWith("\"measurements\": {\"bust\": {\"value\": 94, \"source\": \"x\"}}"), 2,
       "body, garment"},
      {"unknown key of a measurement",
       fileWith("\"measurements\": {\"bust\": {\"value\": 94,\n\"unit\": \"cm\"}}"), 3,
       "\"unit\" is not known"},
      {"too large", fileWith("\"measurements\": {\"bust\": {\"value\": 940\n}}"), 2,
       "Bust: at most 220 cm"},
      {"too small", fileWith("\"values\": {\"scoop.back\": 0.1\n}"), 2, "at least 0.3"},
      {"not whole", fileWith("\"values\": {\"pattern.multiple\": 4.5}"), 2, "whole numbers only"},
      {"beyond all numbers", fileWith("\"values\": {\"ease.bust\":\n1e999}"), 3, "too large"},
      {"NaN", fileWith("\"values\": {\"ease.bust\": NaN}"), 2, "is wrong here"},
      {"key twice", fileWith("\"title\": \"a\",\n\"title\": \"b\""), 3, "second time"},
      {"measurement twice",
       fileWith("\"measurements\": {\"bust\": {\"value\": 94},\n\"bust\": {\"value\": 95}}"), 3,
       "\"bust\" stands here a second time"},
      {"truncated", "{\"format\": \"scyewright-design\",\n\"version\": 2,\n\"title\": \"Ja", 3,
       "ends before"},
      {"something behind", fileWith("\"title\": \"a\"") + "}", 4, "is wrong here"},
      {"a zero byte", fileWith("\"title\": \"a\"") + std::string(1, '\0') + "{", 4,
       "is wrong here"},
      {"text that is not UTF-8", fileWith("\"title\": \"\xff\""), 2, "is wrong here"},
      {"half of a pair of surrogates", fileWith("\"title\": \"a\\uddf6\""), 2, "is wrong here"},
      {"the other half", fileWith("\"title\": \"a\\ud83e!\""), 2, "is wrong here"},
      {"half of a pair in a key", fileWith("\"a\\uddf6\": 1"), 2, "is wrong here"},
      {"deeper than any design", "\n" + std::string(200'000, '['), 2, "brackets stand in brackets"},
      {"deeper than any design, in groups",
       [] {
         std::string text;
         for (int i = 0; i < 100'000; ++i)
           text += "{\"a\":";
         return text;
       }(),
       1, "not a Scyewright design"},
      {"deeper than any design, in its place",
       fileWith("\"values\": " + std::string(200'000, '[') + std::string(200'000, ']')), 2,
       "\"values\" should be a group"},
  };
  return all;
}

TEST(DesignFile, RefusesWhatIsNoDesignWithLineAndReason) {
  for (const BadFile& bad : badFiles()) {
    SCOPED_TRACE(bad.name);
    const DesignRead read = designFromJson(bad.text, builtinPhrases());
    EXPECT_FALSE(read.design);
    EXPECT_EQ(read.problem.line, bad.line);
    EXPECT_THAT(read.problem.reason, HasSubstr(bad.reason));
    EXPECT_EQ(test::wrongReading(bad.text), std::nullopt);
  }
}

// What would take many times its size in memory, or more memory than there is.
TEST(DesignFile, RefusesWhatIsLargerThanAnyDesignBeforeItIsRead) {
  const std::string start = "{\"format\": \"scyewright-design\", \"version\": 1,\n";
  const auto refused = [](const std::string& text, int line, const char* reason) {
    const DesignRead read = designFromJson(text, builtinPhrases());
    EXPECT_FALSE(read.design);
    EXPECT_EQ(read.problem.line, line);
    EXPECT_THAT(read.problem.reason, HasSubstr(reason));
  };
  refused(std::string(std::size_t(63) << 20, '['), 1, "goes on after 4 MB");
  refused(start + std::string(kLargestDesign, '\n') + "}",
          1 + int(kLargestDesign - start.size() + 1), "goes on after 4 MB");
  std::string swatches = start + "\"swatches\": [{}";
  for (std::size_t i = 0; i < kMostSwatches; ++i)
    swatches += ",{}";
  refused(swatches + "]}", 2, "more than 1000 swatches");
  std::string notes = start + "\"notes\": \"";
  notes += std::string(kLargestDesign - notes.size() - 2, 'n') + "\"}";
  EXPECT_TRUE(designFromJson(notes, builtinPhrases()).design) << "as large as may be";
  refused(notes + " ", 2, "goes on after 4 MB");
}

TEST(DesignFile, HoldsNoCharacterThatGivesOrders) {
  Design design;
  design.title = "a\x1b[2J\xC2\x9B\xE2\x80\xAE";
  const std::string text = designToJson(design);
  EXPECT_EQ(text.find_first_of("\x1b\xC2\xE2"), std::string::npos) << text;
  EXPECT_EQ(designFromJson(text, builtinPhrases()).design, design);
}

TEST(DesignFile, ReasonsStayOneShortLineWhateverStandsInTheFile) {
  const std::string key = std::string(5'000, 'k') + "\\n\\u0007";
  const DesignRead read = designFromJson(fileWith("\"" + key + "\": 1"), builtinPhrases());
  ASSERT_FALSE(read.design);
  EXPECT_LT(read.problem.reason.size(), 120u);
  const DesignRead wide =
      designFromJson(fileWith("\"a\\nb" + std::string(30, 'x') +
                              "\u00e5\u00e5\u00e5\u00e5\u00e5\u00e5\u00e5"
                              "\u00e5\u00e5\u00e5\u00e5\u00e5\u00e5\u00e5\": 1"),
                     builtinPhrases());
  EXPECT_THAT(wide.problem.reason, HasSubstr("a bxxx"));
  EXPECT_THAT(wide.problem.reason, HasSubstr("\u00e5...\" is not known"));
  const DesignRead hostile =
      designFromJson(fileWith("\"a\\u001b[2J\\u009b\\u202eb\": 1"), builtinPhrases());
  EXPECT_THAT(hostile.problem.reason, HasSubstr("\"a [2J \xEF\xBF\xBD"
                                                "b\""));
}

TEST(DesignFile, TakesMembersInAnyOrderAndMissingOnesAsUntouched) {
  const DesignRead read = designFromJson(
      "{\"values\": {\"capEase\": 1.5}, \"measurements\": {\"bust\": {\"source\": \"garment\", "
      "\"value\": 51}}, \"version\": 6, \"format\": \"scyewright-design\"}",
      builtinPhrases());
  ASSERT_TRUE(read.design) << read.problem.reason;
  EXPECT_EQ(*read.design, Design().set(Field::CapEase, 1.5).set(Field::Bust, 51, Source::Garment));
}

// Every file written before caps could be pleated holds the choice "gathers".
TEST(DesignFile, TakesTheChoiceOfGathersForTheCapsTop) {
  const auto read = [](const char* option) {
    return designFromJson(fileWith(std::string("\"choices\": {\"gathers\": \"") + option + "\"}"),
                          builtinPhrases());
  };
  ASSERT_TRUE(read("no").design) << read("no").problem.reason;
  EXPECT_EQ(*read("no").design, Design());
  ASSERT_TRUE(read("yes").design) << read("yes").problem.reason;
  EXPECT_EQ(*read("yes").design, Design().choose(Choice::CapTop, CapTop::Gathered));
  EXPECT_FALSE(read("perhaps").design);
}

TEST(DesignFile, RandomDesignsComeBackEqualToTheLastBit) {
  test::RandomDesigns random(test::propertySeed(20240611));
  for (int i = 0; i < 2'000; ++i) {
    Design design = i % 2 != 0 ? random.wild() : random.plausible();
    design.title = "\u00c5se's \"jacket\"\n\t\\ " + std::to_string(i);
    design.wearer = std::string("a\0b", 3);
    design.notes = i % 2 != 0 ? "{\"format\": 1}" : "";
    const std::string text = designToJson(design);
    const DesignRead read = designFromJson(text, builtinPhrases());
    ASSERT_TRUE(read.design) << read.problem.line << ": " << read.problem.reason << "\n" << text;
    ASSERT_EQ(*read.design, design) << text;
    ASSERT_EQ(designToJson(*read.design), text);
  }
}

TEST(DesignFile, EveryFieldAndEveryOptionHasItsPlace) {
  for (int i = 0; i < kFieldCount; ++i) {
    const FieldInfo& f = info(Field(i));
    const ValueRange range = rangeOf(f.id, Source::Garment);
    for (const double value : {range.low, range.high}) {
      const Design design = Design().set(f.id, value, Source::Garment);
      const DesignRead read = designFromJson(designToJson(design), builtinPhrases());
      ASSERT_TRUE(read.design) << f.key << ": " << read.problem.reason;
      EXPECT_EQ(*read.design, design) << f.key;
    }
  }
  for (int i = 0; i < kChoiceCount; ++i)
    for (int option = 0; option < int(info(Choice(i)).options.size()); ++option) {
      const Design design = Design().choose(Choice(i), option);
      EXPECT_EQ(designFromJson(designToJson(design), builtinPhrases()).design, design)
          << info(Choice(i)).key;
    }
}

std::vector<std::string> corpus() {
  std::vector<std::string> texts;
  for (const char* folder : {SCYE_RESOURCES "/demos", SCYE_TEST_DATA "/../fuzz/corpus/design"})
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
      const FileText file = readWhole(entry.path());
      EXPECT_TRUE(file.text) << entry.path() << ": " << file.problem.phrase;
      if (file.text) texts.push_back(*file.text);
    }
  return texts;
}

// Bytes overwritten, cut out, doubled, the tail lost: what disks, mail and hands do to files.
std::string damaged(std::string text, std::mt19937_64& random) {
  static const std::string kBytes = "{}[]\":,0123456789.-+eE \n\\tfnu\x00\xff\xc3";
  const auto below = [&](std::size_t n) {
    return std::size_t(random() % std::max<std::size_t>(n, 1));
  };
  for (std::size_t n = 1 + below(4); n > 0; --n) {
    const std::size_t at = below(text.size()), length = 1 + below(20);
    switch (below(5)) {
    case 0:
      if (!text.empty()) text[at] = kBytes[below(kBytes.size())];
      break;
    case 1:
      text.erase(at, length);
      break;
    case 2:
      text.insert(at, text.substr(at, length));
      break;
    case 3:
      text.insert(at, 1, kBytes[below(kBytes.size())]);
      break;
    default:
      if (below(4) == 0) text.resize(at);
      break;
    }
  }
  return text;
}

TEST(DesignFile, DamagedFilesAreRefusedPlainlyOrReadBackEqual) {
  std::mt19937_64 random(test::propertySeed(7));
  const auto texts = corpus();
  ASSERT_GE(texts.size(), 5u);
  int taken = 0, refused = 0;
  for (int i = 0; i < 20'000; ++i) {
    const std::string text = damaged(texts[std::size_t(i) % texts.size()], random);
    const auto wrong = test::wrongReading(text);
    ASSERT_EQ(wrong, std::nullopt) << text;
    ++(designFromJson(text, builtinPhrases()).design ? taken : refused);
  }
  EXPECT_GT(taken, 100);
  EXPECT_GT(refused, 10'000);
}

TEST(DesignFile, EveryBeginningOfAFileIsRefused) {
  const auto file = readWhole(SCYE_RESOURCES "/demos/jacket.scye");
  ASSERT_TRUE(file.text);
  const std::string whole = file.text->substr(0, file.text->find_last_of('}') + 1);
  ASSERT_TRUE(designFromJson(whole, builtinPhrases()).design);
  for (std::size_t n = 0; n < whole.size(); ++n) {
    const DesignRead read = designFromJson(std::string_view(whole).substr(0, n), builtinPhrases());
    ASSERT_FALSE(read.design) << n;
    ASSERT_THAT(read.problem.reason, testing::AnyOf(HasSubstr("ends before"), HasSubstr("empty")))
        << n;
  }
}

} // namespace
} // namespace scye
