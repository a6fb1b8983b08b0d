#include "making_up/pick_up.h"

#include "draft/complete.h"
#include "making_up/seam_marks.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// The nearest of whole repeats and `rest`, one repeat at least.
int fitted(int stitches, int multiple, int rest) {
  const int repeats = int(std::lround(double(stitches - rest) / multiple));
  return std::max(repeats, 1) * multiple + rest;
}

EdgeSide neckSide(PieceId piece, SectionId section) {
  if (section == SectionId::Undivided)
    return piece == PieceId::LeftFront ? EdgeSide::Left : EdgeSide::Right;
  return section == SectionId::Right ? EdgeSide::Left : EdgeSide::Right;
}

double wholeNeck(const KnitPiece& piece, const BodiceLattice& counts, const StitchSize& size) {
  if (piece.sections.size() == 1) return size.across(counts.neck(true)); // straight across
  return neckEdgeLength(piece, SectionId::Right, size) +
         neckEdgeLength(piece, SectionId::Left, size);
}

NeckPickUp neckPickUp(const GarmentDraft& draft, const KnitGarment& knit, const KnitPiece& back) {
  const Lattice& l = knit.lattice;
  const double w = l.size.width;
  NeckPickUp neck;
  neck.twoFronts = draft.sizes.style.jacket();
  neck.backLength = wholeNeck(back, l.back, l.size);
  if (neck.twoFronts) {
    for (const PieceId id : {PieceId::LeftFront, PieceId::RightFront})
      if (const KnitPiece* front = knit.piece(id))
        neck.frontLength += 0.5 * neckEdgeLength(*front, SectionId::Undivided, l.size);
  } else if (const KnitPiece* front = knit.piece(PieceId::Front)) {
    neck.frontLength = wholeNeck(*front, l.front, l.size);
  }
  const bool slit = back.splitRow >= Rows(0) && back.splitRow < back.neckRow;
  neck.round = !neck.twoFronts && !slit;
  neck.back = int(std::lround(neck.backLength / w)),
  neck.front = int(std::lround(neck.frontLength / w));
  return neck;
}

} // namespace

PickUpRatio pickUpRatio(const StitchSize& size) {
  const auto [stitches, rows] = smallestRatio(size.height / size.width);
  return {stitches, rows};
}

double neckEdgeLength(const KnitPiece& piece, SectionId id, const StitchSize& size) {
  const auto section = std::find_if(piece.sections.begin(), piece.sections.end(),
                                    [&](const Section& s) { return s.id == id; });
  if (section == piece.sections.end()) return 0;
  const EdgeSide side = neckSide(piece.id, id);
  KnittedEdge edge;
  // A left edge is bound off a row earlier.
  edge.begin = piece.neckRow - Rows(side == EdgeSide::Left ? 1 : 0);
  edge.end = std::max(edge.begin, section->last);
  for (const Act& a : section->acts) {
    const bool taken = a.kind == ActKind::BindOff || a.kind == ActKind::Decrease;
    if (!taken || a.shapes != Shapes::Neck || a.side != side || a.row < edge.begin) continue;
    const EventKind kind = a.row == edge.begin ? EventKind::Underarm : EventKind::BindOff;
    edge.events.push_back({a.row, a.stitches, kind});
  }
  return edgeLength(edge, size).chord;
}

BandButtonholes bandButtonholes(int band, int wanted, double stitchWidth) {
  BandButtonholes out;
  out.wanted = wanted;
  constexpr double kHole = 1.5; // cm, for a button a little larger; as in a band that is knitted on
  constexpr int kLeast = 2;     // stitches between two
  const int inset = std::max(1, int(std::lround(kButtonInset / stitchWidth)));
  const int room = band - 2 * inset;
  out.stitches = std::clamp(int(std::lround(kHole / stitchWidth)), 1, std::max(1, room));
  out.count = std::clamp((room + kLeast) / (out.stitches + kLeast), 0, wanted);
  if (out.count == 0) return out;
  out.before = out.after = inset;
  const int between = room - out.count * out.stitches;
  if (out.count == 1) { // near the neck, where a single button is
    out.before += between;
    return out;
  }
  const int gaps = out.count - 1;
  for (int i = 0; i < gaps; ++i)
    out.between.push_back(between / gaps + (i < between % gaps ? 1 : 0));
  return out;
}

PickUps pickUps(const GarmentDraft& draft, const KnitGarment& knit) {
  PickUps out;
  const KnitPiece* back = knit.piece(PieceId::Back);
  const bool jacket = draft.sizes.style.jacket();
  const KnitPiece* front = knit.piece(jacket ? PieceId::RightFront : PieceId::Front);
  if (!back || !front) return out;
  const StitchSize& size = knit.lattice.size;
  out.ratio = pickUpRatio(size);
  const RibStitch& rib = knit.lattice.rib;
  const int flat = rib.flatRest();
  out.neck = neckPickUp(draft, knit, *back);
  NeckPickUp& neck = out.neck;
  const auto fitNeck = [&](int more, int rest) { // so that the neck and `more` stitches fit
    const int total = neck.total() + more, change = fitted(total, rib.multiple, rest) - total;
    const int each = neck.twoFronts ? change / 2 : change;
    neck.front += each;
    neck.back += neck.twoFronts ? change - 2 * each : 0;
  };
  if (!draft.sizes.style.bandPickedUp()) {
    fitNeck(0, neck.round ? 0 : flat);
    return out;
  }
  BandPickUp& band = out.band;
  band.rows = (front->neckRow - Rows(1) - std::max(Rows(0), front->foldRow)).value();
  band.stitches = int(std::lround(double(band.rows) * out.ratio.stitches / out.ratio.rows));
  band.withNeck = draft.sizes.style.neck().withFronts;
  if (!band.withNeck) {
    band.stitches = fitted(band.stitches, rib.multiple, flat);
    neck.bandTop = int(std::lround(draft.sizes[Field::ButtonBand] / size.width));
  }
  fitNeck(band.withNeck ? 2 * band.stitches : 0, flat);
  out.buttonholes = bandButtonholes(band.stitches, int(draft.sizes[Field::Buttons]), size.width);
  out.buttonholes.piece = buttonholePiece(draft.sizes.style);
  return out;
}

} // namespace scye
