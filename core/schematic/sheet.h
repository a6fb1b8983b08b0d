// Pictures on sheets of paper: one as large as the drawing, one that is filled at a whole scale, or
// the drawing at its true size over as many sheets as it needs. What a sheet looks like is settled
// here; whoever paints or writes it only follows. cm of the drawing and mm of paper, as said.
#pragma once

#include "model/phrases.h"
#include "schematic/paper.h"

namespace scye {

struct Sheet {
  Picture picture;            // cm of the drawing
  Vec2 size = Vec2::Zero();   // mm of paper
  double oneTo = 1;           // scale 1 : oneTo
  Vec2 corner = Vec2::Zero(); // mm from the sheet's upper left to the upper left of `seen`
  Box seen;                   // cm of the drawing: the picture's box, or the part that is shown
  bool clipped = false;       // what lies outside `seen` is not painted
  Picture marks;              // cm of paper from the sheet's lower left: title block, registers
};

// mm, upright; A4 for a paper of true size.
[[nodiscard]] Vec2 sheetSize(Paper paper);

// A sheet as large as the picture, without a title block.
[[nodiscard]] Sheet trueSheet(const PictureMaker& make);
// At 1 : n, n a whole number, the largest that fits; where not `options.toScale` as large as it
// fits. `mayTurn`: upright or across, whichever shows the picture larger. With the title block.
[[nodiscard]] Sheet fittedSheet(const PictureMaker& make, const Vec2& size, bool mayTurn,
                                const ExportOptions& options, const Phrases& phrases);
// By options.paper. Where a detail of the picture would come out too small on it the sheet is as
// much larger as it must be.
[[nodiscard]] Sheet sheetFor(const PictureMaker& make, const ExportOptions& options,
                             const Phrases& phrases);

// Parts on sheets of `size` mm of their own, upright, or across where that saves sheets. `edges`:
// what is not to be drawn on.
struct PartsOnSheets {
  Vec2 size = Vec2::Zero(); // mm
  std::vector<Picture> parts;
};
struct SheetEdges {
  double beside = 0, above = 0, below = 0; // mm
};
[[nodiscard]] PartsOnSheets partsFor(const PartsMaker& make, const Vec2& size, bool mayTurn,
                                     const SheetEdges& edges, double lettersCm);

// Every drawing on a sheet of `size` mm of its own, as above; one with a detail that would come out
// too small in parts, a sheet each. `parts`: of each drawing, or of none; those without stay whole.
[[nodiscard]] std::vector<Sheet>
legibleSheets(const std::vector<PictureMaker>& drawings, const std::vector<PartsMaker>& parts,
              const Vec2& size, bool mayTurn, const ExportOptions& options, const Phrases& phrases);

// The drawings at their true size, each over as many sheets as it needs; a map of them with a
// square of 10 cm to check the printer by comes first. Neighbouring sheets share kOverlapMm, with
// a cross at both ends of every joint, the same on both. True size for a paper of true size: a
// sheet a drawing.
inline constexpr double kOverlapMm = 10;
[[nodiscard]] std::vector<Sheet> tiledSheets(const std::vector<PictureMaker>& drawings,
                                             const ExportOptions& options, const Phrases& phrases);

// The sheet as one picture, in cm of paper from its lower left; what is not seen is left to whoever
// paints it.
[[nodiscard]] Picture onPaper(const Sheet& sheet);

} // namespace scye
