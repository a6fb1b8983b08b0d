#include "command_line.h"

#include "draft_command.h"
#include "environment_phrases.h"
#include "model/design.h"
#include "model/phrases.h"
#include "terminal.h"

#include <algorithm>
#include <cstdlib>
#include <span>
#include <string_view>
#include <vector>

namespace scye {
namespace {

constexpr std::string_view kHelp =
    R"(Scyewright: set-in sleeves that fit, from measurements and a swatch.

  scyewright [--copy] [FILE.scye]    opens the workbench, with a design or a copy of it if one is named
  scyewright draft FILE.scye ...     drafts a design without a window and says what it finds
      --with NAME=VALUE              first changes a value: bust=94, bust=37in, ease.bust=8,
                                     bust=47@garment, garment=jacket; may be repeated
      --schematic OUT.svg|.png|.pdf  writes the pieces, to scale with their dimensions
      --paper true|a4|letter         for .pdf and .png: true size (the start) or a sheet
      --dpi N                        for .png: dots per inch, 100 to start with
      --chart OUT.svg|.pdf|.png      writes the chart of every piece, one cell a stitch
      --directions OUT.txt|.html     writes the directions to knit from
      --terms us|uk                  for the directions: bind off, or cast off
      --rows OUT.csv                 writes the row table: every row of every piece
      --worn OUT.png                 writes a picture of the garment worn by a form
      --view front|side|back|armhole for the picture worn: from where, front to start with
      --arm DEGREES                  for the picture worn: how far the arms are lifted, 0 to 90
      --pulls                        for the picture worn: shows where the cloth pulls
      --unit cm|in                   for what is drawn and told; files are in cm
      --report OUT.json              writes every figure, outline and finding
  scyewright names                   lists the NAMEs, what they mean and what they may be
  scyewright --help, --version

Exit codes: 0 drafted; 1 drafted, but something must be solved first; 2 the arguments make no
sense; 3 a file could not be read or written.
)";

constexpr std::string_view kCopy = "--copy";

std::string rangeText(const FieldInfo& f, const Phrases& phrases) {
  const bool length = f.kind == FieldKind::Girth || f.kind == FieldKind::Length;
  const bool weight = f.kind == FieldKind::Weight;
  return phrases.say(length   ? "cli.range.cm"
                     : weight ? "cli.range.gram"
                              : "cli.range",
                     {numberParam("low", f.low), numberParam("high", f.high)});
}

std::string padded(std::string_view words, std::size_t width) {
  const auto letters = std::size_t(
      std::count_if(words.begin(), words.end(), [](char c) { return (c & 0xC0) != 0x80; }));
  return std::string(words) + std::string(std::max(width, letters) - letters, ' ');
}

int listNames() {
  const Phrases& phrases = environmentPhrases();
  const auto line = [&](std::string_view key, std::string_view kind, const std::string& may) {
    const std::string name = phrases.say(std::string(kind) + "." + std::string(key));
    tellLine(padded(key, 22) + padded(name, 44) + may);
  };
  for (int i = 0; i < kChoiceCount; ++i) {
    std::string options;
    for (std::string_view option : info(Choice(i)).options)
      options += (options.empty() ? "" : ", ") + std::string(option);
    line(info(Choice(i)).key, "choice", options);
  }
  for (int i = 0; i < kFieldCount; ++i)
    line(info(Field(i)).key, "field", rangeText(info(Field(i)), phrases));
  return kDrafted;
}

int usage(std::string_view phrase, const Params& params) {
  const Phrases& phrases = environmentPhrases();
  return failed(kUsage, phrases.say("cli.usage", {textParam("what", phrases.say(phrase, params))}));
}

// A window without a display would end in Qt's abort; and what makes no sense is told before one
// opens.
std::optional<int> windowRefused(int argc, char** argv) {
  const auto given = [&](auto is) { return std::any_of(argv + 1, argv + argc, is); };
  // Which options are Qt's own only Qt can tell.
  const bool options =
      given([](const char* argument) { return argument[0] == '-' && argument != kCopy; });
  if (!options)
    if (const auto code = windowArguments(argc, argv).exitCode) return code;
  // They may name where the window is to be.
  if (given([](const char* argument) {
        const std::string_view name = argument;
        return name.ends_with("-platform") || name.ends_with("-display");
      }))
    return std::nullopt;
#ifdef __linux__
  const auto set = [](const char* name) {
    const char* value = std::getenv(name);
    return value != nullptr && *value != '\0';
  };
  if (!set("DISPLAY") && !set("WAYLAND_DISPLAY") && !set("QT_QPA_PLATFORM"))
    return failed(kUsage, environmentPhrases().say("cli.noDisplay"));
#endif
  return std::nullopt;
}

} // namespace

std::optional<int> runCommandLine(int argc, char** argv) {
  const std::vector<std::string> arguments(argv + std::min(argc, 1), argv + argc);
  if (arguments.empty()) return windowRefused(argc, argv);
  const std::string& first = arguments.front();
  if (first == "draft") {
    const auto rest = std::span(arguments).subspan(1);
    if (rest.empty() || (rest.front() != "--help" && rest.front() != "-h")) return runDraft(rest);
  } else if (first == "names") {
    return listNames();
  } else if (first == "--version") {
    tellLine("scyewright " SCYEWRIGHT_VERSION);
    return kDrafted;
  } else if (first != "--help" && first != "-h") {
    return windowRefused(argc, argv);
  }
  tell(kHelp);
  return kDrafted;
}

WindowArguments windowArguments(int argc, char** argv) {
  WindowArguments out;
  for (int i = 1; i < argc; ++i) {
    const std::string argument = argv[i];
    if (argument == kCopy) {
      out.copy = true;
      continue;
    }
    if (argument.starts_with("-"))
      return {{}, false, usage("cli.unknownOption", {textParam("option", argument)})};
    if (!out.file.empty())
      return {{}, false, usage("cli.extraFile", {textParam("file", argument)})};
    out.file = argument;
  }
  return out;
}

} // namespace scye
