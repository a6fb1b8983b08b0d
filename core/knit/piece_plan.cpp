#include "knit/piece_plan.h"

#include "knit/acts.h"
#include "knit/buttonholes.h"
#include "knit/neck_plan.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// Groups of stitches left beyond the turns at one edge, at the end of every second row from `first`
// on; then all taken up in the row after next.
Acts shortRows(const std::vector<Stitches>& groups, Rows first, EdgeSide side, Shapes shapes) {
  Acts acts;
  Rows row = first;
  Stitches waiting;
  for (const Stitches k : groups) {
    acts.push_back({row, ActKind::Wait, side, k, shapes, waiting});
    waiting += k, row += Rows(2);
  }
  if (waiting > Stitches(0)) acts.push_back({row, ActKind::TakeUp, side, waiting, shapes});
  return acts;
}

// Bound off in steps, or the steps left waiting but the last and all bound off together.
Acts shoulderActs(const Lattice& l, const BodiceLattice& counts, EdgeSide side) {
  Acts acts;
  const Rows first = l.shoulderRow + counts.longer + Rows(side == EdgeSide::Left ? 1 : 0);
  std::vector<Stitches> groups;
  for (const Run& run : shoulderSteps(counts.shoulder, l.shoulderSteps))
    groups.insert(groups.end(), std::size_t(run.times), run.stitches);
  if (!l.shoulderShortRows) {
    Rows row = first;
    for (const Stitches k : groups) {
      acts.push_back({row, ActKind::BindOff, side, k, Shapes::Shoulder});
      row += Rows(2);
    }
    return acts;
  }
  groups.pop_back();
  acts = shortRows(groups, first, side, Shapes::Shoulder);
  acts.push_back({first + Rows(2 * int(groups.size()) + 1),
                  l.threeNeedles ? ActKind::Hold : ActKind::BindOff, side, counts.shoulder,
                  Shapes::Shoulder});
  return acts;
}

// What is worked along one outer edge of a bodice piece, from cast-on to shoulder.
Acts outerEdge(const Lattice& l, const BodiceLattice& counts, const Schedule& armhole,
               EdgeSide side, Stitches& castOnOutward) {
  Acts acts = seamActs(counts.side, l.hemRows, side, Shapes::Side, castOnOutward);
  append(acts, shortRows(counts.bustTurns, counts.bustRow + Rows(side == EdgeSide::Right ? 1 : 0),
                         side, Shapes::Bust));
  append(acts, edgeActs(knittedEdge(armhole, side, l.underarmRow + counts.longer), side,
                        Shapes::Armhole));
  append(acts, shoulderActs(l, counts, side));
  return acts;
}

// An edge is cast on with as many stitches as its rib repeats over; the others are added evenly in
// the first right-side row above it that is free.
void ribChange(const Lattice& l, Acts& acts, RibSides sides, Stitches castOn, Rows ribRows,
               Rows below) {
  const Stitches none;
  if (!l.ribChange || ribRows <= Rows(0) || ribRows % 2 != 0) return;
  const Stitches fits = ribCastOn(l.rib, ribEnds(l.rib, sides, l.selvedge), castOn);
  const Stitches more = fits > none ? castOn - fits : none;
  if (more == none) return;
  constexpr Rows kTried{8};
  for (Rows row = ribRows + Rows(1); row < std::min(below, ribRows + kTried); row += Rows(2)) {
    const bool busy = std::any_of(acts.begin(), acts.end(), [&](const Act& a) {
      return a.row == row ||
             (a.row < row && (a.kind == ActKind::Wait || a.kind == ActKind::TakeUp));
    });
    if (busy) continue;
    const EdgeSide side = sides == RibSides::RightFree ? EdgeSide::Left : EdgeSide::Right;
    acts.push_back({row, ActKind::IncreaseEvenly, side, more, Shapes::Hem,
                    Stitches(sides == RibSides::BothSewn ? 0 : 1)});
    return;
  }
}

// Rows of a body's hem that are worked in rib: a facing is as wide as what it lies under.
Rows ribbedHem(const Lattice& l) {
  return l.foldRow > Rows(0) ? Rows(0) : l.hemRows;
}

