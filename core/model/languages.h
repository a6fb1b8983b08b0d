// The languages built into the program, and the choice of one. A language is a folder of
// resources/phrases, named by its BCP 47 tag: "en", "pt-BR".
#pragma once

#include "model/phrases.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace scye {

struct PhraseFile {
  std::string_view language, text;
};
[[nodiscard]] std::span<const PhraseFile> builtinPhraseFiles();

// English first.
[[nodiscard]] std::vector<std::string> builtinLanguages();
// Those, and the folders in the folder that the environment variable SCYEWRIGHT_LANGUAGES names, so
// that a language can be tried without building the program.
[[nodiscard]] std::vector<std::string> languagesThere();
[[nodiscard]] std::string languagesFolder(); // empty: none is named
// English, and over it, phrase by phrase, the language itself: built in, then from the folder. What
// cannot be read there goes to `problems`, with file and line.
[[nodiscard]] Phrases phrasesIn(const std::string& language,
                                std::vector<std::string>* problems = nullptr);

// "de_AT.UTF-8@euro" as "de-AT"; "C" and "POSIX" as nothing.
[[nodiscard]] std::string languageTag(std::string_view posixLocale);
// The first wish that is there, as it is or without its last parts ("de-AT" is served by "de");
// else English. Tags compare without regard to case.
[[nodiscard]] std::string pickLanguage(std::span<const std::string> wishes,
                                       std::span<const std::string> there);
// What the environment wishes for: LC_ALL, else LC_MESSAGES, else LANG.
[[nodiscard]] std::vector<std::string> environmentLanguages();

} // namespace scye
