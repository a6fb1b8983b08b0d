#include "read_design.h"

#include "command_line.h"
#include "io/design_file.h"
#include "io/files.h"
#include "io/setting.h"
#include "terminal.h"

namespace scye {

std::optional<int> readDesign(const std::string& path, const std::vector<std::string>& settings,
                              Design& design, Work* work) {
  const Phrases& phrases = environmentPhrases();
  // No more than the reader needs to name the line where it is too long.
  const FileText file = readFirst(path, kLargestDesign + 1);
  if (!file.text)
    return failed(
        kFileFailed,
        phrases.say("cli.read", {textParam("file", path),
                                 textParam("reason", problemText(file.problem, phrases))}));
  DesignRead read = designFromJson(*file.text, phrases);
  if (!read.design)
    return failed(kFileFailed,
                  phrases.say("cli.readLine",
                              {textParam("file", path), numberParam("line", read.problem.line),
                               textParam("reason", read.problem.reason)}));
  design = std::move(*read.design);
  if (work) *work = std::move(read.work);
  for (const std::string& setting : settings)
    if (auto problem = applySetting(design, setting, phrases)) return failed(kUsage, *problem);
  return std::nullopt;
}

} // namespace scye
