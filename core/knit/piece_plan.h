// From counts and schedules to what is worked in which row. One builder a kind of piece; all share
// the same rules: side shaping evenly spread, underarm bind-off at the beginning of two rows,
// shoulders bound off in steps (right edge RS, left edge WS), a split neck knitted right side
// first.
#pragma once

#include "knit/knit_garment.h"

namespace scye {

struct BodicePlan {
  const GarmentDraft& draft;
  const Lattice& lattice;
  ShapingStyle style;
};

[[nodiscard]] KnitPiece wholePiece(const BodicePlan& plan, PieceId id, const BodiceLattice& counts,
                                   const Schedule& armhole);
[[nodiscard]] KnitPiece jacketFront(const BodicePlan& plan, PieceId id, const Schedule& armhole);
// `right` and `left`: the schedules of the cap's edges, the same but where its halves differ.
[[nodiscard]] KnitPiece sleevePiece(const Lattice& lattice, PieceId id, const Schedule& right,
                                    const Schedule& left);
// Without a cap: up to the underarm, then bound off.
[[nodiscard]] KnitPiece caplessSleeve(const Lattice& lattice);

} // namespace scye
