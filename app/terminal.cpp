#include "terminal.h"

#include "command_line.h"
#include "model/languages.h"
#include "model/plain_text.h"

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <fcntl.h>
#include <new>
#include <unistd.h>

namespace scye {
namespace {

int firstOutputError = 0; // errno of the first text that did not arrive

void noteOutputError() {
  if (firstOutputError == 0) firstOutputError = errno != 0 ? errno : EIO;
}

int failedFor(std::string_view phrase, std::string reason) {
  return failed(kFileFailed,
                environmentPhrases().say(phrase, {textParam("reason", std::move(reason))}));
}

} // namespace

const Phrases& environmentPhrases() {
  static const Phrases phrases = [] {
    std::vector<std::string> problems;
    Phrases read = phrasesIn(pickLanguage(environmentLanguages(), languagesThere()), &problems);
    for (const std::string& problem : problems)
      std::fprintf(stderr, "scyewright: %s\n", problem.c_str());
    return read;
  }();
  return phrases;
}

void guardTheEnd() {
  // Opened the other way round, so that using it fails.
  for (const int standard : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
    if (::fcntl(standard, F_GETFD) < 0)
      (void)::open("/dev/null", standard == STDIN_FILENO ? O_WRONLY : O_RDONLY);
  for (const int signal : {SIGPIPE, SIGXFSZ})
    std::signal(signal, SIG_IGN);
  std::set_terminate([] {
    try {
      if (std::current_exception()) throw;
    } catch (...) {
      std::_Exit(failedByException());
    }
    std::_Exit(cannotGoOn("terminate"));
  });
}

void tell(std::string_view lines) {
  const std::string plain = plainLines(lines);
  errno = 0;
  if (std::fwrite(plain.data(), 1, plain.size(), stdout) != plain.size()) noteOutputError();
}

void tellLine(std::string_view words) {
  tell(plainLine(words) + "\n");
}

int failed(int code, std::string_view message) {
  std::fprintf(stderr, "scyewright: %s\n", plainLine(message).c_str());
  return code;
}

int unwritten(const std::string& path, const std::string& reason) {
  return failed(kFileFailed, environmentPhrases().say("cli.write", {textParam("path", path),
                                                                    textParam("reason", reason)}));
}

int unwritten(const std::string& path, const DiskProblem& problem) {
  return unwritten(path, problemText(problem, environmentPhrases()));
}

int cannotGoOn(const std::string& reason) {
  return failedFor("cli.failed", reason);
}

int finished(int code) {
  errno = 0;
  if (std::fclose(stdout) != 0) noteOutputError();
  if (firstOutputError == 0) return code;
  return failedFor("cli.output",
                   problemText(systemProblem(firstOutputError), environmentPhrases()));
}

int failedByException() {
  try {
    throw;
  } catch (const std::bad_alloc&) {
    return failed(kFileFailed, environmentPhrases().say("cli.memory"));
  } catch (const std::exception& e) {
    return cannotGoOn(e.what());
  } catch (...) {
    return cannotGoOn("unknown");
  }
}

} // namespace scye
