// `scyewright sizes FILE.scye TABLE.csv --report OUT.csv [--booklets DIR]`: the same design for
// every wearer of a table (io/wearer_table.h), and a booklet for each. Needs no window.
#pragma once

#include "io/outputs.h"

#include <span>
#include <string>

namespace scye {

// The arguments behind "sizes". Returns the exit code (command_line.h): 1 where a line could not
// be read or a garment not be made, each of which the report names. Booklets are PDF, and HTML
// where there is no drawer.
[[nodiscard]] int runSizes(std::span<const std::string> arguments, const Drawer* drawer);

} // namespace scye