KnitPiece started(const Lattice& l, PieceId id, const BodiceLattice& counts) {
  KnitPiece piece;
  piece.id = id;
  piece.hemRows = l.hemRows;
  piece.foldRow = l.foldRow;
  piece.rib = l.rib, piece.selvedge = l.selvedge;
  piece.edge = l.foldRow > Rows(0)    ? EdgeMade::Faced
               : l.hemRows == Rows(0) ? EdgeMade::Plain
               : l.plainGarter        ? EdgeMade::Garter
                                      : EdgeMade::Ribbed;
  piece.sides = id == PieceId::LeftFront    ? RibSides::LeftFree
                : id == PieceId::RightFront ? RibSides::RightFree
                                            : RibSides::BothSewn;
  if (piece.sides != RibSides::BothSewn) piece.band = l.band;
  piece.underarmRow = l.underarmRow + counts.longer;
  piece.shoulderRow = l.shoulderRow + counts.longer;
  return piece;
}

void finish(KnitPiece& piece) {
  for (Section& s : piece.sections)
    sortActs(s.acts);
  piece.rows = workedRows(piece.sections);
}

// `left`, `right`: its edges where nothing was to be spread above the cast-on.
Section bodySection(Rows last, double left, double right, Acts acts) {
  for (const Act& a : acts) {
    if (a.kind != ActKind::IncreaseEvenly) continue;
    const Stitches atRight = a.addedAtRight();
    right -= atRight.value(), left += (a.stitches - atRight).value();
  }
  Section body{SectionId::Undivided, Rows(0), last, left, right, std::move(acts)};
  body.acts.insert(body.acts.begin(), {Rows(0), ActKind::CastOn, EdgeSide::Right,
                                       Stitches(int(std::lround(right - left))), Shapes::Hem});
  sortActs(body.acts);
  return body;
}

} // namespace

namespace {

// A neck that is straight across, and no slit below it: the piece is knitted in one to its end.
KnitPiece undivided(const Lattice& l, const BodiceLattice& counts, KnitPiece piece, Acts both,
                    Stitches outward) {
  piece.neckRow = l.neckTop + counts.longer - Rows(l.shoulderShortRows ? 1 : 0);
  Stitches close = counts.neck(true);
  if (l.shoulderShortRows) { // shoulders and neck together
    std::erase_if(both, [](const Act& a) {
      return a.shapes == Shapes::Shoulder &&
             (a.kind == ActKind::BindOff || a.kind == ActKind::Hold);
    });
    close += 2 * counts.shoulder;
  }
  ribChange(l, both, RibSides::BothSewn, counts.bust() + 2 * outward, ribbedHem(l), l.underarmRow);
  both.push_back({piece.neckRow, l.threeNeedles ? ActKind::Hold : ActKind::Close,
                  l.shoulderShortRows ? EdgeSide::Left : EdgeSide::Right, close, Shapes::Neck});
  piece.sections.push_back(bodySection(piece.neckRow, counts.left - outward.value(),
                                       counts.right + outward.value(), std::move(both)));
  finish(piece);
  return piece;
}

} // namespace

