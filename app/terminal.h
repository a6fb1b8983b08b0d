// What the program tells on stdout and stderr, and how it ends: never by a signal of its own making
// or an exception that nobody caught, so that there are no exit codes but those of ExitCode.
#pragma once

#include "io/files.h"

#include <string>
#include <string_view>

namespace scye {

// The words of what is told without a window, in the language that LC_ALL, LC_MESSAGES or LANG
// wish. Read when first asked for.
[[nodiscard]] const Phrases& environmentPhrases();

// To be called first: a reader of the output who has gone away, a file too large for its limit, an
// exception on its way out of the program are errors like any other (kFileFailed); a standard file
// that the caller has closed is not mistaken for one that is opened later.
void guardTheEnd();

// On stdout, made plain (model/plain_text.h): lines that stay lines, or one line.
void tell(std::string_view lines);
void tellLine(std::string_view words);
// One plain line on stderr; returns `code`.
int failed(int code, std::string_view message);
// What could not be written, and why; returns kFileFailed.
int unwritten(const std::string& path, const std::string& reason);
int unwritten(const std::string& path, const DiskProblem& problem);
// The same for what nothing can be done about; returns kFileFailed.
int cannotGoOn(const std::string& reason);
// When all is told: `code`, or kFileFailed (which is then told) if it did not arrive.
int finished(int code);

// What an exception on its way out of the program is told as; within a handler.
int failedByException();

// Runs `work`; an exception that leaves it becomes a line on stderr and kFileFailed.
template <class Work>
int guarded(Work&& work) {
  try {
    return work();
  } catch (...) {
    return failedByException();
  }
}

} // namespace scye
