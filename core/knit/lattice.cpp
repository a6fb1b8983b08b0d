#include "knit/lattice.h"

#include "knit/acts.h"
#include "shaping/corridor.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// The count nearest to `wanted` that is a whole number of repeats and the extra stitches, with
// `beside` stitches outside of the pattern.
int inPattern(double wanted, int beside, const Sizes& s) {
  const int multiple = int(s[Field::PatternMultiple]), extra = int(s[Field::PatternExtra]);
  const int repeats = std::max(1, int(std::lround((wanted - beside - extra) / multiple)));
  return repeats * multiple + extra + beside;
}

// Offsets of a seam's corners from its upper end, and their rows. `end`: where the seam's upper end
// came to lie, in stitches without selvedge; the corners are rounded to where they are drafted, not
// to the end, unless the pattern has moved it.
std::vector<SeamPlace> placesOf(const Path& seam, const StitchSize& size, int lastRow, double end,
                                const Sizes& s) {
  std::vector<SeamPlace> places;
  const double endX = seam.end().x(), endY = seam.end().y();
  const double shift = s[Field::PatternMultiple] > 1 ? 0 : endX / size.width - end;
  const auto add = [&](const Vec2& p) {
    const int row = endY > 0 ? int(std::lround(p.y() / endY * lastRow)) : 0;
    const double out = p.x() == endX ? 0 : (p.x() - endX) / size.width + shift;
    places.push_back({std::clamp(row, 0, lastRow), int(std::lround(out))});
  };
  add(seam.start());
  for (const Cubic& c : seam.segments())
    add(c.end());
  return places;
}

struct Widths {
  const StitchSize& size;
  int selvedge;
  [[nodiscard]] double stitches(double cm) const { return cm / size.width; }
  // Of a piece that is symmetric about x = 0, with a selvedge at each side.
  [[nodiscard]] double across(double halfCm) const { return 2 * (stitches(halfCm) + selvedge); }
};

BodiceLattice wholeCounts(const ArmholeShape& a, const Sizes& s, const Widths& w) {
  BodiceLattice b;
  b.drafted = a;
  const int bust = inPattern(w.across(a.halfBust), 2 * w.selvedge, s);
  b.right = 0.5 * bust, b.left = -b.right;
  const int narrow = nearestOfParity(w.across(a.halfCross), bust);
  const int top = nearestOfParity(w.across(a.halfShoulder), bust);
  b.grown = std::max(0, (top - narrow) / 2);
  b.away = std::max(0, (bust - std::min(narrow, top)) / 2);
  return b;
}

// Of a band that is knitted on, from the front edge to where neck and pattern begin.
int bandStitches(double inner, double edge) {
  return std::max(0, int(std::lround(inner - edge)));
}

// A jacket front: its front edge stands where the band wants it, its other edge a whole number of
// stitches further out. Written for the left front (front edge on the left).
BodiceLattice halfFront(const Bodice& drafted, const Sizes& s, const Widths& w, bool pickedUp,
                        int pickUp) {
  BodiceLattice b;
  b.drafted = drafted.front;
  const double edge = w.stitches(drafted.openingX) - (pickedUp ? pickUp : 0);
  b.left = std::round(2 * edge) / 2;
  // The pattern lies between the selvedge and what the front edge is finished with: the stitch that
  // is picked up, or the band.
  const int beside =
      w.selvedge + (pickedUp ? pickUp : bandStitches(w.stitches(drafted.bandInner), b.left));
  const int bust = inPattern(w.stitches(b.drafted.halfBust) + w.selvedge - edge, beside, s);
  b.right = b.left + bust;
  const int narrow = int(std::lround(w.stitches(b.drafted.halfCross) + w.selvedge - b.left));
  const int top = int(std::lround(w.stitches(b.drafted.halfShoulder) + w.selvedge - b.left));
  b.grown = std::max(0, top - narrow);
  b.away = std::max(0, bust - std::min(narrow, top));
  return b;
}

