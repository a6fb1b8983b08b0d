#include "sizes_command.h"

#include "arguments.h"
#include "command_line.h"
#include "io/files.h"
#include "io/wearer_table.h"
#include "read_design.h"
#include "terminal.h"

#include <CLI/CLI.hpp>

namespace scye {
namespace {

const Phrases& phrases() {
  return environmentPhrases();
}

struct Written {
  std::string design, table, report;
  std::vector<std::string> settings;
};

// Returns an exit code where the arguments make no sense.
std::optional<int> readArguments(std::span<const std::string> arguments, Written& written) {
  CLI::App app;
  app.add_option("FILE.scye", written.design);
  app.add_option("TABLE.csv", written.table);
  app.add_option("--report", written.report)->multi_option_policy(CLI::MultiOptionPolicy::TakeLast);
  app.add_option("--with", written.settings)->allow_extra_args(false);
  if (const auto code = parseArguments(app, arguments)) return code;
  if (written.design.empty() || written.table.empty() || written.report.empty())
    return usage("cli.sizesNeeds");
  return std::nullopt;
}

} // namespace

int runSizes(std::span<const std::string> arguments) {
  Written written;
  if (const auto code = readArguments(arguments, written)) return *code;
  Design base;
  if (const auto code = readDesign(written.design, written.settings, base)) return *code;
  const FileText csv = readWhole(written.table, kLargestTable);
  const auto unreadable = [&](const std::string& reason) {
    return failed(kFileFailed, phrases().say("cli.read", {textParam("file", written.table),
                                                          textParam("reason", reason)}));
  };
  if (!csv.text) return unreadable(csv.problem);
  const WearerTable table = readWearerTable(*csv.text, base, phrases());
  if (table.problem) return unreadable(*table.problem);

  for (const TableWearer& wearer : table.wearers)
    if (!wearer.design)
      failed(kBlocked, phrases().say("table.line", {numberParam("line", wearer.line),
                                                    textParam("reason", wearer.problem)}));
  const SizesTable sizes = *sizesTable(table);
  if (const auto problem = writeWhole(written.report, sizes.csv))
    return failed(kFileFailed, phrases().say("cli.write", {textParam("path", written.report),
                                                           textParam("reason", *problem)}));
  tellLine(phrases().say("table.made", {numberParam("made", sizes.made),
                                        numberParam("all", double(table.wearers.size()))}));
  return sizes.made == int(table.wearers.size()) ? kDrafted : kBlocked;
}

} // namespace scye
