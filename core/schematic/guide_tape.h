// Where the tape goes: for each measurement its way on the figure or on the flat garment, in the
// drawing's own places (guide_figure.h, guide_garment.h).
#pragma once

#include "model/design.h"
#include "schematic/guide_figure.h"

#include <string_view>

namespace scye {

struct TapeMark {
  Vec2 at = Vec2::Zero();
  std::string_view word; // the phrase "guide.mark.<word>"
};

struct Tape {
  Field field = Field::Bust;
  GuideView view = GuideView::Front;
  Path way;                 // what is seen of it
  std::vector<Path> behind; // the rest of a girth
  std::vector<Path> levels; // lines that it is measured from
  std::vector<TapeMark> marks;
  bool girth = false; // goes round; otherwise its ends are marked with bars
};

[[nodiscard]] Tape tapeOn(Source where, Figure figure, Field measurement);

} // namespace scye
