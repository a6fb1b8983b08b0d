// Kept wearers: design files, whose measurements go into other designs.
#include "model/wearer.h"
#include "fuzz/design_text.h"
#include "fuzz/target.h"

namespace scye::test {
namespace {

std::optional<std::string> wrongWearer(std::string_view text) {
  const DesignRead read = designFromJson(text, builtinPhrases());
  if (!read.design) return wrongReading(text);
  Design base;
  base.title = "Another";
  base.set(Field::Bust, 90).set(Field::EaseBust, 8);
  const Design used = forWearer(base, *read.design);
  if (used.title != base.title || used.given(Field::EaseBust) != base.given(Field::EaseBust))
    return "changed more than the wearer's own";
  if (!changedSince(used, *read.design).empty()) return "differs from what it was taken from";
  const Design kept = wearerOf(used, "2026-05-01");
  if (kept.wearer != read.design->wearer) return "lost the name";
  const DesignRead again = designFromJson(designToJson(kept), builtinPhrases());
  if (!again.design) return "its own writing was refused: " + again.problem.reason;
  if (*again.design != kept) return "changed when written and read back";
  if (!changedSince(used, *again.design).empty()) return "differs from what was kept of it";
  return std::nullopt;
}

} // namespace
} // namespace scye::test

SCYE_FUZZ_TARGET(scye::test::wrongWearer)
