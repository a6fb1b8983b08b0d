// Parts of the overview that the sheet uses too.
#pragma once

#include "schematic/guide.h"

namespace scye {

// The drawing of figure or garment.
[[nodiscard]] Group guideDrawing(Source where, Figure figure, GuideView view);

// The tape's strokes: guides first, then what is behind, then the way and its end bars.
void addTape(Group& group, const Tape& tape, double textHeight);

// Front and back with every tape and its number: figures side by side, garments one above the
// other.
[[nodiscard]] std::vector<Group> numberedViews(Source where, Figure figure, double textHeight);

} // namespace scye
