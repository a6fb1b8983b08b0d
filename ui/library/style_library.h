// The designs that come with the program, to begin with: read from its resources, which are never
// written to. Whoever opens one works on a copy without a name.
#pragma once

#include "model/design.h"
#include "model/phrases.h"
#include "schematic/picture.h"

#include <QImage>
#include <QString>

#include <vector>

namespace scye {

struct Style {
  QString path; // in the resources
  Design design;
  QString brief; // what it is, in a line
};

// Those for women first, then for men, children and babies; by title among each other.
// Cost: about 1 ms.
[[nodiscard]] std::vector<Style> styleLibrary(const Phrases& phrases);

// "Jacket, V neck, full sleeves", from its choices and how far the sleeves reach.
[[nodiscard]] QString styleInBrief(const Phrases& phrases, const Design& design);

// The garment worn, clear around the form: a picture made by this program when it was built. Null
// where the build made none.
[[nodiscard]] QImage wornPhotograph(const QString& path);

// Put together and seen from the front, and the flat pieces it is made of, from one draft; without
// words or dimensions.
struct StylePictures {
  Picture worn, pieces;
};
[[nodiscard]] StylePictures stylePictures(const Phrases& phrases, const Design& design);

} // namespace scye
