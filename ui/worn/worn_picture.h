// Pictures of the garment worn as images and as files.
#pragma once

#include "garment/derived.h"
#include "worn/raster.h"

#include <QImage>
#include <QString>

namespace scye {

struct WornPictureOptions {
  NamedView view = NamedView::Front;
  View turned{0, 0, 1, Vec3::Zero()}; // beyond it
  double arm = 0;                     // degrees from straight down; held to what the form can do
  bool pulls = false;
  int width = 1200, height = 900;
};

[[nodiscard]] QImage toImage(const Image& picture);
// PNG, written whole; what went wrong as a sentence.
[[nodiscard]] std::optional<QString> saveWorn(const Image& picture, const Phrases& phrases,
                                              const QString& path);
// From the canonical drape; the problem told where nothing can be worn.
[[nodiscard]] std::optional<QString> exportWorn(const Derived& derived, const Phrases& phrases,
                                                const QString& path,
                                                const WornPictureOptions& options);

} // namespace scye