KnitPiece wholePiece(const BodicePlan& plan, PieceId id, const BodiceLattice& counts,
                     const Schedule& armhole) {
  const Lattice& l = plan.lattice;
  KnitPiece piece = started(l, id, counts);
  Stitches outward;
  const Acts right = outerEdge(l, counts, armhole, EdgeSide::Right, outward);
  const Acts left = outerEdge(l, counts, armhole, EdgeSide::Left, outward);
  const NeckPlan neck = planNeck(plan, id, counts);
  if (neck.splitRow < Rows(0)) {
    Acts both = right;
    append(both, left);
    return undivided(l, counts, std::move(piece), std::move(both), outward);
  }
  piece.splitRow = neck.splitRow, piece.neckRow = neck.row;
  const Rows top = l.neckTop + counts.longer;

  const auto below = [&](const Acts& acts) {
    return between(acts, Rows(0), neck.splitRow - Rows(1));
  };
  Acts both = below(right);
  append(both, below(left));
  ribChange(l, both, RibSides::BothSewn, counts.bust() + 2 * outward, ribbedHem(l),
            std::min(neck.splitRow, l.underarmRow));
  piece.sections.push_back(bodySection(neck.splitRow - Rows(1), counts.left - outward.value(),
                                       counts.right + outward.value(), std::move(both)));
  const RowLine at = workedRows(piece.sections).back();
  const auto waitingAt =
      [&](EdgeSide side) { // shoulder stitches, where the neck begins after the shoulders
        Stitches waiting;
        for (const Act& a : piece.sections.front().acts)
          if (a.side == side && (a.kind == ActKind::Wait || a.kind == ActKind::TakeUp))
            waiting += a.kind == ActKind::Wait ? a.stitches : -a.stitches;
        return waiting;
      };
  const Stitches waitsLeft = waitingAt(EdgeSide::Left);

  const double half = 0.5 * neck.atSplit.value();
  const Rows last(neck.straight ? 1 : 0); // a row more, in which a straight neck is bound off
  Section rightSide{SectionId::Right,
                    neck.splitRow,
                    top - Rows(2) + last,
                    half,
                    at.rightEdge,
                    between(right, neck.splitRow, top),
                    waitingAt(EdgeSide::Right)};
  rightSide.acts.push_back({neck.splitRow, ActKind::Rest, EdgeSide::Left,
                            Stitches(int(std::lround(half - at.leftEdge))), Shapes::Neck,
                            waitsLeft});
  append(rightSide.acts, neck.rightSection);
  Section leftSide{SectionId::Left, neck.splitRow, top - Rows(1) + last,
                   at.leftEdge,     half,          between(left, neck.splitRow, top),
                   waitsLeft};
  leftSide.acts.push_back({neck.splitRow, ActKind::Rejoin, EdgeSide::Right,
                           Stitches(int(std::lround(half - at.leftEdge))), Shapes::Neck,
                           waitsLeft});
  if (neck.atSplit > Stitches(0))
    leftSide.acts.push_back(
        {neck.splitRow, ActKind::BindOff, EdgeSide::Right, neck.atSplit, Shapes::Neck});
  append(leftSide.acts, neck.leftSection);
  piece.sections.push_back(std::move(rightSide));
  piece.sections.push_back(std::move(leftSide));
  finish(piece);
  return piece;
}

KnitPiece jacketFront(const BodicePlan& plan, PieceId id, const Schedule& armhole) {
  const Lattice& l = plan.lattice;
  const BodiceLattice& counts = l.front;
  KnitPiece piece = started(l, id, counts);
  const bool isLeft = id == PieceId::LeftFront;
  Stitches outward;
  Acts acts = outerEdge(l, counts, armhole, isLeft ? EdgeSide::Right : EdgeSide::Left, outward);
  const NeckPlan neck = planNeck(plan, id, counts);
  piece.neckRow = neck.row;
  append(acts, isLeft ? neck.rightSection : neck.leftSection);
  append(acts, buttonholeActs(buttonholes(plan.draft, l, neck.row), id));
  ribChange(l, acts, piece.sides, counts.bust() + outward, ribbedHem(l),
            std::min(neck.row, l.underarmRow));
  const double inner = counts.left, outer = counts.right + outward.value();
  const Rows top = l.neckTop + counts.longer;
  piece.sections.push_back(isLeft ? bodySection(top - Rows(2), inner, outer, std::move(acts))
                                  : bodySection(top - Rows(1), -outer, -inner, std::move(acts)));
  finish(piece);
  return piece;
}

