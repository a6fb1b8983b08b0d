#include "garment/derived.h"

#include "body/advice.h"
#include "garment/knit_checks.h"
#include "garment/remedies.h"

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
  d.makingUp = makingUp(d.draft, d.knit);
  d.directions = directionsFor(d.draft, d.knit, d.makingUp);
  d.gauge = gaugeReport(design);
  d.gaugeEffect = gaugeEffect(d.draft, d.knit, d.gauge);
  append(d.findings, adviceOn(design, d.draft.sizes, d.typed));
  append(d.findings, d.draft.findings);
  append(d.findings, checkKnitting(d.draft, d.knit, d.makingUp.pickUps));
  return d;
}

Findings findingsOf(const Design& design) {
  const GarmentDraft draft = draftGarment(design);
  const KnitGarment knit = knitGarment(draft);
  Findings all = draft.findings;
  append(all, checkKnitting(draft, knit, knit.gaugeUsable ? pickUps(draft, knit) : PickUps{}));
  return all;
}

void deriveRemedies(const Design& design, Derived& d) {
  Findings worked = d.draft.findings;
  append(worked, checkKnitting(d.draft, d.knit, d.makingUp.pickUps));
  addRemedies(design, d.draft.sizes, &findingsOf, worked);
  d.findings = adviceOn(design, d.draft.sizes, d.typed);
  append(d.findings, std::move(worked));
}

} // namespace scye
