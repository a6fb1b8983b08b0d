#include "document/derived.h"

#include "seam/remedies.h"

namespace scye {

Derived derive(const Design& design) {
  Derived d{draftGarment(design), {}};
  d.findings = d.draft.findings;
  return d;
}

void deriveRemedies(const Design& design, Derived& derived) {
  addRemedies(
      design, derived.draft.sizes, [](const Design& other) { return draftGarment(other).findings; },
      derived.findings);
}

} // namespace scye
