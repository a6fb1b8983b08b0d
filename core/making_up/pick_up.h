// Stitches to pick up along edges that are finished with a band or a collar, from the knitted
// edges: as many as the edge is long in stitches, so that it neither draws in nor flares. That is
// one for each bound-off stitch and, along rows, the smallest whole ratio of stitches to rows
// within 2 % of the gauge (common practice; 5 for 7 at 5 x 7 to the inch, "3 for 4" where rows are
// three quarters as high as stitches wide). Totals are made to fit the rib: worked in the round
// whole repeats, worked to and fro a knit column more, so that it begins and ends alike.
//
// Order (common practice): bands along the fronts first, the neck over their tops; at a V neck
// bands and neck are one, picked up in one go.
#pragma once

#include "knit/buttonholes.h"
#include "knit/knit_garment.h"

namespace scye {

inline constexpr double kLeastBandWidth = 0.25; // cm: less is no band

struct PickUpRatio {
  int stitches = 1, rows = 1;
};
[[nodiscard]] PickUpRatio pickUpRatio(const StitchSize& size);

// Along the neck. Left and right are alike: what a left edge is later by does not count.
struct NeckPickUp {
  int back = 0;
  int front = 0;   // of a whole front; of a jacket, of each front
  int bandTop = 0; // over the top of each band that was picked up first
  bool twoFronts = false;
  bool round = false;                     // worked in the round
  double backLength = 0, frontLength = 0; // cm, the knitted edges
  [[nodiscard]] int total() const { return back + (twoFronts ? 2 * (front + bandTop) : front); }
};

// Along one front edge, from the lower edge up to the neck.
struct BandPickUp {
  int rows = 0; // 0: no band is picked up
  int stitches = 0;
  bool withNeck = false; // in one with the neck
};

// Buttonholes within such a band, counted from the lower edge: the first 1.5 cm above it, the
// last 1.5 cm below the neck; distances between differ by a stitch at most, the larger ones first
// (common practice).
struct BandButtonholes {
  PieceId piece = PieceId::RightFront;
  int wanted = 0;
  int stitches = 0;          // each
  int before = 0, after = 0; // stitches below the first, above the last
  std::vector<int> between;
  int count = 0; // fewer than wanted where there is no room
};

struct PickUps {
  PickUpRatio ratio;
  NeckPickUp neck;
  BandPickUp band;
  BandButtonholes buttonholes; // count 0: none in a picked-up band
};

// All zero where a piece is missing.
[[nodiscard]] PickUps pickUps(const GarmentDraft& draft, const KnitGarment& knit);

// cm of one section's neck edge as knitted, its bind-offs flat, all else by chords
// (knit/edge_length.h).
[[nodiscard]] double neckEdgeLength(const KnitPiece& piece, SectionId section,
                                    const StitchSize& size);
// Buttonholes in a band of `band` stitches.
[[nodiscard]] BandButtonholes bandButtonholes(int band, int wanted, double stitchWidth);

} // namespace scye
