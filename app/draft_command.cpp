#include "draft_command.h"

#include "arguments.h"
#include "command_line.h"
#include "garment/verdict.h"
#include "io/design_file.h"
#include "io/files.h"
#include "read_design.h"
#include "terminal.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <charconv>
#include <filesystem>
#include <map>
#include <set>
#include <system_error>

namespace scye {
namespace {

const Phrases& phrases() {
  return environmentPhrases();
}

struct Output {
  const OutputInfo* kind;
  std::string path;
};

struct Job {
  std::string file;
  std::vector<std::string> settings;
  std::vector<Output> outputs;
  std::optional<std::string> folder; // for everything
  std::optional<PieceId> piece;      // of which a chart is made
  ExportOptions page;
  LengthUnit unit = LengthUnit::Centimetre;
  Terms terms = Terms::Us; // of the directions
  WornPictureOptions worn;
  Derived derived;
  bool allTried = true; // every remedy, within the time there is for them
};

// The arguments as they were written.
struct Written {
  std::string file;
  std::optional<std::string> piece, paper, unit, dpi, terms, view, arm, all;
  bool pulls = false, largePrint = false;
  std::vector<std::string> settings;
  std::map<OutputId, std::vector<std::string>> paths;
};

std::string optionOf(const OutputInfo& output) {
  return "--" + std::string(output.key);
}

// "OUT.svg|.png|.pdf"
std::string pathText(const OutputInfo& output) {
  std::string text;
  for (const std::string& ending : endingsOf(output))
    text += (text.empty() ? "OUT" : "|") + ending;
  return text;
}

// Every option of the command, once: for reading and for help.
void describe(CLI::App& app, Written& written) {
  app.set_help_flag(); // which is no option to tell of
  app.add_option("FILE.scye", written.file)->group("");
  const auto add = [&](const std::string& name, auto& value, const std::string& text,
                       const std::string& phrase) {
    return app.add_option("--" + name, value, phrases().say(phrase))->option_text(text);
  };
  const auto one = [&](const std::string& name, std::optional<std::string>& value,
                       const std::string& text) {
    add(name, value, text, "cli.help." + name)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeLast);
  };
  add("with", written.settings, "NAME=VALUE", "cli.help.with")->allow_extra_args(false);
  for (const OutputInfo& output : allOutputs()) {
    const std::string key(output.key);
    add(key, written.paths[output.id], pathText(output), "output." + key + ".help")
        ->allow_extra_args(false);
  }
  one("all", written.all, "DIR");
  one("piece", written.piece, "PIECE");
  one("paper", written.paper, joined(kPapers, "|"));
  one("dpi", written.dpi, "N");
  one("terms", written.terms, joined(kTerms, "|"));
  one("view", written.view, joined(kViewKeys, "|"));
  one("arm", written.arm, phrases().say("cli.help.degrees"));
  app.add_flag("--pulls", written.pulls, phrases().say("cli.help.pulls"));
  app.add_flag("--large-print", written.largePrint, phrases().say("cli.help.large-print"));
  one("unit", written.unit, joined(kUnits, "|"));
}

// What was written, understood; each function returns an exit code where it makes no sense.
class Reader {
public:
  Reader(Job& job, bool draws) : job_(job), draws_(draws) {}

  std::optional<int> read(std::span<const std::string> arguments) {
    CLI::App app;
    Written written;
    describe(app, written);
    if (const auto code = parseArguments(app, arguments)) return code;
    if (written.file.empty()) return usage("cli.missingFile", {});
    job_.file = written.file;
    job_.settings = written.settings;
    job_.worn.pulls = written.pulls;
    job_.page.largePrint = written.largePrint;
    job_.folder = written.all;
    if (written.piece && !(job_.piece = pieceByKey(*written.piece)))
      return usage("cli.noPiece", {textParam("piece", *written.piece)});
    if (auto code = pick("--paper", written.paper, kPapers, job_.page.paper)) return code;
    if (auto code = pick("--unit", written.unit, kUnits, job_.unit)) return code;
    if (auto code = pick("--terms", written.terms, kTerms, job_.terms)) return code;
    if (auto code = pick("--view", written.view, kViewKeys, job_.worn.view)) return code;
    if (auto code = number("--dpi", written.dpi, 10, 1200, job_.page.dpi)) return code;
    if (auto code = number("--arm", written.arm, 0, 90, job_.worn.arm)) return code;
    for (const OutputInfo& output : allOutputs())
      for (const std::string& path : written.paths[output.id])
        if (auto code = add(output, path)) return code;
    return distinctPaths();
  }

private:
  std::optional<int> add(const OutputInfo& output, const std::string& path) {
    const auto format = formatOf(output, path);
    if (!format)
      return usage("cli.ending",
                   {textParam("option", optionOf(output)), textParam("path", path),
                    textParam("endings", phrases().rules().commas(endingsOf(output)))});
    if (needsDrawer(output, *format) && !draws_)
      return usage("cli.notDrawn",
                   {textParam("option", optionOf(output)), textParam("path", path)});
    job_.outputs.push_back({&output, path});
    return std::nullopt;
  }