namespace {

// `more` stitches spread over as few rows as it takes, none of which doubles its stitches; all
// even.
std::vector<Stitches> spreadSteps(Stitches stitches, Stitches more) {
  std::vector<Stitches> steps;
  while (more > Stitches(0) && stitches > Stitches(2)) {
    steps.push_back(std::min(more, (stitches - Stitches(1)) / 2 * 2));
    more -= steps.back(), stitches += steps.back();
  }
  return steps;
}

// Stitches of a cuff that a sleeve is gathered into: the nearest that its rib repeats over.
Stitches gatheredCuff(const Lattice& l, Stitches castOn, Stitches above) {
  if (l.cuffRows <= Rows(0) || !l.ribChange) return castOn;
  const Stitches fits = ribCastOn(l.rib, ribEnds(l.rib, RibSides::BothSewn, l.selvedge), castOn);
  if (fits == Stitches(0)) return castOn;
  const Stitches next = fits + Stitches(l.rib.multiple);
  return next - castOn < castOn - fits && next <= above ? next : fits;
}

KnitPiece sleeveStart(const Lattice& l, PieceId id, Acts& acts, double& half) {
  KnitPiece piece;
  piece.id = id;
  piece.hemRows = l.cuffRows;
  piece.rib = l.rib, piece.selvedge = l.selvedge;
  piece.edge = l.cuffRows == Rows(0) ? EdgeMade::Plain
               : l.plainGarterCuff   ? EdgeMade::Garter
                                     : EdgeMade::Ribbed;
  piece.underarmRow = l.sleeveUnderarmRow;
  // A full sleeve is widened in the first right-side row above its cuff; what would more than
  // double the stitches, in the next ones too.
  std::vector<Stitches> spread;
  // Right-side rows above the cuff.
  const int room = (l.sleeveUnderarmRow - Rows(1) - l.cuffRows).value() / 2;
  Stitches outward, castOn;
  for (int rows = 0;; ++rows) {
    // How many stitches the seam takes away above depends on where the spreading ends.
    acts.clear();
    for (const EdgeSide side : {EdgeSide::Right, EdgeSide::Left})
      append(acts,
             seamActs(l.sleeveSeam, l.cuffRows + Rows(2 * rows), side, Shapes::Sleeve, outward));
    const Stitches above = l.sleeveWidth + 2 * outward;
    castOn = std::max(above - l.cuffIncreases, std::min(above, kLeastCuff - Stitches(above % 2)));
    if (l.cuffIncreases > Stitches(0)) castOn = gatheredCuff(l, castOn, above);
    spread = spreadSteps(castOn, above - castOn);
    // A sleeve that is too short for so many rows is cast on wider.
    for (; int(spread.size()) > room; spread = spreadSteps(castOn, above - castOn))
      castOn += Stitches(2);
    if (int(spread.size()) <= rows) break;
  }
  Rows row = l.cuffRows + Rows(1);
  Stitches all = castOn;
  for (const Stitches k : spread) {
    acts.push_back({row, ActKind::IncreaseEvenly, EdgeSide::Right, k, Shapes::Cuff});
    row += Rows(2), all += k;
  }
  half = 0.5 * all.value();
  if (spread.empty())
    ribChange(l, acts, RibSides::BothSewn, castOn, l.cuffRows, l.sleeveUnderarmRow);
  return piece;
}

} // namespace

KnitPiece sleevePiece(const Lattice& l, PieceId id, const Schedule& right, const Schedule& left) {
  Acts acts;
  double half = 0;
  KnitPiece piece = sleeveStart(l, id, acts, half);
  append(acts, edgeActs(knittedEdge(right, EdgeSide::Right, l.sleeveUnderarmRow), EdgeSide::Right,
                        Shapes::Cap));
  append(acts, edgeActs(knittedEdge(left, EdgeSide::Left, l.sleeveUnderarmRow), EdgeSide::Left,
                        Shapes::Cap));
  piece.crownRow = l.sleeveUnderarmRow + right.rows;
  acts.push_back({piece.crownRow, ActKind::Close,
                  isRightSide(piece.crownRow) ? EdgeSide::Right : EdgeSide::Left, right.crown,
                  Shapes::Crown});
  piece.sections.push_back(bodySection(piece.crownRow, -half, half, std::move(acts)));
  finish(piece);
  return piece;
}

KnitPiece caplessSleeve(const Lattice& l) {
  Acts acts;
  double half = 0;
  KnitPiece piece = sleeveStart(l, PieceId::Sleeve, acts, half);
  piece.crownRow = l.sleeveUnderarmRow;
  acts.push_back({piece.crownRow, ActKind::Close, EdgeSide::Right, l.sleeveWidth, Shapes::Crown});
  piece.sections.push_back(bodySection(l.sleeveUnderarmRow, -half, half, std::move(acts)));
  finish(piece);
  return piece;
}

Stitches KnitPiece::addedAfter(Rows row) const {
  Stitches stitches;
  if (!sections.empty())
    for (const Act& a : sections.front().acts)
      if (a.kind == ActKind::IncreaseEvenly && a.shapes == Shapes::Hem && a.row > row)
        stitches += a.stitches;
  return stitches;
}

Rows KnitPiece::lastRow() const {
  Rows last;
  for (const Section& s : sections)
    last = std::max(last, s.last);
  return last;
}

} // namespace scye
