// `scyewright sizes FILE.scye TABLE.csv --report OUT.csv`: the same design for every wearer of a
// table (io/wearer_table.h). Needs no window and no Qt.
#pragma once

#include <span>
#include <string>

namespace scye {

// The arguments behind "sizes". Returns the exit code (command_line.h): 1 where a line could not
// be read or a garment not be made, each of which the report names.
[[nodiscard]] int runSizes(std::span<const std::string> arguments);

} // namespace scye
