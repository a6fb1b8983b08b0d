// The pictures of a garment as display lists: its pieces to scale with their dimensions, and the
// comparison of cap and armhole. Everything in cm at true size.
#pragma once

#include "knit/knit_garment.h"
#include "model/phrases.h"
#include "schematic/picture.h"

#include <span>

namespace scye {

struct SchematicOptions {
  LengthUnit unit = LengthUnit::Centimetre;
  double textHeight = 1.2; // cm of the drawing
  int perRow = 2;          // pieces, or sides of the comparison, in a row; 0: all in one
  bool dimensions = true;
  bool notches = true; // numbered along armholes and cap; of pieces only beside their dimensions
  std::optional<Field> lit;            // light what this value changes
  const GarmentDraft* ghost = nullptr; // another state, drawn pale behind
  const KnitGarment* knitted =
      nullptr; // of the same draft: whole stitches and rows over the curves
};

// A group a piece (id and title), with outline, guides and dimensions. Figures do not cross one
// another: each stands in a lane of its own outside the piece, or alone at its height inside.
[[nodiscard]] Picture pieceSchematic(const GarmentDraft& draft, const Phrases& phrases,
                                     const SchematicOptions& options);

// Cap over armhole, both from the underarm seam up, back and front side by side; paired ticks join
// the points that are sewn to each other; below, a strip along the seam shows how much longer the
// cap has become since the underarm, and where it is gathered. Groups "back" and "front". With
// `knitted` the edges as they are knitted lie over the drafted ones, as the chords by which they
// are measured; of the wearer's right side, back and front being knitted as mirror images of one
// another but for the row by which left edges are later.
[[nodiscard]] Picture fitComparison(const GarmentDraft& draft, const Phrases& phrases,
                                    const SchematicOptions& options);

// As knitted, by the row tables (cm; the wearer's armholes, back and front together).
struct KnittedFit {
  double armholeLeft = 0, armholeRight = 0, capLeft = 0, capRight = 0;
  double mismatch = 0; // cap - armhole - ease wanted, of the side where it is larger
  std::string sentence;
};

// "It fits" or what to do, in one sentence, and the three numbers; with a knitted garment also its
// own. It fits when the draft does and, where it is knitted, nothing about the knitting forbids it.
struct FitVerdict {
  bool fits = false;
  std::string sentence;
  double armhole = 0, cap = 0, ease = 0; // cm, drafted, front and back together
  std::optional<KnittedFit> knitted;     // absent where there is no knitted cap
};
[[nodiscard]] FitVerdict fitVerdict(const GarmentDraft& draft, const Phrases& phrases,
                                    LengthUnit unit, const KnitGarment* knitted = nullptr);

} // namespace scye
