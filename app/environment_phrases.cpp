#include "environment_phrases.h"

#include "model/languages.h"

#include <cstdio>

namespace scye {

const Phrases& environmentPhrases() {
  static const Phrases phrases = [] {
    std::vector<std::string> problems;
    Phrases read = phrasesIn(pickLanguage(environmentLanguages(), languagesThere()), &problems);
    for (const std::string& problem : problems)
      std::fprintf(stderr, "scyewright: %s\n", problem.c_str());
    return read;
  }();
  return phrases;
}

} // namespace scye
