// The pictures of a garment as display lists: its pieces to scale with their dimensions, and the
// comparison of cap and armhole. Everything in cm at true size.
#pragma once

#include "knit/knit_garment.h"
#include "model/phrases.h"
#include "schematic/picture.h"

#include <span>

namespace scye {

// Another state of the garment, drawn pale behind; with a name, which stands beside its side, the
// same garment for somebody else.
struct Behind {
  const GarmentDraft* draft = nullptr;
  std::string name{};
};

// A piece on the needles: it is filled as far as it is worked. `mirrored`: a left sleeve on the
// right one's outline.
struct WorkedPart {
  PieceId piece = PieceId::Back; // on whose outline it is drawn
  const KnitPiece* plan = nullptr;
  int lines = 0; // of its row table
  bool mirrored = false;
};

struct SchematicOptions {
  LengthUnit unit = LengthUnit::Centimetre;
  double textHeight = 1.2; // cm of the drawing
  int perRow = 2;          // pieces, or sides of the comparison, in a row; 0: all in one
  bool dimensions = true;
  // Of the dimensions: 1 only those a garment is told by (bust, length, armhole depth, shoulders,
  // upper arm, sleeve length, cap height, cuff), 2 with those that shape it, 3 all.
  int detail = 3;
  bool leaveOut = false; // lesser dimensions that find no free place, instead of crowding them in
  bool notches = true;   // numbered along armholes and cap; of pieces only beside their dimensions
  std::optional<Field> lit; // light what this value changes
  std::vector<Behind> behind;
  // Of the same draft: the curves are those that are knitted against (knit/on_stitches.h), and
  // dimensions tell what is knitted, beside it what was wanted where a stitch or row parts them.
  const KnitGarment* curves = nullptr;
  // Of the same draft: whole stitches and rows over the curves.
  const KnitGarment* knitted = nullptr;
  // With these the pieces are outlines, and filled only as far as they are worked.
  std::vector<WorkedPart> worked;
};

// A group a piece (id and title), with outline, guides and dimensions. Figures do not cross one
// another: each stands in a lane of its own outside the piece, or alone at its height inside.
[[nodiscard]] Picture pieceSchematic(const GarmentDraft& draft, const Phrases& phrases,
                                     const SchematicOptions& options);

// Cap over armhole, both from the underarm seam up, back and front side by side or (perRow 1) one
// below the other; paired ticks join the points that are pinned to each other; what is too long or
// too short to be sewn is marked on its edge. Below, as long as the armhole, a strip shows how much
// of the cap each bit of it takes in, and where it is gathered, with both lengths and the ease.
// Groups "back" and "front". With `knitted` the edges as they are knitted lie over the drafted
// ones, as the chords by which they are measured; of the wearer's right side, back and front being
// knitted as mirror images of one another but for the row by which left edges are later.
[[nodiscard]] Picture fitComparison(const GarmentDraft& draft, const Phrases& phrases,
                                    const SchematicOptions& options);

// The same two edges laid out straight, the cap's above the armhole's, with the pins between them
// and what the cap is let in from pin to pin.
[[nodiscard]] Picture straightComparison(const GarmentDraft& draft, const Phrases& phrases,
                                         const SchematicOptions& options);

// The groups of a comparison beside one another, or in a column.
void layOut(Picture& comparison, bool column);

} // namespace scye
