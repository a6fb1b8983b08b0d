#include "document/derived.h"

#include "body/advice.h"
#include "seam/remedies.h"

#include <iterator>

namespace scye {
namespace {

void append(Findings& to, Findings more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

} // namespace

Derived derive(const Design& design, LengthUnit typed) {
  Derived d;
  d.typed = typed;
  d.draft = draftGarment(design);
  d.knit = knitGarment(d.draft);
  d.directions = directionsFor(d.draft, d.knit);
  d.gauge = gaugeReport(design);
  d.gaugeEffect = gaugeEffect(d.draft, d.knit, d.gauge);
  append(d.findings, adviceOn(design, d.draft.sizes, d.typed));
  append(d.findings, d.draft.findings);
  append(d.findings, d.knit.findings);
  return d;
}

void deriveRemedies(const Design& design, Derived& d) {
  // Each stage's remedies are tried on that stage's chain, no longer than it has to be; advice
  // brings its own.
  Findings drafted = d.draft.findings, knitted = d.knit.findings;
  addRemedies(
      design, d.draft.sizes, [](const Design& other) { return draftGarment(other).findings; },
      drafted);
  addRemedies(design, d.draft.sizes, &allFindings, knitted);
  d.findings = adviceOn(design, d.draft.sizes, d.typed);
  append(d.findings, std::move(drafted));
  append(d.findings, std::move(knitted));
}

} // namespace scye
