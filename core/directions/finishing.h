// What is to be done after the last piece, as data: the seams, what is picked up, how the sleeves
// are set in. Worked out from the knitted garment; the sentences are made in finishing_words.h.
// Lengths in cm.
#pragma once

#include "making_up/making_up.h"
#include "making_up/uneven_seam.h"

#include <vector>

namespace scye {

// The top of a cap that is not eased in smoothly.
struct CapTopDrawn {
  CapTop made = CapTop::Smooth;
  DrawnIn lengths;
  int pleats = 0;   // of pleats: how many,
  double takes = 0; // and what each takes
  bool any() const { return made != CapTop::Smooth && lengths.armhole > 0; }
};

struct Finishing {
  // Seams
  int shoulder = 0; // stitches of each
  bool shoulderShortRows = false;
  int sideBack = 0, sideFront = 0; // rows of the side seams' edges
  bool bustShortRows = false;
  double bustLonger = 0; // cm that they lengthen the front by
  bool faced = false;
  // Neck and fronts
  NecklineTraits neckline;
  double neckBand = 0, buttonBand = 0; // widths
  MakingUp makingUp;
  Buttonholes buttonholes; // of a band that is knitted on
  // Sleeves
  int crown = 0;    // stitches
  double eased = 0; // of the cap's ease, smoothly; with gathers or pleats, below them
  CapTopDrawn top;
};

[[nodiscard]] Finishing finishingOf(const GarmentDraft& draft, const KnitGarment& garment,
                                    const MakingUp& makingUp);

// Whether the left armhole is pinned as the right one, to within a row of each piece: edges knitted
// at the left are a row later.
[[nodiscard]] bool pinnedAlike(const std::vector<SeamMarks>& marks);

} // namespace scye
