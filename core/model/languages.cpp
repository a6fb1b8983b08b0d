#include "model/languages.h"

#include <algorithm>
#include <cstdlib>

namespace scye {
namespace {

constexpr std::string_view kEnglish = "en";

bool alike(std::string_view a, std::string_view b) {
  const auto low = [](char c) { return c >= 'A' && c <= 'Z' ? char(c + 32) : c; };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [&](char x, char y) { return low(x) == low(y); });
}

void addFiles(Phrases& phrases, std::string_view language) {
  for (const PhraseFile& file : builtinPhraseFiles())
    if (file.language == language) phrases.add(file.text);
}

} // namespace

std::vector<std::string> builtinLanguages() {
  std::vector<std::string> out{std::string(kEnglish)};
  for (const PhraseFile& file : builtinPhraseFiles())
    if (std::find(out.begin(), out.end(), file.language) == out.end())
      out.emplace_back(file.language);
  return out;
}

Phrases phrasesIn(const std::string& language) {
  Phrases phrases;
  addFiles(phrases, kEnglish);
  if (language == kEnglish) return phrases;
  phrases.speak(language);
  addFiles(phrases, language);
  return phrases;
}

std::string languageTag(std::string_view posixLocale) {
  std::string tag(posixLocale.substr(0, posixLocale.find_first_of(".@")));
  std::replace(tag.begin(), tag.end(), '_', '-');
  return tag == "C" || tag == "POSIX" ? std::string() : tag;
}

std::string pickLanguage(std::span<const std::string> wishes, std::span<const std::string> there) {
  for (std::string_view wish : wishes)
    while (!wish.empty()) {
      const auto at = std::find_if(there.begin(), there.end(),
                                   [&](const std::string& tag) { return alike(tag, wish); });
      if (at != there.end()) return *at;
      const auto cut = wish.rfind('-');
      wish = cut == wish.npos ? std::string_view{} : wish.substr(0, cut);
    }
  return std::string(kEnglish);
}

std::vector<std::string> environmentLanguages() {
  for (const char* name : {"LC_ALL", "LC_MESSAGES", "LANG"})
    if (const char* value = std::getenv(name); value != nullptr && *value != '\0')
      return {languageTag(value)};
  return {};
}

const Phrases& builtinPhrases() {
  static const Phrases phrases = phrasesIn(std::string(kEnglish));
  return phrases;
}

} // namespace scye
