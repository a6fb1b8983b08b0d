// `scyewright place`, `refit` and `diary`: what has been knitted, read and set without a window.
#pragma once

#include <span>
#include <string>

namespace scye {

// The arguments behind the command's name. Return the exit code (command_line.h).
[[nodiscard]] int runPlace(std::span<const std::string> arguments);
[[nodiscard]] int runRefit(std::span<const std::string> arguments);
[[nodiscard]] int runDiary(std::span<const std::string> arguments);

} // namespace scye
