// Where the knitter is: the row to work now, what is done in it, what comes next. Rows of a piece
// are counted as lines of its row table, so that the two sides of a divided neck follow one another
// as they are knitted.
#pragma once

#include "directions/step_words.h"
#include "making_up/yarn.h"
#include "progress/present.h"

namespace scye {

// A row of a piece as it is about to be worked.
struct RowToWork {
  SectionId section = SectionId::Undivided;
  int row = 0; // 0: the cast-on
  [[nodiscard]] bool rightSide() const { return row % 2 == 1; }
  std::vector<Action> actions;
  Stitches before{0}, after{0};
  Stitches waiting{0}; // beyond the turns of short rows, after it
  StepKind step = StepKind::Even;
  // What a row of the lower edge is worked in.
  EdgeMade edge = EdgeMade::Plain;
  RibStitch rib{};
  RibEnds ribEnds{};
};

// Which time of a repeat: "every 4th row, 5 times".
struct RepeatPlace {
  int time = 1, times = 1; // from 1
  int row = 1, every = 2;  // the row within that time, from 1; the last one is the shaped one
};

struct Place {
  int line = 0, lines = 0; // worked so far, and in all
  std::optional<RowToWork> now;
  std::vector<RowToWork> next; // the three after it, as far as there are any
  std::optional<RepeatPlace> repeat;
  // Rows until something but plain knitting is worked; 0: now. Absent: nothing comes any more.
  std::optional<int> toEvent;
  std::optional<RowToWork> event;
  double share = 0; // of the piece's stitches, that is worked
  long stitchesLeft = 0;
  [[nodiscard]] int rowsLeft() const { return lines - line; }
};

[[nodiscard]] Place placeOf(const KnitPiece& piece, int worked);
// The line of the table that is this row; absent where there is no such row. Without a section the
// first one from line `from` on that has the row, or else the first at all.
[[nodiscard]] std::optional<int> lineOf(const KnitPiece& piece, int row,
                                        std::optional<SectionId> section = {}, int from = 0);

// "k1, ssk, work to last 3 sts, k2tog, k1", "k2, *p2, k2; repeat from * to end"
[[nodiscard]] std::string doText(const Words& words, const RowToWork& row);
// "both edges", "the edge at the beginning of the row", or empty where none is shaped.
[[nodiscard]] std::string edgeText(const Words& words, const RowToWork& row);
// "Row 37 (RS)", "Right side of the neck, row 37 (RS)", "Cast-on"
[[nodiscard]] std::string rowName(const Words& words, const RowToWork& row);

// Yarn for the stitches that are left: their share of the whole garment's need.
struct YarnLeft {
  YarnRange grams, metres; // metres only where no weight is known
};
[[nodiscard]] YarnLeft yarnLeft(const Place& place, const YarnNeed& garment);
// "about 120 g of yarn", "about 300 to 360 m of yarn"; empty where nothing tells it.
[[nodiscard]] std::string yarnLeftText(const Phrases& phrases, const YarnLeft& left);
// What is left at the knitter's own pace, seconds; nothing before ten rows were timed.
[[nodiscard]] std::optional<double> secondsLeft(const PieceWork& work);
// Times a step forward: rests longer than a quarter of an hour are none of it.
void keepPace(Pace& pace, double seconds);

} // namespace scye
