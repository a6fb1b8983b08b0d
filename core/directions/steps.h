// What a knitter is told to do, as data: a piece is parts under headings, a part is steps. Every
// row of every section belongs to exactly one step, and steps follow the rows; so where two edges
// are shaped at the same time, the steps of a part are one merged list by row.
//
// Derived from the acts of a piece alone, by making runs of equal acts at equal distances into one
// step: any piece whose bind-offs come at the beginning of their rows can be told. Exact: see
// directions/virtual_knitter.h. Cost: about 5 us a piece.
#pragma once

#include "knit/knit_garment.h"

#include <vector>

namespace scye {

// Something done at one edge in the row in which it is worked: an act without its row.
struct Action {
  ActKind kind = ActKind::Decrease;
  EdgeSide side = EdgeSide::Right;
  Stitches stitches{1};
  Shapes shapes = Shapes::Side;
  Stitches from{0}; // as an act's
  bool operator==(const Action&) const = default;
};

// Whether a row that leaves `after` stitches has too few to keep one beside every decrease. Such a
// row is told in other words, so it is never a repeat of one that has enough.
[[nodiscard]] bool isTight(const std::vector<Action>& actions, Stitches after);

enum class StepKind : std::uint8_t {
  CastOn, // row 0
  Hem,    // the lower edge, even
  RibRow, // one row of it, which is written out
  RibOn,  // rows 1 and 2 over and over
  Facing, // what is folded in behind the lower edge, even
  Fold,   // the one row along which it is folded
  Even,   // no shaping
  Row,    // `actions` in row `first`; a row after it, if there is one, is worked even
  // `actions` as in the row `like`, every `every` rows, `times` times; the first after every - 1
  // even rows.
  Repeat,
  BindOffRows,  // `actions[0]` at the beginning of each of the rows first to last, whichever edge
                // that is
  BindOffEvery, // `actions[0]` at the beginning of every 2nd row, `times` times; a last row may be
                // even
};

struct Step {
  StepKind kind = StepKind::Even;
  SectionId section = SectionId::Undivided;
  int first = 0, last = 0;     // rows, both included
  std::vector<Action> actions; // as in a row table: rest and rejoin first, then right before left
  int every = 0, times = 1;
  int like = -1;
  Stitches stitches{0};    // in work after the step
  Stitches waiting{0};     // beyond the turns of short rows
  double fromCastOn = 0;   // cm, the height of the piece after it
  double fromFold = 0;     // cm, above the fold of a facing; 0 below it, or where there is none
  double fromUnderarm = 0; // cm; 0 below the underarm
  [[nodiscard]] int rows() const { return last - first + 1; }
  bool operator==(const Step&) const = default;
};

enum class PartKind : std::uint8_t {
  Hem,   // cast-on and rib or facing
  Main,  // up to the underarm: body or sleeve
  Upper, // from there, or from where a neck begins
};

struct Part {
  PartKind kind = PartKind::Main;
  SectionId section = SectionId::Undivided;
  std::vector<Shapes> shapes; // what is shaped in it, in the order of the enumeration
  // The two edges are shaped for different ends: what the right and what the left one is.
  bool together = false;
  std::vector<Shapes> right, left; // meant where `together`
  double height = 0;               // cm
  std::vector<Step> steps;         // at least one
  [[nodiscard]] int first() const { return steps.front().first; }
  [[nodiscard]] int last() const { return steps.back().last; }
};

struct PieceSteps {
  PieceId id = PieceId::Back;
  double castOnLeft = 0; // the left end of the cast-on, in stitches from x = 0
  EdgeMade edge = EdgeMade::Ribbed;
  RibStitch rib;
  RibEnds ribEnds; // of its right-side rows
  std::vector<Part> parts;
};

// `size`: of a piece that has no fabric of its own.
[[nodiscard]] PieceSteps stepsOf(const KnitPiece& piece, const StitchSize& size);

} // namespace scye
