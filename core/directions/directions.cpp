#include "directions/directions.h"

#include <cmath>

namespace scye {
namespace {

// The rounded sizes as they come out, the bust put together before them.
std::vector<FinishedSize> finishedSizes(const KnitGarment& garment) {
  std::vector<FinishedSize> sizes{{"bust", 0}};
  for (const Rounded& r : garment.rounded) {
    if (r.key == "backWidth" || r.key == "frontWidth") sizes[0].cm += r.knitted;
    if (r.key == "frontHalfWidth") sizes[0].cm += 2 * r.knitted;
    sizes.push_back({r.key, r.knitted});
  }
  return sizes;
}

} // namespace

Directions directionsFor(const GarmentDraft& draft, const KnitGarment& garment,
                         const MakingUp& makingUp) {
  const Design& design = draft.design;
  const Lattice& l = garment.lattice;
  Directions d;
  d.title = design.title, d.wearer = design.wearer, d.notes = design.notes;
  d.figure = design.as<Figure>(Choice::Figure);
  d.garment = design.as<Garment>(Choice::Garment);
  d.size = l.size;
  d.finished = finishedSizes(garment);
  for (const KnitPiece& piece : garment.pieces)
    d.pieces.push_back(stepsOf(piece, l.size));
  d.bandStitches = Stitches(l.band);
  if (const KnitPiece* back = garment.piece(PieceId::Back))
    d.slit = back->splitRow >= 0 && back->splitRow < back->neckRow;
  d.capKnitted = garment.capKnitted;
  d.armhole = garment.right.armhole.mean(), d.cap = garment.right.cap.mean();
  d.finishing = finishingOf(draft, garment, makingUp);
  return d;
}

} // namespace scye
