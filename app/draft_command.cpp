#include "draft_command.h"

#include "command_line.h"
#include "directions/row_table_csv.h"
#include "environment_phrases.h"
#include "export/export.h"
#include "garment/cpu_clock.h"
#include "garment/verdict.h"
#include "io/design_file.h"
#include "io/files.h"
#include "io/report.h"
#include "io/setting.h"
#include "knitting/knit_export.h"
#include "schematic/schematic.h"
#include "terminal.h"
#include "worn/worn_picture.h"

#include <QFile>
#include <QGuiApplication>

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <set>
#include <system_error>
#include <vector>

namespace scye {
namespace {

const Phrases& phrases() {
  return environmentPhrases();
}

struct Job;
struct OutputKind {
  std::string_view option;
  std::vector<std::string_view> endings;
  bool draws; // needs fonts, and for these a QGuiApplication
  // Writes the file whole; returns what went wrong, as a sentence.
  std::optional<std::string> (*write)(const Job& job, const std::string& path);
};

struct Output {
  const OutputKind* kind;
  std::string path;
};

struct Job {
  std::string file;
  std::vector<std::string> settings;
  std::vector<Output> outputs;
  ExportOptions page;
  LengthUnit unit = LengthUnit::Centimetre;
  std::string terms = "us"; // of the directions
  WornPictureOptions worn;
  Derived derived;
  bool allTried = true; // every remedy, within the time there is for them
};

std::optional<std::string> writeText(const std::string& path, std::string_view text) {
  const auto problem = writeWhole(path, text);
  if (!problem) return std::nullopt;
  return phrases().say("cli.write", {textParam("path", path), textParam("reason", *problem)});
}

std::optional<std::string> writeDrawn(const std::string& path, const Rendered& drawn) {
  if (drawn.problem) return drawn.problem->toStdString();
  return writeText(path, {drawn.bytes.constData(), std::size_t(drawn.bytes.size())});
}

std::optional<std::string> writeSchematic(const Job& job, const std::string& path) {
  const auto picture = [&job](double textHeight) {
    SchematicOptions options;
    options.unit = job.unit;
    options.textHeight = textHeight;
    return pieceSchematic(job.derived.draft, phrases(), options);
  };
  return writeDrawn(path, renderPicture(picture, QFile::decodeName(path.c_str()), job.page));
}

std::optional<std::string> writeReport(const Job& job, const std::string& path) {
  return writeText(path, reportToJson(job.derived, phrases()));
}

std::optional<std::string> writeRows(const Job& job, const std::string& path) {
  return writeText(path, rowTableCsv(job.derived.knit));
}

bool endsIn(std::string path, std::string_view ending) {
  std::transform(path.begin(), path.end(), path.begin(),
                 [](unsigned char c) { return char(c >= 'A' && c <= 'Z' ? c + 32 : c); });
  return path.size() > ending.size() && path.ends_with(ending);
}

std::optional<std::string> writeDirections(const Job& job, const std::string& path) {
  const Wording wording{phrases(), job.terms, job.unit};
  return writeText(path, endsIn(path, ".html") ? directionsHtml(job.derived.directions, wording)
                                               : directionsText(job.derived.directions, wording));
}

std::optional<std::string> writeChart(const Job& job, const std::string& path) {
  return writeDrawn(path, renderChart(phrases(), job.derived.knit, job.derived.draft.design.title,
                                      QFile::decodeName(path.c_str()), job.page));
}

// Pieces that cannot be knitted cannot be worn: that is told, and their findings block.
std::optional<std::string> writeWorn(const Job& job, const std::string& path) {
  if (!wornPattern(job.derived)) {
    tellLine(phrases().say("worn.none"));
    return std::nullopt;
  }
  const auto problem =
      exportWorn(job.derived, phrases(), QFile::decodeName(path.c_str()), job.worn);
  return problem ? std::optional(problem->toStdString()) : std::nullopt;
}

// Everything that can be asked for beside the findings: another kind of file is another line.
const std::vector<OutputKind>& outputKinds() {
  static const std::vector<OutputKind> all{
      {"--schematic", {".svg", ".png", ".pdf"}, true, &writeSchematic},
      {"--report", {".json"}, false, &writeReport},
      {"--rows", {".csv"}, false, &writeRows},
      {"--directions", {".txt", ".html"}, false, &writeDirections},
      {"--chart", {".svg", ".pdf", ".png"}, true, &writeChart},
      {"--worn", {".png"}, true, &writeWorn},
  };
  return all;
}

int usage(std::string_view phrase, const Params& params) {
  return failed(kUsage,
                phrases().say("cli.usage", {textParam("what", phrases().say(phrase, params))}));
}

std::string joined(std::span<const std::string_view> words) {
  std::string list;
  for (std::string_view word : words)
    list += (list.empty() ? "" : ", ") + std::string(word);
  return list;
}

// Reads the arguments; each function returns an exit code where they make no sense.
class Reader {
public:
  explicit Reader(Job& job) : job_(job) {}

