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
  Stitches selvedge{1}; // of a sewn edge beyond the seam
  Stitches shoulder{0}; // of each
  bool shoulderShortRows = false;
  bool threeNeedles = false;          // shoulders are bound off together
  int slitRows = 0, slitStitches = 0; // along each edge of a slit at the back neck
  int sideBack = 0, sideFront = 0;    // rows of the side seams' edges
  bool bustShortRows = false;
  double bustLonger = 0; // cm that they lengthen the front by
  bool faced = false;
  // Neck and fronts
  NecklineTraits neckline;
  double neckBand = 0, buttonBand = 0;  // widths
  int neckRows = 0, buttonBandRows = 0; // of them, where they are picked up
  MakingUp makingUp;
  Buttonholes buttonholes; // of a band that is knitted on
  // Sleeves
  int crown = 0;                               // stitches
  double armhole[2] = {0, 0}, cap[2] = {0, 0}; // cm, the right and the left edges as knitted
  double eased = 0; // of the cap's ease, smoothly; with gathers or pleats, below them
  CapTopDrawn top;
};

[[nodiscard]] Finishing finishingOf(const GarmentDraft& draft, const KnitGarment& garment,
                                    const MakingUp& makingUp);

// Whether the left armhole is pinned as the right one, to within a row of each piece: edges knitted
// at the left are a row later.
[[nodiscard]] bool pinnedAlike(const std::vector<SeamMarks>& marks);

} // namespace scye
