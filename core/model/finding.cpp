#include "model/finding.h"

#include "model/enum_keys.h"

#include <algorithm>

namespace scye {

std::string_view severityKey(Severity severity) {
  static constexpr EnumKeys<Severity, Severity::Blocking> kKeys{{
      {Severity::Note, "note"},
      {Severity::Warning, "warning"},
      {Severity::Blocking, "blocking"},
  }};
  return kKeys[severity];
}

Design applied(const Design& design, const Remedy& remedy) {
  Design out = design;
  for (const auto& [field, value] : remedy.changes)
    out.set(field, value, design.source(field));
  for (const Field field : remedy.onGarment)
    if (const auto typed = out.given(field)) out = retaken(out, field, *typed, Source::Garment);
  for (const auto& [choice, option] : remedy.picks)
    out.choose(choice, option);
  return out;
}

bool anyBlocking(const Findings& findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](const Finding& f) { return f.severity == Severity::Blocking; });
}

const Finding* findCode(const Findings& findings, std::string_view code) {
  const auto at = std::find_if(findings.begin(), findings.end(),
                               [&](const Finding& f) { return f.code == code; });
  return at == findings.end() ? nullptr : &*at;
}

} // namespace scye
