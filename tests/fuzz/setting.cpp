// Settings written NAME=VALUE, a line each.
#include "io/setting.h"
#include "fuzz/target.h"
#include "io/design_file.h"
#include "model/plain_text.h"

namespace scye::test {
namespace {

// Each line changes the design so that it can be written and read back, or leaves it as it is and
// says why in one plain line.
std::optional<std::string> wrongSetting(std::string_view text) {
  Design design;
  while (!text.empty()) {
    const std::string_view line = text.substr(0, text.find('\n'));
    text.remove_prefix(std::min(line.size() + 1, text.size()));
    const Design before = design;
    if (const auto reason = applySetting(design, line, builtinPhrases())) {
      if (design != before) return "refused, and changed the design all the same";
      if (reason->empty() || reason->starts_with("[") || plainLines(*reason) != *reason)
        return "no plain reason: " + *reason;
    }
  }
  const DesignRead again = designFromJson(designToJson(design), builtinPhrases());
  if (!again.design) return "what was set cannot be read: " + again.problem.reason;
  if (*again.design != design) return "changed when written and read back";
  return std::nullopt;
}

} // namespace
} // namespace scye::test

SCYE_FUZZ_TARGET(scye::test::wrongSetting)
