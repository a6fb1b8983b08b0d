// What the program does without a window: drafting from the command line, help, names, version.
//   scyewright draft FILE.scye [--with NAME=VALUE]... [--schematic OUT.svg|.png|.pdf] [--report
//   OUT.json]
// Every error is one plain line on stderr. Files are written whole or not at all.
#pragma once

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
// asked for. Makes a QGuiApplication of its own, on the offscreen platform, only where a picture is
// drawn.
[[nodiscard]] std::optional<int> runCommandLine(int argc, char** argv);

// What is left of the arguments once QApplication has taken out its own.
struct WindowArguments {
  std::string file;            // the design to open; empty: none was named
  bool copy = false;           // as a new one, so that saving asks for a name
  std::optional<int> exitCode; // set: the arguments make no sense, which has been told
};
[[nodiscard]] WindowArguments windowArguments(int argc, char** argv);

} // namespace scye
