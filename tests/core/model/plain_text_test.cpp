#include "model/plain_text.h"

#include "model/phrases.h"

#include <gtest/gtest.h>

namespace scye {
namespace {

TEST(PlainText, WordsStayAsTheyAre) {
  for (const char* words :
       {"", "Harbour jacket", "Größe 40 – à côté", "毛糸", "חוט", "🧶 a%b\\c"})
    EXPECT_EQ(plainLine(words), words);
}

TEST(PlainText, ControlCharactersGiveNoOrders) {
  EXPECT_EQ(plainLine("a\x1b[2Jb\ac\rd\x7f"), "a [2Jb c d ");
  EXPECT_EQ(plainLine("a\nb\tc"), "a b c");
  EXPECT_EQ(plainLines("a\nb\tc"), "a\nb c");
  EXPECT_EQ(plainLine(std::string_view("a\0b", 3)), "a b");
  // C1: U+009B is the one-character form of ESC [; line separators.
  EXPECT_EQ(plainLine("a\xC2\x9B"
                      "2J\xE2\x80\xA8z"),
            "a 2J z");
}

TEST(PlainText, NothingTurnsTheDirectionOfWriting) {
  const std::string shown = "a\xEF\xBF\xBD"
                            "b";
  for (const char* turner :
       {"\xE2\x80\xAA", "\xE2\x80\xAB", "\xE2\x80\xAC", "\xE2\x80\xAD", "\xE2\x80\xAE",
        "\xE2\x81\xA6", "\xE2\x81\xA7", "\xE2\x81\xA8", "\xE2\x81\xA9"})
    EXPECT_EQ(plainLine("a" + std::string(turner) + "b"), shown);
  for (const char* mark : {"\xD8\x9C", "\xE2\x80\x8E", "\xE2\x80\x8F", "\xEF\xBB\xBF"})
    EXPECT_EQ(plainLine("a" + std::string(mark) + "b"), "ab");
}

TEST(PlainText, WhatIsNoUtf8BecomesSo) {
  const std::string r = "\xEF\xBF\xBD";
  EXPECT_EQ(plainLine("a\xff"), "a" + r);
  EXPECT_EQ(plainLine("\xC3"), r) << "cut off";
  EXPECT_EQ(plainLine("\xC0\x80"), r + r) << "overlong";
  EXPECT_EQ(plainLine("\xE0\x80\x80"), r + r + r);
  EXPECT_EQ(plainLine("\xED\xA0\x80"), r + r + r) << "a surrogate";
  EXPECT_EQ(plainLine("\xF4\x90\x80\x80"), r + r + r + r) << "beyond Unicode";
  EXPECT_EQ(plainLine("\xF4\x8F\xBF\xBF"), "\xF4\x8F\xBF\xBF") << "its last character";
}

TEST(PlainText, JsonKeepsItsValuesAndHidesTheirOrders) {
  EXPECT_EQ(plainJson("{\n \"a\": \"\xC2\x9B\xE2\x80\xAE"
                      "é\\u001b\"}"),
            "{\n \"a\": \"\\u009b\\u202eé\\u001b\"}");
}

TEST(PlainText, WordsInAPhraseAreMadePlain) {
  Phrases phrases;
  phrases.add("a = <{words}>");
  EXPECT_EQ(phrases.say("a", {textParam("words", "x\x1b[1m\xE2\x80\xAEy")}),
            "<x [1m\xEF\xBF\xBDy>");
}

} // namespace
} // namespace scye
