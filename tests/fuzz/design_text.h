// What must hold for every text that is offered as a design file.
#pragma once

#include "io/design_file.h"

#include <algorithm>
#include <optional>
#include <string>

namespace scye::test {

// What is wrong with the way `text` was read, or nothing: a taken file writes and reads back equal,
// a refused one says why in one line and points into the file.
[[nodiscard]] inline std::optional<std::string> wrongReading(std::string_view text) {
  const DesignRead read = designFromJson(text, builtinPhrases());
  if (read.design) {
    for (int i = 0; i < kFieldCount; ++i)
      if (const auto value = read.design->given(Field(i));
          value && check(Field(i), *value, read.design->source(Field(i))))
        return "took a value that check() refuses";
    const DesignRead again =
        designFromJson(designToJson(*read.design, read.work), builtinPhrases());
    if (!again.design) return "its own writing was refused: " + again.problem.reason;
    if (*again.design != *read.design || again.work != read.work)
      return "changed when written and read back";
    return std::nullopt;
  }
  const std::string& reason = read.problem.reason;
  if (reason.empty() || reason.starts_with("[file.") ||
      reason.find_first_of("\n\r") != std::string::npos)
    return "no plain reason: " + reason;
  const auto lines = 1 + std::count(text.begin(), text.end(), '\n');
  if (read.problem.line < 1 || read.problem.line > lines)
    return "points to line " + std::to_string(read.problem.line);
  return std::nullopt;
}

} // namespace scye::test
