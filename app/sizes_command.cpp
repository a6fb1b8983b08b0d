#include "sizes_command.h"

#include "arguments.h"
#include "command_line.h"
#include "io/files.h"
#include "io/wearer_booklets.h"
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
  std::optional<std::string> booklets, paper, unit, terms;
  bool largePrint = false;
  std::vector<std::string> settings;
};

// What booklets are like.
struct Like {
  ExportOptions page;
  LengthUnit unit = LengthUnit::Centimetre;
  Terms terms = Terms::Us;
};

// Returns an exit code where the arguments make no sense.
std::optional<int> readArguments(std::span<const std::string> arguments, Written& written,
                                 Like& like) {
  CLI::App app;
  const auto last = CLI::MultiOptionPolicy::TakeLast;
  app.add_option("FILE.scye", written.design);
  app.add_option("TABLE.csv", written.table);
  app.add_option("--report", written.report)->multi_option_policy(last);
  app.add_option("--booklets", written.booklets)->multi_option_policy(last);
  app.add_option("--paper", written.paper)->multi_option_policy(last);
  app.add_option("--unit", written.unit)->multi_option_policy(last);
  app.add_option("--terms", written.terms)->multi_option_policy(last);
  app.add_flag("--large-print", written.largePrint);
  app.add_option("--with", written.settings)->allow_extra_args(false);
  if (const auto code = parseArguments(app, arguments)) return code;
  if (written.design.empty() || written.table.empty() || written.report.empty())
    return usage("cli.sizesNeeds");
  if (const auto code = pick("--paper", written.paper, kPapers, like.page.paper)) return code;
  if (const auto code = pick("--unit", written.unit, kUnits, like.unit)) return code;
  if (const auto code = pick("--terms", written.terms, kTerms, like.terms)) return code;
  like.page.largePrint = written.largePrint;
  return std::nullopt;
}

} // namespace

int runSizes(std::span<const std::string> arguments, const Drawer* drawer) {
  Written written;
  Like like;
  if (const auto code = readArguments(arguments, written, like)) return *code;
  Design base;
  if (const auto code = readDesign(written.design, written.settings, base)) return *code;
  const FileText csv = readWhole(written.table, kLargestTable);
  const auto unreadable = [&](const std::string& reason) {
    return failed(kFileFailed, phrases().say("cli.read", {textParam("file", written.table),
                                                          textParam("reason", reason)}));
  };
  if (!csv.text) return unreadable(problemText(csv.problem, phrases()));
  const WearerTable table = readWearerTable(*csv.text, base, phrases());
  if (table.problem) return unreadable(*table.problem);

  for (const TableWearer& wearer : table.wearers)
    if (!wearer.design)
      failed(kBlocked, phrases().say("table.line", {numberParam("line", wearer.line),
                                                    textParam("reason", wearer.problem)}));
  WearerBooklets booklets(written.booklets.value_or(""),
                          {phrases(), std::string(kTerms[like.terms]), like.unit}, like.page,
                          drawer);
  EachGarment each;
  if (written.booklets) {
    if (const auto problem = booklets.begin())
      return unwritten(problem->path.string(), problem->reason);
    each = [&](const TableWearer& wearer, const Derived& derived) {
      booklets.write(wearer, derived);
    };
  }
  const auto sizes = sizesTable(
      table, [&](double) { return !booklets.problem(); }, each);
  if (const auto& problem = booklets.problem())
    return unwritten(problem->path.string(), problem->reason);
  if (const auto problem = writeWhole(written.report, sizes->csv))
    return unwritten(written.report, *problem);
  tellLine(phrases().say("table.made", {numberParam("made", sizes->made),
                                        numberParam("all", double(table.wearers.size()))}));
  return sizes->made == int(table.wearers.size()) ? kDrafted : kBlocked;
}

} // namespace scye
