// A made-up language, worked out from English by rule: every letter another, every word longer by
// 40 %, three plural forms and a decimal comma, which it has from Croatian. No letter of it is in
// ASCII, so whatever is left of English shows.
#pragma once

#include "model/phrases.h"

#include <string>
#include <string_view>

namespace scye::test {

inline constexpr char kTrialLanguage[] = "hr-x-trial";

// "Armhole" as "\u00c1\u0159\u0271\u0125\u00f3\u013c\u00e9\u016f\u016f\u016f\u016f"; what is no
// letter stays. `few` is the form for 2, 3, 4, 22 ...
[[nodiscard]] std::string trialWords(std::string_view english, bool few = false);

// The phrase files of resources/phrases/en, one after the other.
[[nodiscard]] std::string englishPhraseFiles();
// The same in the made-up language; and the words it makes.
[[nodiscard]] std::string trialPhraseFile();
[[nodiscard]] const Phrases& trialPhrases();

// The first word in Latin letters without marks, of which the made-up language has none; empty
// where there is none. "i" is its own "and", which lists have from Croatian.
[[nodiscard]] std::string firstEnglishWord(std::string_view text);

} // namespace scye::test
