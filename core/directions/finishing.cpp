#include "directions/finishing.h"

#include "draft/complete.h"
#include "making_up/yarn.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace scye {
namespace {

void seams(Finishing& f, const GarmentDraft& draft, const KnitGarment& garment) {
  const Lattice& l = garment.lattice;
  f.shoulder = l.back.shoulder;
  f.shoulderShortRows = l.shoulderShortRows;
  f.threeNeedles = draft.sizes.style.threeNeedles();
  f.selvedge = l.selvedge;
  f.bustShortRows = l.front.longer > Rows(0);
  f.bustLonger = l.size.up(l.front.longer);
  f.faced = l.foldRow > Rows(0);
  const bool jacket = draft.sizes.style.jacket();
  const KnitPiece* back = garment.piece(PieceId::Back);
  const KnitPiece* front = garment.piece(jacket ? PieceId::LeftFront : PieceId::Front);
  if (!back || !front) return;
  // A half front has its side seam at the right edge if it is the left one.
  f.sideBack = seamRows(back->rows, EdgeSide::Right, back->underarmRow);
  f.sideFront = seamRows(front->rows, EdgeSide::Right, front->underarmRow);
  f.buttonholes = garment.buttonholes;
  if (back->splitRow >= Rows(0) && back->splitRow < back->neckRow) {
    f.slitRows = (back->neckRow - back->splitRow).value();
    const PickUpRatio& ratio = f.makingUp.pickUps.ratio;
    f.slitStitches =
        std::max(1, int(std::lround(double(f.slitRows) * ratio.stitches / ratio.rows)));
  }
}

void sleeves(Finishing& f, const GarmentDraft& draft, const KnitGarment& garment) {
  const std::vector<SeamMarks>& marks = f.makingUp.marks;
  if (marks.empty()) return;
  f.crown = garment.right.capRight.crown.value();
  f.armhole[0] = garment.right.armhole.mean(), f.armhole[1] = garment.left.armhole.mean();
  f.cap[0] = garment.right.cap.mean(), f.cap[1] = garment.left.cap.mean();
  const LetIn &back = marks[0].letIn, &front = marks[1].letIn;
  f.eased = back.smooth + front.smooth;
  f.top.made = draft.sizes.style.capTop;
  if (!back.gathers() && !front.gathers()) f.top.made = CapTop::Smooth;
  if (f.top.made == CapTop::Smooth) return;
  f.top.lengths = drawnIn(marks[0], marks[1]);
  const double drawn = f.top.lengths.cap -
                       f.top.lengths.armhole; // between the pins, what is eased in there included
  f.eased = std::max(0.0, (garment.right.cap - garment.right.armhole).mean() - drawn);
  if (f.top.made != CapTop::Pleated) return;
  f.top.pleats = int(draft.sizes[Field::Pleats]);
  f.top.takes = drawn / f.top.pleats;
}

} // namespace

Finishing finishingOf(const GarmentDraft& draft, const KnitGarment& garment,
                      const MakingUp& makingUp) {
  Finishing f;
  if (!garment.gaugeUsable) return f;
  f.neckline = draft.sizes.style.neck();
  f.neckBand = draft.sizes[Field::NeckBand], f.buttonBand = draft.sizes[Field::ButtonBand];
  const double row = garment.lattice.size.height;
  f.neckRows = bandRows(f.neckBand, row), f.buttonBandRows = bandRows(f.buttonBand, row);
  f.makingUp = makingUp;
  seams(f, draft, garment);
  sleeves(f, draft, garment);
  return f;
}

bool pinnedAlike(const std::vector<SeamMarks>& marks) {
  if (marks.size() != 4) return false;
  for (const std::size_t side : {0, 1}) {
    const std::vector<SeamMark>&right = marks[side].marks, &left = marks[side + 2].marks;
    if (right.size() != left.size()) return false;
    for (std::size_t i = 0; i < right.size(); ++i) {
      const PinPlace &a = right[i].cap, &b = left[i].cap;
      if (std::abs(right[i].armhole.up - left[i].armhole.up) > 1 || std::abs(a.up - b.up) > 1)
        return false;
      if (a.flat != b.flat || std::abs(a.stitches - b.stitches) > 1) return false;
    }
  }
  return true;
}

} // namespace scye
