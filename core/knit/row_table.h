// A knitted piece, row by row. A section is a stretch that is knitted in one go: the undivided
// piece, and where a neck splits it, its right and left side (seen from the right side), which keep
// the piece's row numbers. Row 0 is the cast-on, row 1 the first right-side row. Edges are in
// stitches from x = 0, selvedges included, as they stand after the row; right_edge - left_edge =
// stitches. Half stitches occur where a piece with an odd count is centred.
//
// Short rows end before the edge: the stitches beyond the turn wait on the needle, and the edges
// are those of the stitches in work. A buttonhole is worked within its row and leaves the count as
// it was.
#pragma once

#include "draft/piece.h"
#include "model/units.h"
#include "shaping/edge_length.h"

#include <string>
#include <vector>

namespace scye {

enum class ActKind : std::uint8_t {
  CastOn,   // `stitches` onto the needle
  Increase, // at `side`, one stitch in from the edge
  Decrease, // likewise
  BindOff,  // at `side`, at the beginning of the row
  Close,    // bind off all that is left
  Rest,   // stitches at the left are left on a holder: the right section goes on alone; `from` more
          // wait at the left edge and go with them
  Rejoin, // take up the held stitches, right side facing; likewise
  Wait, // turn before `stitches` at `side`, at the end of the row; `from` wait beyond them already
  TakeUp,         // work all that waits at `side`, at the end of the row
  IncreaseEvenly, // `stitches` evenly across the row, half of them at each side of the middle (an
                  // odd one at the left); `from` 1: all of them toward the edge at `side`
  Hold,       // at `side`, at the beginning of a row that is not worked: put on a holder for good
  Buttonhole, // over `stitches`, `from` stitches in from the edge at `side`
};
inline constexpr int kActKinds = int(ActKind::Buttonhole) + 1;

// What an action shapes; directions are grouped by it.
enum class Shapes : std::uint8_t {
  Hem,
  Side,
  Underarm,
  Armhole,
  Shoulder,
  Neck,
  Sleeve,
  Cap,
  Crown,
  Bust,
  Cuff,
  Opening,
};

struct Act {
  Rows row{0};
  ActKind kind = ActKind::CastOn;
  EdgeSide side = EdgeSide::Right;
  Stitches stitches{0}; // each positive
  Shapes shapes = Shapes::Hem;
  Stitches from{0}; // meant where its kind says so
  // Of stitches that are increased evenly: those that move the right edge; the others move the
  // left.
  [[nodiscard]] Stitches addedAtRight() const;
  bool operator==(const Act&) const = default;
};

enum class SectionId : std::uint8_t { Undivided, Right, Left };
[[nodiscard]] std::string_view sectionKey(SectionId id); // "body", "right", "left"

struct Section {
  SectionId id = SectionId::Undivided;
  Rows first{0}, last{0}; // both worked; the undivided one starts with its cast-on, row 0
  double leftEdge = 0, rightEdge = 0; // before row `first`
  std::vector<Act> acts;              // by row; in one row right before left
  Stitches waiting{0};                // beyond its turns before row `first`
  bool operator==(const Section&) const = default;
};

struct RowLine {
  SectionId section = SectionId::Undivided;
  Rows row{0};
  double leftEdge = 0, rightEdge = 0;
  std::vector<Act> acts;
  Stitches waiting{0}; // beyond the turns
  [[nodiscard]] bool rightSide() const { return isRightSide(row); }
  [[nodiscard]] Stitches stitches() const; // in work
  bool operator==(const RowLine&) const = default;
};

using RowTable = std::vector<RowLine>;

// Works the sections off. Pure bookkeeping: what an act does to the edges stands here and nowhere
// else in the core (the virtual knitter has an account of its own).
[[nodiscard]] RowTable workedRows(const std::vector<Section>& sections);

// "decrease right 1, decrease left 1", "knit"; for the row table as a file.
[[nodiscard]] std::string actionText(const RowLine& line);

} // namespace scye
