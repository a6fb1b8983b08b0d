#include "io/preferences.h"

#include "fuzz/preferences_text.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

TEST(Preferences, AreReadBackAsTheyWere) {
  Preferences p;
  p.texts = {{"unit", "inch"}, {"files/folder", "/home/Käthe/\"knits\""}, {"empty", ""}};
  p.lists = {{"files/recent", {"/a.scye", "/b\n.scye"}}, {"none", {}}};
  EXPECT_EQ(preferencesFromJson(preferencesToJson(p)), p);
  EXPECT_EQ(preferencesFromJson(preferencesToJson({})), Preferences());
}

TEST(Preferences, WhatIsStrangeIsLeftOutAndTheRestTaken) {
  const auto p = preferencesFromJson(
      R"({"unit": "inch", "grid": 3, "files/recent": ["/a", 7], "deep": {"a": ["b"]},
          "deeper": [["a"]], "terms": "uk", "list": ["x"]})");
  ASSERT_TRUE(p);
  EXPECT_EQ(p->texts, (std::map<std::string, std::string>{{"terms", "uk"}, {"unit", "inch"}}));
  EXPECT_EQ(p->lists.count("list"), 1u);
  EXPECT_EQ(p->lists.count("files/recent"), 0u);
}

TEST(Preferences, WhatIsNoneAtAllIsSaidToBe) {
  for (const char* text :
       {"", "[]", "3", "{\"unit\": \"inch\"", "{\"unit\" \"inch\"}", "[grid]\na=1"})
    EXPECT_EQ(preferencesFromJson(text), std::nullopt) << text;
  EXPECT_EQ(preferencesFromJson(std::string(kLargestPreferences + 1, ' ') + "{}"), std::nullopt);
}

TEST(Preferences, DepthCostsNeitherMemoryNorStack) {
  const std::string deep =
      "{\"a\": " + std::string(400'000, '[') + std::string(400'000, ']') + ", \"unit\": \"inch\"}";
  const auto p = preferencesFromJson(deep);
  ASSERT_TRUE(p);
  EXPECT_EQ(p->texts.at("unit"), "inch");
  EXPECT_EQ(test::wrongPreferences(deep), std::nullopt);
}

} // namespace
} // namespace scye