void shoulders(Lattice& l, const GarmentDraft& g) {
  const double drop = g.sizes[Field::ShoulderDrop];
  const double seam = g.bodice.back.halfShoulder - g.bodice.halfNeck;
  const int wanted = int(std::lround(seam / l.size.width)) + l.selvedge + l.pickUp;
  const auto room = [](const BodiceLattice& b, bool whole) {
    const int top = b.bust() - (whole ? 2 : 1) * (b.away - b.grown);
    return whole ? (top - 1) / 2 : top - 1;
  };
  const bool pullover = !g.sizes.style.jacket();
  const int stitches =
      std::clamp(wanted, 1, std::max(1, std::min(room(l.back, true), room(l.front, pullover))));
  l.back.shoulder = l.front.shoulder = stitches;
  l.shoulderSteps = std::clamp(int(std::lround(drop / (2 * l.size.height))), 1, stitches);
  // Short rows end with one row over all the stitches before they are bound off together.
  l.neckTop = l.shoulderRow + 2 * l.shoulderSteps + (l.shoulderShortRows ? 1 : 0);
}

// The wedge over the bust: pairs of rows, evenly stepped in from the side. A whole front has one at
// each side, a half front all its width but the band.
void bustRows(Lattice& l, const BustWedge& wedge, bool wholeFront) {
  BodiceLattice& f = l.front;
  const int most = (wholeFront ? f.bust() / 2 : f.bust() - l.band) - 2;
  const int reach = std::min(int(std::lround(wedge.reach / l.size.width)), most);
  const int pairs = std::min(nearestEven(wedge.depth / l.size.height) / 2, reach);
  f.bustRow = nearestEven(wedge.low / l.size.height) + 1;
  // The seam is shaped below it: a row that is turned early has no room for an increase at its end.
  int outward = 0;
  for (const Act& a : seamActs(f.side, l.hemRows, EdgeSide::Right, Shapes::Side, outward))
    f.bustRow = std::max(f.bustRow, a.row + 2);
  if (pairs <= 0 || f.bustRow <= l.hemRows || f.bustRow >= l.underarmRow) {
    f.bustRow = -1;
    return;
  }
  f.longer = 2 * pairs;
  for (const Run& run : shoulderSteps(Stitches(reach), pairs))
    f.bustTurns.insert(f.bustTurns.end(), std::size_t(run.times), run.stitches.value());
}

constexpr int kGarterRows = 4; // that keep a plain edge flat (common practice)

void edges(Lattice& l, const GarmentDraft& g) {
  const GarmentStyle& style = g.sizes.style;
  l.rib = ribOf(g.sizes, g.design);
  l.ribChange = style.ribChange == RibChange::Evenly;
  l.plainGarter = style.hemMade == HemMade::Plain && style.plainEdge == PlainEdge::Garter;
  if (l.plainGarter && l.underarmRow > kGarterRows + 2) l.hemRows = kGarterRows;
}

void sleeveRows(Lattice& l, const GarmentDraft& g) {
  const SleeveBody& sl = g.sleeve;
  l.sleeveUnderarmRow = std::max(2, nearestEven(sl.length / l.size.height)) + 1;
  l.cuffRows = std::min(nearestEven(sl.cuff / l.size.height), l.sleeveUnderarmRow - 1);
  if (l.cuffRows == 0 && l.plainGarter && l.sleeveUnderarmRow > kGarterRows + 2)
    l.cuffRows = kGarterRows, l.plainGarterCuff = true;
}

// Stitches of a sleeve in pattern where it is whole: at the cast-on, of a full sleeve above its
// cuff.
int patternedCuff(const Lattice& l, const GarmentDraft& g) {
  const Widths w{l.size, l.selvedge};
  return inPattern(w.across(g.sleeve.halfFull), 2 * w.selvedge, g.sizes);
}

