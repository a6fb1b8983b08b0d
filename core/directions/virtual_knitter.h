// Knits what it is told and notes every row. It knows steps and nothing of how they were made: its
// rows are to be the rows they were written from. Where the steps cannot be followed it says so,
// and goes on as well as it can.
#pragma once

#include "directions/steps.h"

namespace scye {

enum class Snag : std::uint8_t {
  RowMissing,   // a step does not start on the row after the one before it
  TooFew,       // more stitches are taken away than there are
  NotAtStart,   // a bind-off that is not at the beginning of its row
  NotAtEnd,     // a short row's turn that is not at the end of its row
  OverWaiting,  // an edge is worked to or shaped where stitches wait beyond a turn
  NothingHeld,  // stitches are taken up that nobody left, or not all of them
  CountDiffers, // the step says another number of stitches than are on the needle
  NotCastOn,    // something is knitted before there are stitches
};

struct SnagAt {
  Snag snag = Snag::RowMissing;
  SectionId section = SectionId::Undivided;
  int row = 0;
};

struct Knitted {
  RowTable rows;
  std::vector<SnagAt> snags;
};

// `castOnLeft`: where the left end of the cast-on lies, in stitches from x = 0; it only shifts the
// edges.
[[nodiscard]] Knitted knit(const std::vector<Step>& steps, double castOnLeft);
[[nodiscard]] Knitted knit(const PieceSteps& piece);

} // namespace scye
