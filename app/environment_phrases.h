// The words of what is told without a window, in the language that LC_ALL, LC_MESSAGES or LANG
// wish.
#pragma once

#include "model/phrases.h"

namespace scye {

// Read when first asked for.
[[nodiscard]] const Phrases& environmentPhrases();

} // namespace scye