// How far a piece's cross and shoulder widths would be off the drafted ones, in stitches, if its
// armholes took away `away` and added `grown`.
double widthsOff(const Lattice& l, const BodiceLattice& b, bool whole, int away, int grown) {
  const auto off = [&](double half, int taken) {
    const double drafted = half / l.size.width + l.selvedge, knitted = b.right - taken;
    return (whole ? 2 : 1) * std::abs(knitted - drafted);
  };
  return std::max(off(b.drafted.halfCross, away), off(b.drafted.halfShoulder, away - grown));
}

// One schedule for back and front wherever their curves lie within a stitch: then both take away
// the same, if that leaves every width within a stitch of the drafted one.
void shareArmhole(Lattice& l, bool wholeFront) {
  BodiceLattice &back = l.back, &front = l.front;
  if (back.underarm != front.underarm) return;
  const auto bands = [&](const BodiceLattice& b) {
    return stepBands(armholeCurve(armholeOnStitches(l, b)), l.size, (l.armholeRows() + 1) / 2);
  };
  const std::vector<StepBand> ofBack = bands(back), ofFront = bands(front);
  for (std::size_t i = 0; i < ofBack.size(); ++i)
    if (std::max(std::abs(ofBack[i].low - ofFront[i].low),
                 std::abs(ofBack[i].high - ofFront[i].high)) >= 1)
      return;
  double least = 1 + 1e-9;
  std::pair<int, int> best{-1, 0};
  for (const auto& [away, grown] :
       {std::pair(back.away, back.grown), std::pair(front.away, front.grown)}) {
    const double off = back.away == front.away && back.grown == front.grown
                           ? 0
                           : std::max(widthsOff(l, back, true, away, grown),
                                      widthsOff(l, front, wholeFront, away, grown));
    if (off < least) least = off, best = {away, grown};
  }
  if (best.first < 0) return;
  back.away = front.away = best.first, back.grown = front.grown = best.second;
  l.oneArmhole = true;
}

} // namespace

void moveUnderarm(Lattice& l, int by) {
  for (BodiceLattice* b : {&l.back, &l.front}) {
    // The bind-off is part of what the armhole takes away.
    b->underarm = std::clamp(b->underarm + by, 0, std::max(0, b->away));
    b->taken = std::max(0, b->away - b->underarm);
  }
}

std::vector<Stitches> sleeveWidths(const Lattice& l, const GarmentDraft& g) {
  constexpr int kLeast = 4;
  const Widths w{l.size, l.selvedge};
  const double wanted = w.across(g.sleeve.halfWidth);
  // The pattern is whole at the cuff; the upper arm keeps the parity.
  if (g.sizes[Field::PatternMultiple] > 1)
    return {Stitches(std::max(kLeast, nearestOfParity(wanted, patternedCuff(l, g))))};
  const int nearest = std::max(kLeast, int(std::lround(wanted)));
  return {Stitches(nearest),
          Stitches(wanted > nearest ? nearest + 1 : std::max(kLeast + 1, nearest - 1))};
}

void setSleeveWidth(Lattice& l, const GarmentDraft& g, Stitches width) {
  const SleeveBody& sl = g.sleeve;
  const Widths w{l.size, l.selvedge};
  SleeveBody above = sl; // of a full sleeve the seam begins above the cuff
  above.halfCuff = sl.halfFull;
  l.sleeveWidth = width.value();
  l.sleeveSeam = placesOf(sleeveSeam(g.sizes, above), l.size, l.sleeveUnderarmRow - 1,
                          0.5 * l.sleeveWidth - w.selvedge, g.sizes);
  if (g.sizes[Field::PatternMultiple] > 1) {
    const int off = (patternedCuff(l, g) - l.sleeveWidth) / 2 - l.sleeveSeam.front().outward;
    for (SeamPlace& p : l.sleeveSeam)
      if (p.outward == l.sleeveSeam.front().outward && &p != &l.sleeveSeam.front())
        p.outward += off;
    l.sleeveSeam.front().outward += off;
  }
  l.cuffSpread = 0;
  if (sl.halfFull <= sl.halfCuff) return;
  const int full = l.sleeveWidth + 2 * l.sleeveSeam.front().outward;
  const int cuff = std::max(kLeastCuff - full % 2, nearestOfParity(w.across(sl.halfCuff), full));
  l.cuffSpread = std::max(0, full - cuff);
}

