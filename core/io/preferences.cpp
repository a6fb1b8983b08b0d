#include "io/preferences.h"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace scye {

std::string preferencesToJson(const Preferences& preferences) {
  nlohmann::json file = nlohmann::json::object();
  for (const auto& [name, list] : preferences.lists)
    file[name] = list;
  for (const auto& [name, text] : preferences.texts)
    file[name] = text;
  return file.dump(1, ' ', false, nlohmann::json::error_handler_t::replace) + "\n";
}

std::optional<Preferences> preferencesFromJson(std::string_view text) {
  using Json = nlohmann::json;
  if (text.size() > kLargestPreferences) return std::nullopt;
  // Nothing of ours stands deeper than the entries of a list; what does is not even kept.
  const auto keep = [](int depth, Json::parse_event_t, Json&) { return depth <= 2; };
  const Json file = Json::parse(text.begin(), text.end(), keep, false);
  if (!file.is_object()) return std::nullopt;
  Preferences out;
  for (const auto& [name, value] : file.items()) {
    const auto isText = [](const Json& entry) { return entry.is_string(); };
    if (value.is_string())
      out.texts[name] = value.get<std::string>();
    else if (value.is_array() && std::all_of(value.begin(), value.end(), isText))
      out.lists[name] = value.get<std::vector<std::string>>();
  }
  return out;
}

} // namespace scye
