#include "knit/lattice.h"

#include "knit/acts.h"
#include "shaping/corridor.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <tuple>

namespace scye {
namespace {

// The count nearest to `wanted` that is a whole number of repeats and the extra stitches, with
// `beside` stitches outside of the pattern.
Stitches inPattern(double wanted, Stitches beside, const Sizes& s) {
  const int multiple = int(s[Field::PatternMultiple]), extra = int(s[Field::PatternExtra]);
  const int repeats = std::max(1, int(std::lround((wanted - beside.value() - extra) / multiple)));
  return Stitches(repeats * multiple + extra) + beside;
}

// Offsets of a seam's corners from its upper end, and their rows. `end`: where the seam's upper end
// came to lie, in stitches without selvedge; the corners are rounded to where they are drafted, not
// to the end, unless the pattern has moved it.
std::vector<SeamPlace> placesOf(const Path& seam, const StitchSize& size, Rows lastRow, double end,
                                const Sizes& s) {
  std::vector<SeamPlace> places;
  const double endX = seam.end().x(), endY = seam.end().y();
  const double shift = s[Field::PatternMultiple] > 1 ? 0 : endX / size.width - end;
  const auto add = [&](const Vec2& p) {
    const Rows row(endY > 0 ? int(std::lround(p.y() / endY * lastRow.value())) : 0);
    const double out = p.x() == endX ? 0 : (p.x() - endX) / size.width + shift;
    places.push_back({std::clamp(row, Rows(0), lastRow), Stitches(int(std::lround(out)))});
  };
  add(seam.start());
  for (const Cubic& c : seam.segments())
    add(c.end());
  return places;
}

struct Widths {
  const StitchSize& size;
  Stitches selvedge;
  [[nodiscard]] double stitches(double cm) const { return cm / size.width; }
  // Of a piece that is symmetric about x = 0, with a selvedge at each side.
  [[nodiscard]] double across(double halfCm) const {
    return 2 * (stitches(halfCm) + selvedge.value());
  }
};

BodiceLattice wholeCounts(const ArmholeShape& a, const Sizes& s, const Widths& w) {
  BodiceLattice b;
  b.drafted = a;
  const Stitches bust = inPattern(w.across(a.halfBust), 2 * w.selvedge, s);
  b.right = 0.5 * bust.value(), b.left = -b.right;
  const Stitches narrow = nearestOfParity(w.across(a.halfCross), bust);
  const Stitches top = nearestOfParity(w.across(a.halfShoulder), bust);
  b.grown = std::max(Stitches(0), (top - narrow) / 2);
  b.away = std::max(Stitches(0), (bust - std::min(narrow, top)) / 2);
  return b;
}

// Of a band that is knitted on, from the front edge to where neck and pattern begin.
Stitches bandStitches(double inner, double edge) {
  return Stitches(std::max(0, int(std::lround(inner - edge))));
}

// A jacket front: its front edge stands where the band wants it, its other edge a whole number of
// stitches further out. Written for the left front (front edge on the left).
BodiceLattice halfFront(const Bodice& drafted, const Sizes& s, const Widths& w, bool pickedUp,
                        Stitches pickUp) {
  BodiceLattice b;
  b.drafted = drafted.front;
  const double edge = w.stitches(drafted.openingX) - (pickedUp ? pickUp.value() : 0);
  b.left = std::round(2 * edge) / 2;
  // The pattern lies between the selvedge and what the front edge is finished with: the stitch that
  // is picked up, or the band.
  const Stitches beside =
      w.selvedge + (pickedUp ? pickUp : bandStitches(w.stitches(drafted.bandInner), b.left));
  const Stitches bust =
      inPattern(w.stitches(b.drafted.halfBust) + w.selvedge.value() - edge, beside, s);
  b.right = b.left + bust.value();
  const auto fromEdge = [&](double half) {
    return Stitches(int(std::lround(w.stitches(half) + w.selvedge.value() - b.left)));
  };
  const Stitches narrow = fromEdge(b.drafted.halfCross), top = fromEdge(b.drafted.halfShoulder);
  b.grown = std::max(Stitches(0), top - narrow);
  b.away = std::max(Stitches(0), bust - std::min(narrow, top));
  return b;
}

void shoulders(Lattice& l, const GarmentDraft& g) {
  const double drop = g.sizes[Field::ShoulderDrop];
  const double seam = g.bodice.back.halfShoulder - g.bodice.halfNeck;
  const Stitches wanted = Stitches(int(std::lround(seam / l.size.width))) + l.selvedge + l.pickUp;
  const auto room = [](const BodiceLattice& b, bool whole) {
    const Stitches top = b.bust() - (whole ? 2 : 1) * (b.away - b.grown) - Stitches(1);
    return whole ? top / 2 : top;
  };
  const bool pullover = !g.sizes.style.jacket();
  const Stitches stitches =
      std::clamp(wanted, Stitches(1),
                 std::max(Stitches(1), std::min(room(l.back, true), room(l.front, pullover))));
  l.back.shoulder = l.front.shoulder = stitches;
  l.shoulderSteps = std::clamp(int(std::lround(drop / (2 * l.size.height))), 1, stitches.value());
  // Short rows end with one row over all the stitches before they are bound off together.
  l.neckTop = l.shoulderRow + Rows(2 * l.shoulderSteps + (l.shoulderShortRows ? 1 : 0));
}

// The wedge over the bust: pairs of rows, evenly stepped in from the side. A whole front has one at
// each side, a half front all its width but the band.
void bustRows(Lattice& l, const BustWedge& wedge, bool wholeFront) {
  BodiceLattice& f = l.front;
  const Stitches most = (wholeFront ? f.bust() / 2 : f.bust() - l.band) - Stitches(2);
  const Stitches reach = std::min(Stitches(int(std::lround(wedge.reach / l.size.width))), most);
  const int pairs = std::min(nearestEven(wedge.depth / l.size.height).value() / 2, reach.value());
  f.bustRow = nearestEven(wedge.low / l.size.height) + Rows(1);
  // The seam is shaped below it: a row that is turned early has no room for an increase at its end.
  Stitches outward;
  for (const Act& a : seamActs(f.side, l.hemRows, EdgeSide::Right, Shapes::Side, outward))
    f.bustRow = std::max(f.bustRow, a.row + Rows(2));
  if (pairs <= 0 || f.bustRow <= l.hemRows || f.bustRow >= l.underarmRow) {
    f.bustRow = Rows(-1);
    return;
  }
  f.longer = Rows(2 * pairs);
  for (const Run& run : shoulderSteps(reach, pairs))
    f.bustTurns.insert(f.bustTurns.end(), std::size_t(run.times), run.stitches);
}

Rows nearestOdd(double rows) {
  return Rows(2 * int(std::lround(0.5 * (rows - 1))) + 1);
}

constexpr Rows kGarterRows{4}; // that keep a plain edge flat (common practice)

void edges(Lattice& l, const GarmentDraft& g) {
  const GarmentStyle& style = g.sizes.style;
  l.rib = ribOf(g.sizes, g.design);
  l.ribChange = style.ribChange == RibChange::Evenly;
  l.plainGarter = style.hemMade == HemMade::Plain && style.plainEdge == PlainEdge::Garter;
  if (l.plainGarter && l.underarmRow > kGarterRows + Rows(2)) l.hemRows = kGarterRows;
}

void sleeveRows(Lattice& l, const GarmentDraft& g) {
  const SleeveBody& sl = g.sleeve;
  l.sleeveUnderarmRow = std::max(Rows(2), nearestEven(sl.length / l.size.height)) + Rows(1);
  l.cuffRows = std::min(nearestEven(sl.cuff / l.size.height), l.sleeveUnderarmRow - Rows(1));
  if (l.cuffRows == Rows(0) && l.plainGarter && l.sleeveUnderarmRow > kGarterRows + Rows(2))
    l.cuffRows = kGarterRows, l.plainGarterCuff = true;
}

// Stitches of a sleeve in pattern where it is whole: at the cast-on, of a full sleeve above its
// cuff.
Stitches patternedCuff(const Lattice& l, const GarmentDraft& g) {
  const Widths w{l.size, l.selvedge};
  return inPattern(w.across(g.sleeve.halfFull), 2 * w.selvedge, g.sizes);
}

// How far a piece's cross and shoulder widths would be off the drafted ones, in stitches, if its
// armholes took away `away` and added `grown`.
double widthsOff(const Lattice& l, const BodiceLattice& b, bool whole, Stitches away,
                 Stitches grown) {
  const auto off = [&](double half, Stitches taken) {
    const double drafted = half / l.size.width + l.selvedge.value();
    const double knitted = b.right - taken.value();
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
    return stepBands(armholeCurve(armholeOnStitches(l, b)), l.size,
                     (l.armholeRows().value() + 1) / 2);
  };
  const std::vector<StepBand> ofBack = bands(back), ofFront = bands(front);
  for (std::size_t i = 0; i < ofBack.size(); ++i)
    if (std::max(std::abs(ofBack[i].low - ofFront[i].low),
                 std::abs(ofBack[i].high - ofFront[i].high)) >= 1)
      return;
  double least = 1 + 1e-9;
  std::optional<std::pair<Stitches, Stitches>> best;
  for (const auto& [away, grown] :
       {std::pair(back.away, back.grown), std::pair(front.away, front.grown)}) {
    const double off = back.away == front.away && back.grown == front.grown
                           ? 0
                           : std::max(widthsOff(l, back, true, away, grown),
                                      widthsOff(l, front, wholeFront, away, grown));
    if (off < least) least = off, best = std::pair(away, grown);
  }
  if (!best) return;
  std::tie(back.away, back.grown) = *best, std::tie(front.away, front.grown) = *best;
  l.oneArmhole = true;
}

} // namespace

void moveUnderarm(Lattice& l, Stitches by) {
  for (BodiceLattice* b : {&l.back, &l.front}) {
    // The bind-off is part of what the armhole takes away.
    b->underarm = std::clamp(b->underarm + by, Stitches(0), std::max(Stitches(0), b->away));
    b->taken = std::max(Stitches(0), b->away - b->underarm);
  }
}

std::vector<Stitches> sleeveWidths(const Lattice& l, const GarmentDraft& g) {
  constexpr Stitches kLeast{4};
  const Widths w{l.size, l.selvedge};
  const double wanted = w.across(g.sleeve.halfWidth);
  // The pattern is whole at the cuff; the upper arm keeps the parity.
  if (g.sizes[Field::PatternMultiple] > 1)
    return {std::max(kLeast, nearestOfParity(wanted, patternedCuff(l, g)))};
  const Stitches nearest = std::max(kLeast, Stitches(int(std::lround(wanted)))), one{1};
  return {nearest,
          wanted > nearest.value() ? nearest + one : std::max(kLeast + one, nearest - one)};
}

void setSleeveWidth(Lattice& l, const GarmentDraft& g, Stitches width) {
  const SleeveBody& sl = g.sleeve;
  const Widths w{l.size, l.selvedge};
  SleeveBody above = sl; // of a full sleeve the seam begins above the cuff
  above.halfCuff = sl.halfFull;
  l.sleeveWidth = width;
  l.sleeveSeam = placesOf(sleeveSeam(g.sizes, above), l.size, l.sleeveUnderarmRow - Rows(1),
                          0.5 * l.sleeveWidth.value() - w.selvedge.value(), g.sizes);
  if (g.sizes[Field::PatternMultiple] > 1) {
    const Stitches off = (patternedCuff(l, g) - l.sleeveWidth) / 2 - l.sleeveSeam.front().outward;
    for (SeamPlace& p : l.sleeveSeam)
      if (p.outward == l.sleeveSeam.front().outward && &p != &l.sleeveSeam.front())
        p.outward += off;
    l.sleeveSeam.front().outward += off;
  }
  l.cuffIncreases = Stitches(0);
  if (sl.halfFull <= sl.halfCuff) return;
  const Stitches full = l.sleeveWidth + 2 * l.sleeveSeam.front().outward;
  const Stitches cuff =
      std::max(kLeastCuff - Stitches(full % 2), nearestOfParity(w.across(sl.halfCuff), full));
  l.cuffIncreases = std::max(Stitches(0), full - cuff);
}

ArmholeShape armholeOnStitches(const Lattice& l, const BodiceLattice& counts, CrossWidths cross) {
  ArmholeShape a = counts.drafted;
  a.halfBust = (counts.right - l.selvedge.value()) * l.size.width;
  a.underarm = l.size.across(counts.underarm);
  if (cross == CrossWidths::Whole) {
    a.halfCross = a.halfBust - l.size.across(counts.away);
    a.halfShoulder = a.halfCross + l.size.across(counts.grown);
  }
  return a;
}

Rows nearestEven(double rows) {
  return Rows(std::max(0, 2 * int(std::lround(0.5 * rows))));
}

Stitches nearestOfParity(double stitches, Stitches like) {
  const int odd = abs(like) % 2;
  return Stitches(2 * int(std::lround(0.5 * (stitches - odd))) + odd);
}

Stitches BodiceLattice::bust() const {
  return Stitches(int(std::lround(right - left)));
}

Stitches BodiceLattice::neck(bool whole) const {
  return bust() - (whole ? 2 : 1) * (away - grown + shoulder);
}

Lattice latticeOf(const GarmentDraft& g) {
  Lattice l;
  l.size = g.sizes.stitch;
  l.selvedge = Stitches(int(g.sizes[Field::Selvedge]));
  const Widths w{l.size, l.selvedge};
  const BodiceHeights& at = g.bodice.at;
  const double h = l.size.height;
  const Rows two(2), one(1);
  const Rows facing = at.fold > 0 ? std::max(two, nearestEven(at.fold / h)) : Rows(0);
  l.underarmRow = facing + std::max(two, nearestEven((at.underarm - at.fold) / h)) + one;
  l.hemRows = std::min(nearestEven(at.hem / h), l.underarmRow - one);
  if (facing > Rows(0) && facing + two < l.underarmRow) {
    l.foldRow = facing + one;
    l.hemRows = facing + two;
  }
  edges(l, g);
  l.threeNeedles = g.sizes.style.threeNeedles();
  l.shoulderShortRows = g.sizes.style.shoulderWork == ShoulderWork::ShortRows;
  const double depthRows = g.bodice.back.depth / h;
  l.shoulderRow = l.underarmRow + (l.shoulderShortRows ? std::max(Rows(3), nearestOdd(depthRows))
                                                       : std::max(two, nearestEven(depthRows)));
  const auto stitches = [&](Field f) {
    return Stitches(std::max(0, int(std::lround(g.sizes[f] / l.size.width))));
  };
  l.back = wholeCounts(g.bodice.back, g.sizes, w);
  const bool pullover = !g.sizes.style.jacket();
  const bool pickedUp = g.sizes.style.bandPickedUp();
  l.front = pullover ? wholeCounts(g.bodice.front, g.sizes, w)
                     : halfFront(g.bodice, g.sizes, w, pickedUp, l.pickUp);
  l.back.underarm = stitches(Field::UnderarmBack),
  l.front.underarm = stitches(Field::UnderarmFront);
  shareArmhole(l, pullover);
  moveUnderarm(l, Stitches(0));
  if (g.sizes.style.bandKnittedOn())
    l.band = bandStitches(g.bodice.bandInner / l.size.width, l.front.left);
  const auto side = [&](const Path& seam, const BodiceLattice& counts) {
    return placesOf(seam, l.size, l.underarmRow - one, counts.right - l.selvedge.value(), g.sizes);
  };
  l.back.side = side(g.bodice.backSide, l.back);
  l.front.side = side(g.bodice.frontSide, l.front);
  if (g.bodice.bust.depth > 0) bustRows(l, g.bodice.bust, pullover);
  shoulders(l, g);
  sleeveRows(l, g);
  setSleeveWidth(l, g, sleeveWidths(l, g).front());
  return l;
}

} // namespace scye
