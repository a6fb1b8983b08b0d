// The sheet to print and fill in: upright pages of 21 x 29.7 cm at true size, the origin in the
// lower left corner of the paper. Everything lies within kSheetBox, whose margins are at least 1.5
// cm on A4, and on Letter too when it is printed at full size, set at the top or in the middle.
#pragma once

#include "schematic/guide.h"

namespace scye {

inline constexpr double kSheetWidth = 21, kSheetHeight = 29.7;
struct SheetBox {
  double left = 1.6, right = 19.4, bottom = 3.3, top = 27.3;
};
inline constexpr SheetBox kSheetBox;
inline constexpr double kCheckLength = 10; // of the line by which a print's size is checked

// The first page: the numbered figures, a line for each value, and for whom, when and by whom. Then
// where each tape goes. Groups of the first page: "head", "front", "back", "table", "check"; of the
// others "head" and "texts". A control line of kCheckLength is the first stroke of "check".
[[nodiscard]] std::vector<Picture> measuringSheet(const Phrases& phrases, Source where,
                                                  Figure figure, LengthUnit unit);

} // namespace scye
