// What the commands share in reading their arguments.
#pragma once

#include "model/phrases.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace CLI {
class App;
}

namespace scye {

// Tells on stderr what makes no sense; returns the exit code for it.
int usage(std::string_view phrase, const Params& params = {});

// Into what `app` describes. Returns an exit code where a value is missing, or an option or a file
// is left that none was described for, which has been told.
[[nodiscard]] std::optional<int> parseArguments(CLI::App& app,
                                                std::span<const std::string> arguments);

} // namespace scye
