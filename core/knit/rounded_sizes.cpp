#include "knit/rounded_sizes.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// Stitches above a sleeve's cuff.
int aboveCuff(const KnitPiece& sleeve) {
  int stitches = sleeve.castOn().value();
  for (const Act& a : sleeve.sections.front().acts)
    if (a.kind == ActKind::Spread) stitches += a.stitches.value();
  return stitches;
}

// Stitches of a row, with those that its rib goes without.
int widthAt(const KnitPiece& piece, int row) {
  return piece.rows[std::size_t(row)].stitches().value() + piece.addedAfter(row);
}

// The row in which a place on a side or sleeve seam lies: the seam is drafted up to `end`, and its
// corners are spread over the rows of the piece as they are over its length (lattice.cpp).
int rowOf(double y, double end, int lastRow) {
  return end > 0 ? std::clamp(int(std::lround(y / end * lastRow)), 0, lastRow) : 0;
}

} // namespace

std::vector<Rounded> roundedSizes(const GarmentDraft& g, const KnitGarment& k) {
  const Lattice& l = k.lattice;
  const Bodice& b = g.bodice;
  const double w = l.size.width, h = l.size.height;
  const int seams = 2 * l.selvedge;
  const double band = b.halfNeck - 0.5 * g.sizes[Field::NeckWidth]; // lies within the knitted neck
  const bool pullover = !g.sizes.style.jacket();
  std::vector<Rounded> out;
  const auto add = [&](const char* key, Field field, double wanted, double knitted, double grain) {
    // What cannot be had at all is no length below nothing.
    out.push_back({key, field, std::max(wanted, 0.0), std::max(knitted, 0.0), grain});
  };
  add("backWidth", Field::EaseBust, 2 * b.back.halfBust, (l.back.bust() - seams) * w, w);
  if (pullover)
    add("frontWidth", Field::EaseBust, 2 * b.front.halfBust, (l.front.bust() - seams) * w, w);
  else
    add("frontHalfWidth", Field::EaseBust, b.front.halfBust, (l.front.right - l.selvedge) * w, w);
  const KnitPiece* back = k.piece(PieceId::Back);
  const bool waisted = g.sizes.style.waisted() && b.at.waist >= b.at.fold &&
                       b.at.waist + kWaistEven < b.at.underarm - kUnderarmEven;
  if (back && waisted) {
    const int row = rowOf(b.at.waist, b.at.underarm, l.underarmRow - 1);
    add("waist", Field::EaseWaist, g.sizes[Field::BackShare] * g.sizes.finished(Field::Waist),
        (widthAt(*back, row) - seams) * w, 2 * w);
  }
  add("crossBack", Field::CrossBack, 2 * b.back.halfCross,
      (l.back.bust() - 2 * l.back.away - seams) * w, w);
  add("shoulder", Field::ShoulderLength, b.back.halfShoulder - b.halfNeck,
      (l.back.shoulder - l.selvedge - l.pickUp) * w, w);
  add("hemToUnderarm", Field::HemToUnderarm, b.at.underarm - b.at.fold,
      (l.underarmRow - std::max(l.foldRow, 1)) * h, h);
  if (g.bodice.bust.depth > 0 && l.front.longer > 0)
    add("bustDepth", Field::BustDepth, g.bodice.bust.depth, l.front.longer * h, h);
  if (const KnitPiece* front = k.piece(pullover ? PieceId::Front : PieceId::RightFront))
    add("neckDrop", Field::FrontNeckDrop, g.sizes[Field::FrontNeckDrop],
        (l.neckTop + l.front.longer - front->neckRow) * h - band, h);
  if (back && g.design.has(Field::BackNeckDrop) && !g.sizes.style.straightBackNeck())
    add("backNeckDrop", Field::BackNeckDrop, g.sizes[Field::BackNeckDrop],
        (l.neckTop - back->neckRow) * h, h);
  if (g.design.has(Field::NeckWidth))
    add("neckWidth", Field::NeckWidth, g.sizes[Field::NeckWidth],
        (l.back.neck(true) + 2 * l.pickUp) * w - 2 * band, w);
  if (g.design.has(Field::CrossFront)) {
    // Of a jacket both fronts, as they lie closed.
    const double knitted = pullover ? l.front.bust() - 2 * l.front.away - seams
                                    : 2 * (l.front.right - l.front.away - l.selvedge);
    // Of two fronts each is rounded for itself.
    add("crossFront", Field::CrossFront, 2 * b.front.halfCross, knitted * w, pullover ? w : 2 * w);
  }
  if (g.design.has(Field::UnderarmBack))
    add("underarmBack", Field::UnderarmBack, g.sizes[Field::UnderarmBack], l.back.underarm * w, w);
  if (g.design.has(Field::UnderarmFront))
    add("underarmFront", Field::UnderarmFront, g.sizes[Field::UnderarmFront], l.front.underarm * w,
        w);
  add("armholeDepth", Field::EaseArmholeDepth, b.back.depth, l.armholeRows() * h, h);
  add("upperArm", Field::EaseUpperArm, 2 * g.sleeve.halfWidth, (l.sleeveWidth - seams) * w, w);
  if (const KnitPiece* sleeve = k.piece(PieceId::Sleeve)) {
    const SleeveTraits& line = g.sizes.style.sleeve();
    add("cuff", line.ownCuff ? Field::CuffGirth : Field::EaseWrist, 2 * g.sleeve.halfCuff,
        ((l.cuffSpread > 0 ? sleeve->castOn().value() : aboveCuff(*sleeve)) - seams) * w,
        l.cuffSpread > 0 ? std::max(1.0, 0.5 * l.rib.multiple) * w : w);
    if (l.cuffSpread > 0)
      add("fullness", Field::FullGirth, 2 * g.sleeve.halfFull, (aboveCuff(*sleeve) - seams) * w, w);
    const double elbowY = g.sleeve.length - 0.5 * g.sizes.finished(Field::SleeveToUnderarm);
    const int row = rowOf(elbowY, g.sleeve.length, l.sleeveUnderarmRow - 1);
    if (line.atElbow && row > l.cuffRows && row < l.sleeveUnderarmRow)
      add("elbow", Field::EaseElbow, g.sizes.finished(Field::Elbow),
          (widthAt(*sleeve, row) - seams) * w, 2 * w);
  }
  add("sleeveLength", Field::SleeveLength, g.sleeve.length, (l.sleeveUnderarmRow - 1) * h, h);
  if (k.capKnitted) {
    add("capHeight", Field::CapHeight, g.cap.height, k.cap.front.rows.value() * h, h);
    add("crown", Field::CrownWidth, g.sizes[Field::CrownWidth],
        2 * crownHalfStitches(k.cap.front.crown, Stitches(l.selvedge)) * w, w);
  }
  return out;
}

} // namespace scye
