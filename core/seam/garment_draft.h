// The continuous garment: everything up to, and not yet, stitches. One pure function from the
// design. It always returns as much garment as it can; what is wrong stands in the findings.
#pragma once

#include "draft/bodice.h"
#include "draft/side.h"
#include "model/finding.h"
#include "seam/match.h"

namespace scye {

struct GarmentDraft {
  Design design;
  Sizes sizes; // completed, and with the unknown worked out
  Bodice bodice;
  CapMatch cap;
  SleeveBody sleeve;
  std::vector<Piece> pieces; // back, front or left and right front, sleeve
  Findings findings;         // without remedies: see seam/remedies.h

  [[nodiscard]] const Piece* piece(PieceId id) const;
};

// Cost: about 40 us.
[[nodiscard]] GarmentDraft draftGarment(const Design& design);
// From sizes that were filled in otherwise than complete() does.
[[nodiscard]] GarmentDraft draftGarment(const Design& design, const Sizes& completed);

} // namespace scye