  std::optional<int> read(std::span<const std::string> arguments) {
    for (std::size_t i = 0; i < arguments.size(); ++i) {
      const std::string& argument = arguments[i];
      if (!argument.starts_with("-")) {
        if (!job_.file.empty()) return usage("cli.extraFile", {textParam("file", argument)});
        job_.file = argument;
        continue;
      }
      if (argument == "--pulls") {
        job_.worn.pulls = true;
        continue;
      }
      if (!known(argument)) return usage("cli.unknownOption", {textParam("option", argument)});
      if (i + 1 == arguments.size())
        return usage("cli.missingValue", {textParam("option", argument)});
      if (auto code = option(argument, arguments[++i])) return code;
    }
    if (job_.file.empty()) return usage("cli.missingFile", {});
    return distinctPaths();
  }

private:
  static constexpr std::string_view kPapers[] = {"true", "a4", "letter"}; // in the order of Paper
  static constexpr std::string_view kUnits[] = {"cm", "in"};              // in that of LengthUnit
  static constexpr std::string_view kTerms[] = {"us", "uk"};
  static constexpr std::string_view kViews[] = {"front", "side", "back", "armhole"}; // NamedView

  static const OutputKind* outputKind(std::string_view option) {
    const auto& all = outputKinds();
    const auto at = std::find_if(all.begin(), all.end(),
                                 [&](const OutputKind& kind) { return kind.option == option; });
    return at == all.end() ? nullptr : &*at;
  }

  static bool known(std::string_view option) {
    return option == "--with" || option == "--paper" || option == "--unit" || option == "--dpi" ||
           option == "--terms" || option == "--view" || option == "--arm" ||
           outputKind(option) != nullptr;
  }

  std::optional<int> option(const std::string& name, const std::string& value) {
    if (name == "--with") return job_.settings.push_back(value), std::nullopt;
    if (name == "--paper") return pick(name, value, kPapers, job_.page.paper);
    if (name == "--unit") return pick(name, value, kUnits, job_.unit);
    if (name == "--dpi") return number(name, value, 10, 1200, job_.page.dpi);
    if (name == "--arm") return number(name, value, 0, 90, job_.worn.arm);
    if (name == "--view") return pick(name, value, kViews, job_.worn.view);
    if (name == "--terms") return terms(name, value);
    const OutputKind& kind = *outputKind(name);
    if (std::none_of(kind.endings.begin(), kind.endings.end(),
                     [&](std::string_view ending) { return endsIn(value, ending); }))
      return usage("cli.ending", {textParam("option", name), textParam("path", value),
                                  textParam("endings", joined(kind.endings))});
    job_.outputs.push_back({&kind, value});
    return std::nullopt;
  }

  template <class E>
  static std::optional<int> pick(const std::string& name, const std::string& value,
                                 std::span<const std::string_view> words, E& picked) {
    const auto at = std::find(words.begin(), words.end(), value);
    if (at == words.end())
      return usage("cli.option", {textParam("option", name), textParam("value", value),
                                  textParam("options", joined(words))});
    picked = E(at - words.begin());
    return std::nullopt;
  }

  std::optional<int> terms(const std::string& name, const std::string& value) {
    int picked = 0;
    if (auto code = pick(name, value, kTerms, picked)) return code;
    job_.terms = value;
    return std::nullopt;
  }

  static std::optional<int> number(const std::string& name, const std::string& value, double low,
                                   double high, double& picked) {
    double given = 0;
    const char* last = value.data() + value.size();
    const auto [end, error] = std::from_chars(value.data(), last, given);
    if (error != std::errc() || end != last || !(given >= low && given <= high))
      return usage("cli.number", {textParam("option", name), textParam("value", value),
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
};

std::optional<int> readDesign(const Job& job, Design& design) {
  // No more than the reader needs to name the line where it is too long.
  const FileText file = readFirst(job.file, kLargestDesign + 1);
  if (!file.text)
    return failed(kFileFailed, phrases().say("cli.read", {textParam("file", job.file),
                                                          textParam("reason", file.problem)}));
  DesignRead read = designFromJson(*file.text, phrases());
  if (!read.design)
    return failed(kFileFailed,
                  phrases().say("cli.readLine", {textParam("file", job.file),
                                                 numberParam("line", read.problem.line),
                                                 textParam("reason", read.problem.reason)}));
  design = std::move(*read.design);
  for (const std::string& setting : job.settings)
    if (auto problem = applySetting(design, setting, phrases())) return failed(kUsage, *problem);
  return std::nullopt;
}

// Writes what was asked for; returns an exit code where it could not.
std::optional<int> writeOutputs(const Job& job) {
  int argc = 1;
  char name[] = "scyewright";
  char* argv[] = {name, nullptr};
  guardQt(true); // its remarks on fonts and folders are no errors of the knitter's
  std::optional<QGuiApplication> drawing;
  if (std::any_of(job.outputs.begin(), job.outputs.end(),
                  [](const Output& o) { return o.kind->draws; })) {
    qputenv("QT_QPA_PLATFORM", "offscreen"); // no display is touched
    drawing.emplace(argc, argv);
  }
  for (const Output& output : job.outputs)
    if (const auto problem = output.kind->write(job, output.path))
      return failed(kFileFailed, *problem);
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
    static constexpr std::string_view kSeverities[] = {"severity.note", "severity.warning",
                                                       "severity.blocking"};
    const std::string line = phrases().say(kSeverities[int(finding.severity)]) + ": " +
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

int runDraft(std::span<const std::string> arguments) {
  Job job;
  if (const auto code = Reader(job).read(arguments)) return *code;
  Design design;
  if (const auto code = readDesign(job, design)) return *code;

  job.derived = derive(design);
  job.allTried = deriveRemedies(design, job.derived, {.seconds = cpuSeconds});
  if (const auto code = writeOutputs(job)) return *code;
  tellFindings(job);
  return anyBlocking(job.derived.findings) ? kBlocked : kDrafted;
}

} // namespace scye
