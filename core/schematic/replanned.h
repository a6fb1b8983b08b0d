// Pieces before and after they were planned anew, laid over each other from the cast-on: both as
// they come out in the fabric they are really knitted in, so that what differs is seen at its size.
#pragma once

#include "knit/knit_garment.h"
#include "model/phrases.h"
#include "schematic/picture.h"

#include <span>

namespace scye {

struct Replanned {
  std::string title;
  const KnitPiece *before = nullptr, *after = nullptr;
  StitchSize size; // of the fabric
  int worked = 0;  // lines that both have, and that are knitted
  Stitches selvedge{1};
};

// A group a piece, `perRow` of them in a row (0: all), and below them what the lines mean.
[[nodiscard]] Picture replannedPicture(std::span<const Replanned> pieces, double textHeight,
                                       int perRow, const Phrases& phrases);

} // namespace scye