ArmholeShape armholeOnStitches(const Lattice& l, const BodiceLattice& counts, CrossWidths cross) {
  ArmholeShape a = counts.drafted;
  a.halfBust = (counts.right - l.selvedge) * l.size.width;
  a.underarm = counts.underarm * l.size.width;
  if (cross == CrossWidths::Whole) {
    a.halfCross = a.halfBust - counts.away * l.size.width;
    a.halfShoulder = a.halfCross + counts.grown * l.size.width;
  }
  return a;
}

int nearestEven(double x) {
  return std::max(0, 2 * int(std::lround(0.5 * x)));
}

int nearestOfParity(double x, int like) {
  const int odd = std::abs(like) % 2;
  return 2 * int(std::lround(0.5 * (x - odd))) + odd;
}

int BodiceLattice::bust() const {
  return int(std::lround(right - left));
}

int BodiceLattice::neck(bool whole) const {
  return bust() - (whole ? 2 : 1) * (away - grown + shoulder);
}

Lattice latticeOf(const GarmentDraft& g) {
  Lattice l;
  l.size = g.sizes.stitch;
  l.selvedge = int(g.sizes[Field::Selvedge]);
  const Widths w{l.size, l.selvedge};
  const BodiceHeights& at = g.bodice.at;
  const double h = l.size.height;
  const int facing = at.fold > 0 ? std::max(2, nearestEven(at.fold / h)) : 0;
  l.underarmRow = facing + std::max(2, nearestEven((at.underarm - at.fold) / h)) + 1;
  l.hemRows = std::min(nearestEven(at.hem / h), l.underarmRow - 1);
  if (facing > 0 && facing + 2 < l.underarmRow) {
    l.foldRow = facing + 1;
    l.hemRows = facing + 2;
  }
  edges(l, g);
  l.threeNeedles = g.sizes.style.threeNeedles();
  l.shoulderShortRows = g.sizes.style.shoulderWork == ShoulderWork::ShortRows;
  const double depthRows = g.bodice.back.depth / h;
  l.shoulderRow = l.underarmRow + (l.shoulderShortRows ? std::max(3, nearestOfParity(depthRows, 1))
                                                       : std::max(2, nearestEven(depthRows)));
  const auto stitches = [&](Field f) {
    return std::max(0, int(std::lround(g.sizes[f] / l.size.width)));
  };
  l.back = wholeCounts(g.bodice.back, g.sizes, w);
  const bool pullover = !g.sizes.style.jacket();
  const bool pickedUp = g.sizes.style.bandPickedUp();
  l.front = pullover ? wholeCounts(g.bodice.front, g.sizes, w)
                     : halfFront(g.bodice, g.sizes, w, pickedUp, l.pickUp);
  l.back.underarm = stitches(Field::UnderarmBack),
  l.front.underarm = stitches(Field::UnderarmFront);
  shareArmhole(l, pullover);
  moveUnderarm(l, 0);
  if (g.sizes.style.bandKnittedOn())
    l.band = bandStitches(g.bodice.bandInner / l.size.width, l.front.left);
  l.back.side =
      placesOf(g.bodice.backSide, l.size, l.underarmRow - 1, l.back.right - l.selvedge, g.sizes);
  l.front.side =
      placesOf(g.bodice.frontSide, l.size, l.underarmRow - 1, l.front.right - l.selvedge, g.sizes);
  if (g.bodice.bust.depth > 0) bustRows(l, g.bodice.bust, pullover);
  shoulders(l, g);
  sleeveRows(l, g);
  setSleeveWidth(l, g, sleeveWidths(l, g).front());
  return l;
}

} // namespace scye
