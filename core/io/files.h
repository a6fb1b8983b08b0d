// Files read and written whole. Nothing throws; a problem is told in a few plain words ("No such
// file or directory"), without the path.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace scye {

struct FileText {
  std::optional<std::string> text; // absent: see the problem
  std::string problem;
};
// At most 64 MiB: whatever is larger is none of our files.
[[nodiscard]] FileText readWhole(const std::filesystem::path& path);

// The file stands there complete, or as it was before: the text goes to another file beside it,
// which then takes its place. Returns the problem, or nothing.
[[nodiscard]] std::optional<std::string> writeWhole(const std::filesystem::path& path,
                                                    std::string_view text);

} // namespace scye
