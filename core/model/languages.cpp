#include "model/languages.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace scye {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view kEnglish = "en";

bool alike(std::string_view a, std::string_view b) {
  const auto low = [](char c) { return c >= 'A' && c <= 'Z' ? char(c + 32) : c; };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [&](char x, char y) { return low(x) == low(y); });
}

// What is in a folder, by name; nothing where there is no such folder.
std::vector<fs::path> sorted(const fs::path& folder) {
  std::error_code none;
  std::vector<fs::path> out;
  for (fs::directory_iterator at(folder, none), end; !none && at != end; at.increment(none))
    out.push_back(at->path());
  std::sort(out.begin(), out.end());
  return out;
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

std::string languagesFolder() {
  const char* folder = std::getenv("SCYEWRIGHT_LANGUAGES");
  return folder ? folder : "";
}

std::vector<std::string> languagesThere() {
  std::vector<std::string> out = builtinLanguages();
  std::error_code none;
  for (const fs::path& folder : sorted(languagesFolder()))
    if (fs::is_directory(folder, none) &&
        std::find(out.begin(), out.end(), folder.filename()) == out.end())
      out.push_back(folder.filename());
  return out;
}

Phrases phrasesIn(const std::string& language, std::vector<std::string>* problems) {
  Phrases phrases;
  addFiles(phrases, kEnglish);
  if (language != kEnglish) {
    phrases.speak(language);
    addFiles(phrases, language);
  }
  if (const std::string folder = languagesFolder(); !folder.empty())
    for (const fs::path& file : sorted(fs::path(folder) / language)) {
      if (file.extension() != ".txt") continue;
      std::ifstream in(file, std::ios::binary);
      const std::string text{std::istreambuf_iterator<char>(in), {}};
      for (const Phrases::Problem& problem : phrases.add(text))
        if (problems)
          problems->push_back(file.string() + ":" + std::to_string(problem.line) + ": " +
                              problem.text);
    }
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
