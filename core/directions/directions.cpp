#include "directions/directions.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// A repeat begins beside the selvedge, or beside the band or the picked-up stitch of a front, where
// the pattern is whole: a bodice piece at the bust, a sleeve above its cuff. What the side seam has
// there more or less shifts it.
Stitches patternAfter(const KnitGarment& garment, const KnitPiece& piece, int multiple) {
  const Lattice& l = garment.lattice;
  const Stitches castOn = piece.castOn() + piece.addedAfter(Rows(0));
  Stitches before = l.selvedge;
  switch (piece.id) {
  case PieceId::Back:
    before += (castOn - l.back.bust()) / 2;
    break;
  case PieceId::Front:
    before += (castOn - l.front.bust()) / 2;
    break;
  case PieceId::LeftFront:
    before += castOn - l.front.bust();
    break;
  case PieceId::RightFront:
    before = l.band > Stitches(0) ? l.band : l.pickUp;
    break;
  case PieceId::Sleeve:
  case PieceId::LeftSleeve:
    break;
  }
  return Stitches((before % multiple + multiple) % multiple);
}

} // namespace

Directions directionsFor(const GarmentDraft& draft, const KnitGarment& garment,
                         const MakingUp& makingUp) {
  const Design& design = draft.design;
  const Lattice& l = garment.lattice;
  Directions d;
  d.title = design.title, d.wearer = design.wearer, d.notes = design.notes;
  d.figure = design.as<Figure>();
  d.garment = design.as<Garment>();
  d.size = draft.sizes.stitch; // there is one even where it is too fine to be knitted
  d.rib = l.rib;
  d.finished = finishedSizes(draft, garment);
  d.materials = materialsOf(draft, garment, makingUp);
  for (const KnitPiece& piece : garment.pieces)
    d.pieces.push_back(stepsOf(piece, d.size));
  d.bandStitches = l.band;
  d.patternMultiple = std::max(1, int(draft.sizes[Field::PatternMultiple]));
  for (const KnitPiece& piece : garment.pieces)
    d.patternAfter.push_back(patternAfter(garment, piece, d.patternMultiple));
  if (const KnitPiece* back = garment.piece(PieceId::Back))
    d.slit = back->splitRow >= Rows(0) && back->splitRow < back->neckRow;
  d.capKnitted = garment.capKnitted;
  d.finishing = finishingOf(draft, garment, makingUp);
  return d;
}

} // namespace scye
