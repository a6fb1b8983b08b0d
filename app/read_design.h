// The design that a command is about.
#pragma once

#include "progress/work.h"

#include <optional>
#include <string>
#include <vector>

namespace scye {

// Reads the file, then changes what `settings` say (io/setting.h). Returns an exit code where it
// cannot, which has been told.
[[nodiscard]] std::optional<int> readDesign(const std::string& file,
                                            const std::vector<std::string>& settings,
                                            Design& design,
                                            Work* work = nullptr); // what is knitted of it

} // namespace scye