  static std::optional<int> number(const std::string& name, const std::optional<std::string>& value,
                                   double low, double high, double& picked) {
    if (!value) return std::nullopt;
    double given = 0;
    const char* last = value->data() + value->size();
    const auto [end, error] = std::from_chars(value->data(), last, given);
    if (error != std::errc() || end != last || !(given >= low && given <= high))
      return usage("cli.number", {textParam("option", name), textParam("value", *value),
                                  numberParam("low", low), numberParam("high", high)});
    picked = given;
    return std::nullopt;
  }

  // No output may be written over another, nor over the design.
  std::optional<int> distinctPaths() const {
    namespace fs = std::filesystem;
    std::set<fs::path> paths;
    const auto isNew = [&](const std::string& path) {
      std::error_code error;
      fs::path whole = fs::absolute(path, error);
      if (fs::path followed = fs::weakly_canonical(whole, error); !error) whole = followed;
      return paths.insert(std::move(whole)).second;
    };
    isNew(job_.file);
    for (const Output& output : job_.outputs)
      if (!isNew(output.path)) return usage("cli.samePath", {textParam("path", output.path)});
    return std::nullopt;
  }

  Job& job_;
  bool draws_;
};

std::optional<int> writeFile(const std::string& path, const FileBytes& made) {
  if (made.problem) return failed(kFileFailed, *made.problem);
  if (const auto problem = writeWhole(path, made.bytes)) return unwritten(path, *problem);
  return std::nullopt;
}

// The design and everything that can be made of it, each under its own name.
std::optional<int> writeAll(const std::string& folder, const OutputJob& job, const Drawer* drawer) {
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) return unwritten(folder, systemProblem(error.value()));
  const auto at = [&](const std::string& name) {
    return (std::filesystem::path(folder) / name).string();
  };
  if (const auto code = writeFile(at("design.scye"),
                                  {designToJson(job.derived.draft.design, job.derived.work), {}}))
    return code;
  for (const OutputFile& file : everyOutput(job.derived, drawer != nullptr)) {
    OutputJob one = job;
    one.piece = file.piece;
    if (const auto code =
            writeFile(at(file.name), makeOutput(*file.output, one, file.format, drawer)))
      return code;
  }
  return std::nullopt;
}

// Writes what was asked for; returns an exit code where it could not.
std::optional<int> writeOutputs(const Job& job, const Drawer* drawer) {
  const OutputJob what{job.derived, {phrases(), std::string(kTerms[job.terms]), job.unit},
                       job.page,    job.worn,
                       today(),     job.piece};
  if (job.folder)
    if (const auto code = writeAll(*job.folder, what, drawer)) return code;
  for (const Output& output : job.outputs) {
    // What cannot be there is told, and the findings say why.
    if (output.kind->has && !output.kind->has(job.derived)) {
      tellLine(phrases().say(output.kind->none));
      continue;
    }
    if (const auto code =
            writeFile(output.path, makeOutput(*output.kind, what, output.path, drawer)))
      return code;
  }
  return std::nullopt;
}

// What to add to the command so that the finding is gone.
std::string asSettings(const Remedy& remedy, const Design& design) {
  std::string text;
  for (const Field field : remedy.onGarment)
    if (const auto typed = design.given(field))
      text += " --with " + std::string(info(field).key) + "=" + numberText(*typed, 3) + "@garment";
  for (const auto& [field, value] : remedy.changes)
    text += " --with " + std::string(info(field).key) + "=" + numberText(value, 3);
  for (const auto& [choice, option] : remedy.picks)
    text += " --with " + std::string(info(choice).key) + "=" +
            std::string(info(choice).options.begin()[option]);
  return text;
}

// The verdict and the findings with their remedies on stdout; what blocks, being an error, on
// stderr.
void tellFindings(const Job& job) {
  const FitVerdict verdict = fitVerdict(job.derived, phrases(), job.unit);
  tellLine(verdict.sentence);
  if (verdict.knitted) tellLine(verdict.knitted->sentence);
  for (const Finding& finding : job.derived.findings) {
    const std::string line =
        phrases().say("severity." + std::string(severityKey(finding.severity))) + ": " +
        phrases().say("finding." + finding.code, finding.params, job.unit);
    if (finding.severity == Severity::Blocking)
      failed(kBlocked, line);
    else
      tellLine(line);
    for (const Remedy& remedy : finding.remedies)
      tellLine("  " + phrases().say("remedy." + remedy.key, remedy.params, job.unit) + ":" +
               asSettings(remedy, job.derived.draft.design));
  }
  if (!job.allTried) tellLine(phrases().say("remedies.givenUp"));
}

} // namespace

int runDraft(std::span<const std::string> arguments, const Drawer* drawer) {
  Job job;
  if (const auto code = Reader(job, drawer != nullptr).read(arguments)) return *code;
  Design design;
  Work work;
  if (const auto code = readDesign(job.file, job.settings, design, &work)) return *code;

  job.derived = derive(design, LengthUnit::Centimetre, work);
  job.allTried = deriveRemedies(design, job.derived, {.seconds = cpuSeconds});
  if (const auto code = writeOutputs(job, drawer)) return *code;
  tellFindings(job);
  return anyBlocking(job.derived.findings) ? kBlocked : kDrafted;
}

std::vector<OptionHelp> draftOptions() {
  CLI::App app;
  Written written;
  describe(app, written);
  std::vector<OptionHelp> options;
  for (const CLI::Option* option : app.get_options())
    if (!option->get_group().empty())
      options.push_back(
          {option->get_name() + " " + option->get_option_text(), option->get_description()});
  return options;
}

} // namespace scye
