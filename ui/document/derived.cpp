#include "document/derived.h"

#include "seam/remedies.h"

namespace scye {

Derived derive(const Design& design) {
  Derived d{draftGarment(design), {}};
  d.findings = d.draft.findings;
  addRemedies(
      design, d.draft.sizes, [](const Design& other) { return draftGarment(other).findings; },
      d.findings);
  return d;
}

} // namespace scye
