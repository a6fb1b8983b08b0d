#include "support/trial_language.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <vector>

namespace scye::test {
namespace {

constexpr std::array<std::string_view, 26> kSmall{"á", "ƀ", "č", "đ", "é", "ƒ", "ğ", "ĥ", "í",
                                                  "ĵ", "ķ", "ļ", "ɱ", "ñ", "ó", "ƥ", "ɋ", "ř",
                                                  "š", "ţ", "ú", "ʋ", "ŵ", "ẋ", "ý", "ž"};
constexpr std::array<std::string_view, 26> kLarge{"Á", "Ƀ", "Č", "Đ", "É", "Ƒ", "Ğ", "Ĥ", "Í",
                                                  "Ĵ", "Ķ", "Ļ", "Ɱ", "Ñ", "Ó", "Ƥ", "Ɋ", "Ř",
                                                  "Š", "Ţ", "Ú", "Ʋ", "Ŵ", "Ẋ", "Ý", "Ž"};

bool isLetter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// The text of a pattern, so that it is read back as it was.
std::string asText(std::string_view text) {
  std::string out;
  for (const char c : text)
    out += c == '\'' ? "''" : std::string(1, c);
  return out;
}

std::string pattern(const Message& message, bool few);

std::string cases(const MessagePart& part, bool few) {
  std::string out;
  for (const MessageCase& c : part.cases) {
    out += " " + c.selector + " {" + pattern(c.message, few) + "}";
    if (part.kind == MessagePart::Kind::Plural && c.selector == "other")
      out += " few {" + pattern(c.message, true) + "}";
  }
  return out;
}

std::string pattern(const Message& message, bool few) {
  std::string out;
  for (const MessagePart& part : message)
    switch (part.kind) {
    case MessagePart::Kind::Text:
      out += asText(trialWords(part.text, few));
      break;
    case MessagePart::Kind::Place:
      out += "{" + part.text + "}";
      break;
    case MessagePart::Kind::Counted:
      out += "{" + part.text + ", " + part.phrase.substr(kCountPrefix.size()) + "}";
      break;
    case MessagePart::Kind::Plural:
      out += "{" + part.text + ", plural," + cases(part, few) + "}";
      break;
    case MessagePart::Kind::Ordinal:
      out += "{" + part.text + ", selectordinal," + cases(part, few) + "}";
      break;
    case MessagePart::Kind::Select:
      out += "{" + part.text + ", select," + cases(part, few) + "}";
      break;
    case MessagePart::Kind::Number:
      out += "#";
      break;
    }
  return out;
}

} // namespace

std::string trialWords(std::string_view english, bool few) {
  std::string out;
  for (std::size_t i = 0; i < english.size();) {
    if (!isLetter(english[i])) {
      out += english[i++];
      continue;
    }
    std::size_t letters = 0;
    for (; i < english.size() && isLetter(english[i]); ++i, ++letters)
      out += english[i] >= 'a' ? kSmall[std::size_t(english[i] - 'a')]
                               : kLarge[std::size_t(english[i] - 'A')];
    // With the space behind it, which stays as it is, longer by 40 %.
    for (std::size_t more = 0; more < (4 * (letters + 1) + 9) / 10; ++more)
      out += "ů";
    if (few) out += "ŷ";
  }
  return out;
}

std::string englishPhraseFiles() {
  namespace fs = std::filesystem;
  std::vector<fs::path> files;
  for (const auto& file : fs::directory_iterator(SCYE_RESOURCES "/phrases/en"))
    files.push_back(file.path());
  std::sort(files.begin(), files.end());
  std::string out;
  for (const fs::path& path : files) {
    std::ifstream in(path, std::ios::binary);
    out.append(std::istreambuf_iterator<char>(in), {});
    out += '\n';
  }
  return out;
}

std::string trialPhraseFile() {
  Phrases english;
  english.add(englishPhraseFiles());
  std::string out;
  for (const std::string& key : english.keys())
    if (key != "language.rules") out += key + " = " + pattern(*english.message(key), false) + "\n";
  return out;
}

const Phrases& trialPhrases() {
  static const Phrases phrases = [] {
    Phrases all(kTrialLanguage);
    all.add(trialPhraseFile());
    return all;
  }();
  return phrases;
}

std::string firstEnglishWord(std::string_view text) {
  for (auto begin = text.begin();;) {
    begin = std::find_if(begin, text.end(), isLetter);
    const auto end = std::find_if_not(begin, text.end(), isLetter);
    const std::string word(begin, end);
    if (word != "i") return word;
    begin = end;
  }
}

} // namespace scye::test
