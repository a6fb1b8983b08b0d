#include "directions/materials.h"

#include "body/yarn_classes.h"

#include <algorithm>

namespace scye {
namespace {

bool divided(const KnitPiece& piece) {
  return piece.sections.size() > 1;
}

int holdersFor(const KnitGarment& garment, bool threeNeedles) {
  const int beside = std::any_of(garment.pieces.begin(), garment.pieces.end(), divided) ? 1 : 0;
  constexpr int kShoulders = 4;
  return threeNeedles ? kShoulders + beside : beside;
}

} // namespace

Materials materialsOf(const GarmentDraft& draft, const KnitGarment& garment,
                      const MakingUp& makingUp) {
  const Sizes& s = draft.sizes;
  const PickUps& picked = makingUp.pickUps;
  Materials m;
  m.needle = s[Field::NeedleBody], m.ribNeedle = s[Field::NeedleRib];
  if (const YarnClass* yarn = yarnClassByGauge(1 / s.stitch.width))
    m.usual = NeedleRange{yarn->lowNeedle, yarn->highNeedle};
  if (!garment.gaugeUsable) return m;
  m.yarn = yarnNeed(draft, garment, makingUp);
  const bool neckBand = s[Field::NeckBand] >= kLeastBandWidth;
  const bool band = picked.band.stitches > 0;
  const Lattice& l = garment.lattice;
  m.edges = l.hemRows > Rows(0) || l.cuffRows > Rows(0) || neckBand || band;
  m.round = picked.neck.round && neckBand;
  m.third = s.style.threeNeedles();
  m.holders = holdersFor(garment, m.third);
  const NecklineTraits& neck = s.style.neck();
  if (neckBand && picked.neck.total() > 0) {
    m.markers = neck.corner ? 2 : neck.straight && !picked.neck.twoFronts ? 1 : 0;
    if (m.round) ++m.markers; // where the rounds begin
  }
  m.hook = picked.neck.total() > 0 && !neckBand && !picked.band.withNeck;
  m.buttons = int(garment.buttonholes.rows.size()) + picked.buttonholes.count;
  const Stitches over = picked.buttonholes.count > 0 ? Stitches(picked.buttonholes.stitches)
                                                     : garment.buttonholes.stitches;
  m.hole = m.buttons > 0 ? l.size.across(over) : 0;
  const KnitPiece* back = garment.piece(PieceId::Back);
  const bool slit = back && back->splitRow >= Rows(0) && back->splitRow < back->neckRow;
  if (slit && s.style.figure != Figure::Baby) ++m.buttons; // with a loop
  return m;
}

} // namespace scye
