// The program's own settings as a file keeps them: texts and lists of texts, by name. A flat JSON
// object in UTF-8. Unlike a design it is never refused for one strange entry: the program starts
// with what can be read.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace scye {

struct Preferences {
  std::map<std::string, std::string> texts;
  std::map<std::string, std::vector<std::string>> lists;
  bool operator==(const Preferences&) const = default;
};

inline constexpr std::size_t kLargestPreferences = std::size_t(1) << 20; // bytes

// Reading back what was written gives the same, where all texts are UTF-8.
[[nodiscard]] std::string preferencesToJson(const Preferences& preferences);
// Entries that are neither text nor a list of texts are left out. Nothing where the file as a whole
// is no object, is cut off or is larger than kLargestPreferences. Nothing throws.
[[nodiscard]] std::optional<Preferences> preferencesFromJson(std::string_view text);

} // namespace scye
