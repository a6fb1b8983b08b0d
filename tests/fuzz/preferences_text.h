// What must hold for every text that is offered as a file of settings.
#pragma once

#include "io/preferences.h"

namespace scye::test {

// What is wrong with the way `text` was read, or nothing: what was taken is written and read back
// the same.
[[nodiscard]] inline std::optional<std::string> wrongPreferences(std::string_view text) {
  const auto read = preferencesFromJson(text);
  if (!read) return std::nullopt;
  const auto again = preferencesFromJson(preferencesToJson(*read));
  if (!again) return "its own writing was refused";
  if (*again != *read) return "changed when written and read back";
  return std::nullopt;
}

} // namespace scye::test
