// `scyewright draft`: a design file in, files and findings out. Needs no window and no Qt.
#pragma once

#include "io/outputs.h"

#include <span>
#include <string>

namespace scye {

// The arguments behind "draft". `drawer`: what has to be drawn is drawn with; null in a program
// that was built without the workbench, where such outputs are refused. Returns the exit code (see
// command_line.h).
[[nodiscard]] int runDraft(std::span<const std::string> arguments, const Drawer* drawer);

struct OptionHelp {
  std::string option, words; // "--dpi N", what it does
};
[[nodiscard]] std::vector<OptionHelp> draftOptions();

} // namespace scye
