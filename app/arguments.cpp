#include "arguments.h"

#include "command_line.h"
#include "terminal.h"

#include <CLI/CLI.hpp>

namespace scye {

int usage(std::string_view phrase, const Params& params) {
  const Phrases& phrases = environmentPhrases();
  return failed(kUsage, phrases.say("cli.usage", {textParam("what", phrases.say(phrase, params))}));
}

std::optional<int> parseArguments(CLI::App& app, std::span<const std::string> arguments) {
  app.set_help_flag();
  app.allow_extras();
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::ParseError& e) {
    // Anything may stand in a value: only a value that is missing is left to go wrong.
    const std::string what = e.what();
    return usage("cli.missingValue", {textParam("option", what.substr(0, what.find(':')))});
  }
  for (const std::string& left : app.remaining())
    return left.starts_with("-") ? usage("cli.unknownOption", {textParam("option", left)})
                                 : usage("cli.extraFile", {textParam("file", left)});
  return std::nullopt;
}

} // namespace scye
