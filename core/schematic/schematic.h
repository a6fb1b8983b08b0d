// The pictures of a garment as display lists: its pieces to scale with their dimensions, and the
// comparison of cap and armhole. Everything in cm at true size.
#pragma once

#include "model/phrases.h"
#include "schematic/picture.h"
#include "seam/garment_draft.h"

#include <span>

namespace scye {

struct SchematicOptions {
  LengthUnit unit = LengthUnit::Centimetre;
  double textHeight = 1.2; // cm of the drawing
  int perRow = 2;          // pieces, or sides of the comparison, in a row; 0: all in one
  bool dimensions = true;
  std::optional<Field> lit;             // light what this value changes
  const GarmentDraft* ghost = nullptr;  // another state, drawn pale behind
};

// A group a piece (id and title), with outline, guides and dimensions. Figures do not cross one another:
// each stands in a lane of its own outside the piece, or alone at its height inside.
[[nodiscard]] Picture pieceSchematic(const GarmentDraft& draft, const Phrases& phrases,
                                     const SchematicOptions& options);

// Cap over armhole, both from the underarm seam up, back and front side by side; paired ticks join the
// points that are sewn to each other; below, a strip along the seam shows how much longer the cap has
// become since the underarm. Groups "back" and "front".
[[nodiscard]] Picture fitComparison(const GarmentDraft& draft, const Phrases& phrases,
                                    const SchematicOptions& options);

// "It fits" or what to do, in one sentence, and the three numbers.
struct FitVerdict {
  bool fits = false;
  std::string sentence;
  double armhole = 0, cap = 0, ease = 0; // cm, front and back together
};
[[nodiscard]] FitVerdict fitVerdict(const GarmentDraft& draft, const Phrases& phrases, LengthUnit unit);

} // namespace scye
