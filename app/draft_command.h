// `scyewright draft`: a design file in, files and findings out.
#pragma once

#include <span>
#include <string>

namespace scye {

// The arguments behind "draft". Returns the exit code (see command_line.h).
[[nodiscard]] int runDraft(std::span<const std::string> arguments);

} // namespace scye
