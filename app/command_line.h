// What the program does without a window: drafting from the command line, help, names, version.
//   scyewright draft FILE.scye [--with NAME=VALUE]... [--<output> OUT]...     (io/outputs.h)
//   scyewright place FILE.scye [--piece PIECE [--row N]]                      (progress/place.h)
//   scyewright diary FILE.scye [--decision TEXT] [--swatch TEXT] [--measured TEXT] [--piece PIECE]
//       [--on DATE]                                                          (progress/diary.h)
//   scyewright refit FILE.scye [--with measured.NAME=VALUE]... [--save]       (progress/refit.h)
// Every error is one plain line on stderr. Files are written whole or not at all.
#pragma once

#include "io/outputs.h"

#include <optional>
#include <string>

namespace scye {

enum ExitCode : int {
  kDrafted = 0,
  kBlocked = 1,    // drafted, and what blocks stands on stderr
  kUsage = 2,      // the arguments make no sense
  kFileFailed = 3, // a file could not be read, or not be written
};

// To be called before any Qt application exists. Returns the exit code, or nothing when a window is
// asked for. `drawer` draws what needs fonts; null in a program without the workbench, which has no
// window either.
[[nodiscard]] std::optional<int> runCommandLine(int argc, char** argv, const Drawer* drawer);

// What is left of the arguments once QApplication has taken out its own.
struct WindowArguments {
  std::string file;            // the design to open; empty: none was named
  bool copy = false;           // as a new one, so that saving asks for a name
  std::optional<int> exitCode; // set: the arguments make no sense, which has been told
};
[[nodiscard]] WindowArguments windowArguments(int argc, char** argv);

} // namespace scye
