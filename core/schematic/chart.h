// The chart of a knitted piece as a picture: one cell a stitch in the gauge's proportions, seen
// from the right side, first row at the bottom, row numbers on the side where each row starts (RS
// right, WS left), the stitch count wherever it has changed. Symbols: schematic/chart_grid.h; a
// legend names those that occur. Long stretches of columns that are alike, and of rows in which
// nothing happens, are left out between break lines that tell how many; numbers and counts stay
// true. Cost: well under 1 ms (lines are drawn as long as they are, not cell by cell).
#pragma once

#include "knit/knit_garment.h"
#include "model/phrases.h"
#include "schematic/chart_axis.h"
#include "schematic/picture.h"

#include <optional>

namespace scye {

enum class ChartFold : std::uint8_t {
  Large, // columns of a piece over kFoldColumns, rows of one over kFoldRows
  Never,
  Always,
};
inline constexpr int kFoldColumns = 60, kFoldRows = 80;

struct ChartOptions {
  double cellWidth = 0.5; // cm of the picture; the height follows from the gauge
  double textHeight =
      0; // cm of the picture; 0: as the cells allow. Larger letters: fewer row numbers
  ChartFold fold = ChartFold::Large;
  std::optional<Span> lit; // rows to light, the last one not included
};

// A chart, and what is needed to say what lies under the pointer. Refers to the piece it was made
// from.
struct Chart {
  Picture picture; // groups: the piece, "legend"
  ChartGrid grid;
  ChartAxis columns, rows; // rows counted from 0: row 1 is item 0
};

[[nodiscard]] Chart pieceChart(const KnitPiece& piece, const StitchSize& size,
                               const Phrases& phrases, const ChartOptions& options = {});
[[nodiscard]] Picture chartPicture(const KnitPiece& piece, const StitchSize& size,
                                   const Phrases& phrases, const ChartOptions& options = {});
// Every piece, one below the other, with one legend.
[[nodiscard]] Picture garmentCharts(const KnitGarment& garment, const Phrases& phrases,
                                    const ChartOptions& options = {});

struct ChartPlace {
  SectionId section = SectionId::Undivided;
  int row = 0, lastRow = 0; // the same but where rows are left out
  Stitches stitches{0};     // after it
  int stitch = 0;           // counted as the row is worked; 0: beside the stitches, or over a cut
  std::vector<Act> acts;
  [[nodiscard]] bool rightSide() const { return row % 2 == 1; }
};

// The row under a point of the picture, numbers beside it included; nothing above, below or far
// off.
[[nodiscard]] std::optional<ChartPlace> chartPlaceAt(const Chart& chart, const Vec2& at);
// "Row 45, RS, 91 stitches: decrease 1 at each end".
[[nodiscard]] std::string placeText(const ChartPlace& place, const Phrases& phrases);

} // namespace scye
