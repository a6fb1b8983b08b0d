// A chart over several sheets of paper, where its cells would be too small on one. Joints lie
// between cells, never in a stretch that is left out; each part is a drawing of its own with the
// numbers of its rows on both sides and those of its stitches below, the symbols that occur in it,
// and a map that shows which part it is. Neighbours have kSharedCells in common on either side of a
// joint, and crosses at both of its ends at the same places. Parts are as equal as whole cells
// allow: bands of rows, and in each band as many parts as its own width asks for, so that none is
// empty. cm of paper.
#pragma once

#include "schematic/chart_split.h"
#include "schematic/paper.h"

namespace scye {

struct ChartPart {
  ChartWindow window;
  Picture picture; // groups: the piece, "map", "legend", and "register" for every cross
};

struct ChartParts {
  Vec2 cell = Vec2::Zero(); // cm of paper
  std::vector<ChartPart> parts;
};

// None of the parts is larger than `room` cm where the room is at least that of a few cells with
// their numbers; `letters`: cm. As few parts as do with cells of kLeastDetailMm, then cells as
// large as these parts allow. One part is the whole chart, without a map. A piece without rows has
// none.
[[nodiscard]] ChartParts chartParts(const KnitPiece& piece, const StitchSize& size,
                                    const Phrases& phrases, const Vec2& room, double letters);
// Their pictures. All but the size must outlive what is returned.
[[nodiscard]] PartsMaker chartPartsOf(const KnitPiece& piece, const StitchSize& size,
                                      const Phrases& phrases);

} // namespace scye
