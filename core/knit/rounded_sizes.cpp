#include "knit/rounded_sizes.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// Stitches above a sleeve's cuff.
Stitches aboveCuff(const KnitPiece& sleeve) {
  Stitches stitches = sleeve.castOn();
  for (const Act& a : sleeve.sections.front().acts)
    if (a.kind == ActKind::IncreaseEvenly) stitches += a.stitches;
  return stitches;
}

// Stitches of a row, with those that its rib goes without.
Stitches widthAt(const KnitPiece& piece, Rows row) {
  return piece.rows[std::size_t(row.value())].stitches() + piece.addedAfter(row);
}

// The row in which a place on a side or sleeve seam lies: the seam is drafted up to `end`, and its
// corners are spread over the rows of the piece as they are over its length (lattice.cpp).
Rows rowOf(double y, double end, Rows lastRow) {
  const auto row = [&] { return Rows(int(std::lround(y / end * lastRow.value()))); };
  return end > 0 ? std::clamp(row(), Rows(0), lastRow) : Rows(0);
}

} // namespace

std::vector<Rounded> roundedSizes(const GarmentDraft& g, const KnitGarment& k) {
  const Lattice& l = k.lattice;
  const Bodice& b = g.bodice;
  const StitchSize& size = l.size;
  const double w = size.width, h = size.height;
  const Stitches seams = 2 * l.selvedge;
  const double band = b.halfNeck - 0.5 * g.sizes[Field::NeckWidth]; // lies within the knitted neck
  const bool pullover = !g.sizes.style.jacket();
  std::vector<Rounded> out;
  const auto add = [&](const char* key, Field field, double wanted, double knitted, double grain) {
    // What cannot be had at all is no length below nothing.
    out.push_back({key, field, std::max(wanted, 0.0), std::max(knitted, 0.0), grain});
  };
  add("backWidth", Field::EaseBust, 2 * b.back.halfBust, size.across(l.back.bust() - seams), w);
  if (pullover)
    add("frontWidth", Field::EaseBust, 2 * b.front.halfBust, size.across(l.front.bust() - seams),
        w);
  else
    add("frontHalfWidth", Field::EaseBust, b.front.halfBust,
        (l.front.right - l.selvedge.value()) * w, w);
  const KnitPiece* back = k.piece(PieceId::Back);
  const bool waisted = g.sizes.style.waisted() && b.at.waist >= b.at.fold &&
                       b.at.waist + kWaistEven < b.at.underarm - kUnderarmEven;
  if (back && waisted) {
    const Rows row = rowOf(b.at.waist, b.at.underarm, l.underarmRow - Rows(1));
    add("waist", Field::EaseWaist, g.sizes[Field::BackShare] * g.sizes.finished(Field::Waist),
        size.across(widthAt(*back, row) - seams), 2 * w);
  }
  add("crossBack", Field::CrossBack, 2 * b.back.halfCross,
      size.across(l.back.bust() - 2 * l.back.away - seams), w);
  add("shoulder", Field::ShoulderLength, b.back.halfShoulder - b.halfNeck,
      size.across(l.back.shoulder - l.selvedge - l.pickUp), w);
  add("hemToUnderarm", Field::HemToUnderarm, b.at.underarm - b.at.fold,
      size.up(l.underarmRow - std::max(l.foldRow, Rows(1))), h);
  if (g.bodice.bust.depth > 0 && l.front.longer > Rows(0))
    add("bustDepth", Field::BustDepth, g.bodice.bust.depth, size.up(l.front.longer), h);
  if (const KnitPiece* front = k.piece(pullover ? PieceId::Front : PieceId::RightFront))
    add("neckDrop", Field::FrontNeckDrop, g.sizes[Field::FrontNeckDrop],
        size.up(l.neckTop + l.front.longer - front->neckRow) - band, h);
  if (back && g.design.has(Field::BackNeckDrop) && !g.sizes.style.straightBackNeck())
    add("backNeckDrop", Field::BackNeckDrop, g.sizes[Field::BackNeckDrop],
        size.up(l.neckTop - back->neckRow), h);
  if (g.design.has(Field::NeckWidth))
    add("neckWidth", Field::NeckWidth, g.sizes[Field::NeckWidth],
        size.across(l.back.neck(true) + 2 * l.pickUp) - 2 * band, w);
  if (g.design.has(Field::CrossFront)) {
    // Of a jacket both fronts, as they lie closed.
    const double knitted = pullover ? (l.front.bust() - 2 * l.front.away - seams).value()
                                    : 2 * (l.front.right - (l.front.away + l.selvedge).value());
    // Of two fronts each is rounded for itself.
    add("crossFront", Field::CrossFront, 2 * b.front.halfCross, knitted * w, pullover ? w : 2 * w);
  }
  if (g.design.has(Field::UnderarmBack))
    add("underarmBack", Field::UnderarmBack, g.sizes[Field::UnderarmBack],
        size.across(l.back.underarm), w);
  if (g.design.has(Field::UnderarmFront))
    add("underarmFront", Field::UnderarmFront, g.sizes[Field::UnderarmFront],
        size.across(l.front.underarm), w);
  add("armholeDepth", Field::EaseArmholeDepth, b.back.depth, size.up(l.armholeRows()), h);
  add("upperArm", Field::EaseUpperArm, 2 * g.sleeve.halfWidth, size.across(l.sleeveWidth - seams),
      w);
  if (const KnitPiece* sleeve = k.piece(PieceId::Sleeve)) {
    const bool spread = l.cuffIncreases > Stitches(0);
    const SleeveTraits& line = g.sizes.style.sleeve();
    add("cuff", line.ownCuff ? Field::CuffGirth : Field::EaseWrist, 2 * g.sleeve.halfCuff,
        size.across((spread ? sleeve->castOn() : aboveCuff(*sleeve)) - seams),
        spread ? std::max(1.0, 0.5 * l.rib.multiple) * w : w);
    if (spread)
      add("fullness", Field::FullGirth, 2 * g.sleeve.halfFull,
          size.across(aboveCuff(*sleeve) - seams), w);
    const double elbowY = g.sleeve.length - 0.5 * g.sizes.finished(Field::SleeveToUnderarm);
    const Rows row = rowOf(elbowY, g.sleeve.length, l.sleeveUnderarmRow - Rows(1));
    if (line.atElbow && row > l.cuffRows && row < l.sleeveUnderarmRow)
      add("elbow", Field::EaseElbow, g.sizes.finished(Field::Elbow),
          size.across(widthAt(*sleeve, row) - seams), 2 * w);
  }
  add("sleeveLength", Field::SleeveLength, g.sleeve.length, size.up(l.sleeveUnderarmRow - Rows(1)),
      h);
  if (k.capKnitted) {
    add("capHeight", Field::CapHeight, g.cap.height, size.up(k.cap.front.rows), h);
    add("crown", Field::CrownWidth, g.sizes[Field::CrownWidth],
        2 * crownHalfStitches(k.cap.front.crown, l.selvedge) * w, w);
  }
  return out;
}

} // namespace scye
