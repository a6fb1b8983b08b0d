// A picture of the garment worn, from the canonical drape: the same for the same design and view,
// whatever was seen before.
#pragma once

#include "garment/derived.h"
#include "worn/raster.h"

namespace scye {

struct WornPictureOptions {
  NamedView view = NamedView::Front;
  View turned{0, 0, 1, Vec3::Zero()}; // beyond it
  double arm = 0;                     // degrees from straight down; held to what the form can do
  bool pulls = false;
  bool cutOut = false; // nothing lies behind the form: the picture is clear there
  int width = 1200, height = 900;
};

// How a garment is shown by itself, on a cover or a card: cut out, the sleeves beside the body.
[[nodiscard]] WornPictureOptions shownAlone(int width, int height);

// Nothing where the garment cannot be worn. Cost: seconds.
[[nodiscard]] std::optional<Image> wornPicture(const Derived& derived,
                                               const WornPictureOptions& options);

} // namespace scye
