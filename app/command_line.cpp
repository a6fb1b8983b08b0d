#include "command_line.h"

#include "arguments.h"
#include "draft_command.h"
#include "model/design.h"
#include "model/phrases.h"
#include "sizes_command.h"
#include "terminal.h"
#include "work_command.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdlib>
#include <span>
#include <sstream>
#include <string_view>
#include <vector>

namespace scye {
namespace {

constexpr std::string_view kCopy = "--copy";

std::string rangeText(const FieldInfo& f, const Phrases& phrases) {
  const bool length = f.kind == FieldKind::Girth || f.kind == FieldKind::Length;
  const bool weight = f.kind == FieldKind::Weight;
  return phrases.say(length   ? "cli.range.cm"
                     : weight ? "cli.range.gram"
                              : "cli.range",
                     {numberParam("low", f.low), numberParam("high", f.high)});
}

std::size_t letters(std::string_view utf8) {
  return std::size_t(
      std::count_if(utf8.begin(), utf8.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string padded(std::string_view words, std::size_t width) {
  return std::string(words) + std::string(std::max(width, letters(words)) - letters(words), ' ');
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

// In lines that begin at `column`, where the first one stands already.
std::string wrapped(const std::string& words, std::size_t column) {
  constexpr std::size_t kWidth = 100;
  std::string out;
  std::size_t at = column;
  std::istringstream in(words);
  for (std::string word; in >> word; at += letters(word) + 1) {
    if (at > column && at + letters(word) > kWidth) {
      out += "\n" + std::string(column, ' ');
      at = column;
    }
    out += (at > column ? " " : "") + word;
  }
  return out + "\n";
}

// An option or a command, and what it does.
std::string helpLine(std::size_t indent, const std::string& what, const std::string& words) {
  constexpr std::size_t kColumn = 44;
  return padded(std::string(indent, ' ') + what, kColumn - 2) + "  " + wrapped(words, kColumn);
}

int tellHelp() {
  const auto say = [](const char* key) {
    return environmentPhrases().say("cli.help." + std::string(key));
  };
  std::string help = say("about") + "\n\n";
  help += helpLine(2, "scyewright [--copy] [FILE.scye]", say("window"));
  help += helpLine(2, "scyewright draft FILE.scye ...", say("draft"));
  for (const OptionHelp& option : draftOptions())
    help += helpLine(6, option.option, option.words);
  help += helpLine(2, "scyewright sizes FILE.scye TABLE.csv --report OUT.csv", say("sizes"));
  help += helpLine(6, "--booklets DIR", say("sizes.booklets"));
  help += helpLine(2, "scyewright place FILE.scye ...", say("place"));
  help += helpLine(6, "--piece PIECE [--row N]", say("place.row"));
  help += helpLine(2, "scyewright refit FILE.scye ...", say("refit"));
  help += helpLine(6, "--with measured.NAME=VALUE", say("refit.with"));
  help += helpLine(6, "--save", say("refit.save"));
  help += helpLine(2, "scyewright diary FILE.scye ...", say("diary"));
  help += helpLine(6, "--decision, --swatch, --measured TEXT", say("diary.entry"));
  help += helpLine(6, "--piece PIECE, --on DATE", say("diary.of"));
  help += helpLine(2, "scyewright names", say("names"));
  help += "  scyewright --help, --version\n\n" + wrapped(say("codes"), 0);
  tell(help);
  return kDrafted;
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

std::optional<int> runCommandLine(int argc, char** argv, const Drawer* drawer) {
  const std::vector<std::string> arguments(argv + std::min(argc, 1), argv + argc);
  const auto window = [&] {
    return drawer ? windowRefused(argc, argv)
                  : failed(kUsage, environmentPhrases().say("cli.noWorkbench"));
  };
  if (arguments.empty()) return window();
  const std::string& first = arguments.front();
  const auto asksHelp = [](const std::string& a) { return a == "--help" || a == "-h"; };
  if (first == "draft") {
    const auto rest = std::span(arguments).subspan(1);
    return !rest.empty() && asksHelp(rest.front()) ? tellHelp() : runDraft(rest, drawer);
  }
  if (first == "sizes") {
    const auto rest = std::span(arguments).subspan(1);
    return !rest.empty() && asksHelp(rest.front()) ? tellHelp() : runSizes(rest, drawer);
  }
  for (const auto& [name, run] : {std::pair("place", &runPlace), std::pair("refit", &runRefit),
                                  std::pair("diary", &runDiary)})
    if (first == name) {
      const auto rest = std::span(arguments).subspan(1);
      return !rest.empty() && asksHelp(rest.front()) ? tellHelp() : run(rest);
    }
  if (first == "names") return listNames();
  if (asksHelp(first)) return tellHelp();
  if (first != "--version") return window();
  tellLine("scyewright " SCYEWRIGHT_VERSION);
  return kDrafted;
}

WindowArguments windowArguments(int argc, char** argv) {
  CLI::App app;
  WindowArguments out;
  app.set_help_flag();
  app.allow_extras();
  app.add_option("FILE.scye", out.file);
  app.add_flag(std::string(kCopy), out.copy);
  const auto refused = [](const char* phrase, const char* param, const std::string& what) {
    return WindowArguments{{}, false, usage(phrase, {textParam(param, what)})};
  };
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& e) {
    return refused("cli.unknownOption", "option", e.what());
  }
  for (const std::string& left : app.remaining())
    return left.starts_with("-") ? refused("cli.unknownOption", "option", left)
                                 : refused("cli.extraFile", "file", left);
  return out;
}

} // namespace scye
