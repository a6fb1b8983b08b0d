#include "knit/piece_plan.h"

#include "knit/acts.h"
#include "knit/buttonholes.h"
#include "knit/neck_plan.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace scye {
namespace {

// Groups of stitches left beyond the turns at one edge, at the end of every second row from `first`
// on; then all taken up in the row after next.
Acts shortRows(const std::vector<int>& groups, int first, EdgeSide side, Shapes shapes) {
  Acts acts;
  int row = first, waiting = 0;
  for (const int k : groups) {
    acts.push_back({row, ActKind::Wait, side, Stitches(k), shapes, waiting});
    waiting += k, row += 2;
  }
  if (waiting > 0) acts.push_back({row, ActKind::TakeUp, side, Stitches(waiting), shapes});
  return acts;
}

// Bound off in steps, or the steps left waiting but the last and all bound off together.
Acts shoulderActs(const Lattice& l, const BodiceLattice& counts, EdgeSide side) {
  Acts acts;
  const int first = l.shoulderRow + counts.longer + (side == EdgeSide::Left ? 1 : 0);
  std::vector<int> groups;
  for (const Run& run : shoulderSteps(Stitches(counts.shoulder), l.shoulderSteps))
    groups.insert(groups.end(), std::size_t(run.times), run.stitches.value());
  if (!l.shoulderShortRows) {
    int row = first;
    for (const int k : groups) {
      acts.push_back({row, ActKind::BindOff, side, Stitches(k), Shapes::Shoulder});
      row += 2;
    }
    return acts;
  }
  groups.pop_back();
  acts = shortRows(groups, first, side, Shapes::Shoulder);
  acts.push_back({first + 2 * int(groups.size()) + 1,
                  l.threeNeedles ? ActKind::Hold : ActKind::BindOff, side,
                  Stitches(counts.shoulder), Shapes::Shoulder});
  return acts;
}

// What is worked along one outer edge of a bodice piece, from cast-on to shoulder.
Acts outerEdge(const Lattice& l, const BodiceLattice& counts, const Schedule& armhole,
               EdgeSide side, int& castOnOutward) {
  Acts acts = seamActs(counts.side, l.hemRows, side, Shapes::Side, castOnOutward);
  append(acts, shortRows(counts.bustTurns, counts.bustRow + (side == EdgeSide::Right ? 1 : 0), side,
                         Shapes::Bust));
  append(acts, edgeActs(knittedEdge(armhole, side, l.underarmRow + counts.longer), side,
                        Shapes::Armhole));
  append(acts, shoulderActs(l, counts, side));
  return acts;
}

// An edge is cast on with as many stitches as its rib repeats over; the others are added evenly in
// the first right-side row above it that is free. Returns how many: 0 where none are, or where no
// row is free.
int ribChange(const Lattice& l, Acts& acts, RibSides sides, int castOn, int ribRows, int below) {
  if (!l.ribChange || ribRows <= 0 || ribRows % 2 != 0) return 0;
  const int fits = ribCastOn(l.rib, ribEnds(l.rib, sides, l.selvedge), castOn);
  const int more = fits > 0 ? castOn - fits : 0;
  if (more == 0) return 0;
  constexpr int kRowsTried = 8;
  for (int row = ribRows + 1; row < std::min(below, ribRows + kRowsTried); row += 2) {
    const bool busy = std::any_of(acts.begin(), acts.end(), [&](const Act& a) {
      return a.row == row ||
             (a.row < row && (a.kind == ActKind::Wait || a.kind == ActKind::TakeUp));
    });
    if (busy) continue;
    const EdgeSide side = sides == RibSides::RightFree ? EdgeSide::Left : EdgeSide::Right;
    acts.push_back({row, ActKind::Spread, side, Stitches(more), Shapes::Hem,
                    sides == RibSides::BothSewn ? 0 : 1});
    return more;
  }
  return 0;
}

// Rows of a body's hem that are worked in rib: a facing is as wide as what it lies under.
int ribbedHem(const Lattice& l) {
  return l.foldRow > 0 ? 0 : l.hemRows;
}

KnitPiece started(const Lattice& l, PieceId id, const BodiceLattice& counts) {
  KnitPiece piece;
  piece.id = id;
  piece.hemRows = l.hemRows;
  piece.foldRow = l.foldRow;
  piece.rib = l.rib, piece.selvedge = l.selvedge;
  piece.edge = l.foldRow > 0    ? EdgeMade::Faced
               : l.hemRows == 0 ? EdgeMade::Plain
               : l.plainGarter  ? EdgeMade::Garter
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
Section bodySection(int last, double left, double right, Acts acts) {
  for (const Act& a : acts) {
    if (a.kind != ActKind::Spread) continue;
    const int k = a.stitches.value();
    const int atRight = a.from == 0 ? k / 2 : a.side == EdgeSide::Right ? k : 0;
    right -= atRight, left += k - atRight;
  }
  Section body{SectionId::Body, 0, last, left, right, std::move(acts)};
  body.acts.insert(body.acts.begin(), {0, ActKind::CastOn, EdgeSide::Right,
                                       Stitches(int(std::lround(right - left))), Shapes::Hem});
  sortActs(body.acts);
  return body;
}

} // namespace

namespace {

// A neck that is straight across, and no slit below it: the piece is knitted in one to its end.
KnitPiece undivided(const Lattice& l, const BodiceLattice& counts, KnitPiece piece, Acts both,
                    double outward) {
  piece.neckRow = l.neckTop + counts.longer - (l.shoulderShortRows ? 1 : 0);
  int close = counts.neck(true);
  if (l.shoulderShortRows) { // shoulders and neck together
    std::erase_if(both, [](const Act& a) {
      return a.shapes == Shapes::Shoulder &&
             (a.kind == ActKind::BindOff || a.kind == ActKind::Hold);
    });
    close += 2 * counts.shoulder;
  }
  ribChange(l, both, RibSides::BothSewn, counts.bust() + 2 * int(outward), ribbedHem(l),
            l.underarmRow);
  both.push_back({piece.neckRow, l.threeNeedles ? ActKind::Hold : ActKind::Close,
                  l.shoulderShortRows ? EdgeSide::Left : EdgeSide::Right, Stitches(close),
                  Shapes::Neck});
  piece.sections.push_back(
      bodySection(piece.neckRow, counts.left - outward, counts.right + outward, std::move(both)));
  finish(piece);
  return piece;
}

} // namespace

KnitPiece wholePiece(const BodicePlan& plan, PieceId id, const BodiceLattice& counts,
                     const Schedule& armhole) {
  const Lattice& l = plan.lattice;
  KnitPiece piece = started(l, id, counts);
  int outward = 0;
  const Acts right = outerEdge(l, counts, armhole, EdgeSide::Right, outward);
  const Acts left = outerEdge(l, counts, armhole, EdgeSide::Left, outward);
  const NeckPlan neck = planNeck(plan, id, counts);
  if (neck.splitRow < 0) {
    Acts both = right;
    append(both, left);
    return undivided(l, counts, std::move(piece), std::move(both), outward);
  }
  piece.splitRow = neck.splitRow, piece.neckRow = neck.row;
  const int top = l.neckTop + counts.longer;

  const auto below = [&](const Acts& acts) { return between(acts, 0, neck.splitRow - 1); };
  Acts both = below(right);
  append(both, below(left));
  ribChange(l, both, RibSides::BothSewn, counts.bust() + 2 * outward, ribbedHem(l),
            std::min(neck.splitRow, l.underarmRow));
  piece.sections.push_back(bodySection(neck.splitRow - 1, counts.left - outward,
                                       counts.right + outward, std::move(both)));
  const RowLine at = workedRows(piece.sections).back();
  const auto waitingAt =
      [&](EdgeSide side) { // shoulder stitches, where the neck begins after the shoulders
        int waiting = 0;
        for (const Act& a : piece.sections.front().acts)
          if (a.side == side && (a.kind == ActKind::Wait || a.kind == ActKind::TakeUp))
            waiting += a.kind == ActKind::Wait ? a.stitches.value() : -a.stitches.value();
        return waiting;
      };
  const int waitsLeft = waitingAt(EdgeSide::Left);

  const double half = 0.5 * neck.atSplit;
  const int last = neck.straight ? 1 : 0; // a row more, in which a straight neck is bound off
  Section rightSide{SectionId::Right,
                    neck.splitRow,
                    top - 2 + last,
                    half,
                    at.rightEdge,
                    between(right, neck.splitRow, top),
                    waitingAt(EdgeSide::Right)};
  rightSide.acts.push_back({neck.splitRow, ActKind::Rest, EdgeSide::Left,
                            Stitches(int(std::lround(half - at.leftEdge))), Shapes::Neck,
                            waitsLeft});
  append(rightSide.acts, neck.rightSection);
  Section leftSide{SectionId::Left, neck.splitRow, top - 1 + last,
                   at.leftEdge,     half,          between(left, neck.splitRow, top),
                   waitsLeft};
  leftSide.acts.push_back({neck.splitRow, ActKind::Rejoin, EdgeSide::Right,
                           Stitches(int(std::lround(half - at.leftEdge))), Shapes::Neck,
                           waitsLeft});
  if (neck.atSplit > 0)
    leftSide.acts.push_back(
        {neck.splitRow, ActKind::BindOff, EdgeSide::Right, Stitches(neck.atSplit), Shapes::Neck});
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
  int outward = 0;
  Acts acts = outerEdge(l, counts, armhole, isLeft ? EdgeSide::Right : EdgeSide::Left, outward);
  const NeckPlan neck = planNeck(plan, id, counts);
  piece.neckRow = neck.row;
  append(acts, isLeft ? neck.rightSection : neck.leftSection);
  append(acts, buttonholeActs(buttonholes(plan.draft, l, neck.row), id));
  ribChange(l, acts, piece.sides, counts.bust() + outward, ribbedHem(l),
            std::min(neck.row, l.underarmRow));
  const double inner = counts.left, outer = counts.right + outward;
  const int top = l.neckTop + counts.longer;
  piece.sections.push_back(isLeft ? bodySection(top - 2, inner, outer, std::move(acts))
                                  : bodySection(top - 1, -outer, -inner, std::move(acts)));
  finish(piece);
  return piece;
}

namespace {

// `more` stitches spread over as few rows as it takes, none of which doubles its stitches; all
// even.
std::vector<int> spreadSteps(int stitches, int more) {
  std::vector<int> steps;
  while (more > 0 && stitches > 2) {
    steps.push_back(std::min(more, (stitches - 1) / 2 * 2));
    more -= steps.back(), stitches += steps.back();
  }
  return steps;
}

// Stitches of a cuff that a sleeve is gathered into: the nearest that its rib repeats over.
int gatheredCuff(const Lattice& l, int castOn, int above) {
  if (l.cuffRows <= 0 || !l.ribChange) return castOn;
  const int fits = ribCastOn(l.rib, ribEnds(l.rib, RibSides::BothSewn, l.selvedge), castOn);
  if (fits == 0) return castOn;
  const int next = fits + l.rib.multiple;
  return next - castOn < castOn - fits && next <= above ? next : fits;
}

KnitPiece sleeveStart(const Lattice& l, PieceId id, Acts& acts, double& half) {
  KnitPiece piece;
  piece.id = id;
  piece.hemRows = l.cuffRows;
  piece.rib = l.rib, piece.selvedge = l.selvedge;
  piece.edge = l.cuffRows == 0     ? EdgeMade::Plain
               : l.plainGarterCuff ? EdgeMade::Garter
                                   : EdgeMade::Ribbed;
  piece.underarmRow = l.sleeveUnderarmRow;
  // A full sleeve is widened in the first right-side row above its cuff; what would more than
  // double the stitches, in the next ones too.
  std::vector<int> spread;
  const int room = (l.sleeveUnderarmRow - 1 - l.cuffRows) / 2; // right-side rows above the cuff
  int outward = 0, castOn = 0;
  for (int rows = 0;; ++rows) {
    // How many stitches the seam takes away above depends on where the spreading ends.
    acts.clear();
    for (const EdgeSide side : {EdgeSide::Right, EdgeSide::Left})
      append(acts, seamActs(l.sleeveSeam, l.cuffRows + 2 * rows, side, Shapes::Sleeve, outward));
    const int above = l.sleeveWidth + 2 * outward;
    castOn = std::max(above - l.cuffSpread, std::min(above, kLeastCuff - above % 2));
    if (l.cuffSpread > 0) castOn = gatheredCuff(l, castOn, above);
    spread = spreadSteps(castOn, above - castOn);
    // A sleeve that is too short for so many rows is cast on wider.
    for (; int(spread.size()) > room; spread = spreadSteps(castOn, above - castOn))
      castOn += 2;
    if (int(spread.size()) <= rows) break;
  }
  int row = l.cuffRows + 1;
  for (const int k : spread) {
    acts.push_back({row, ActKind::Spread, EdgeSide::Right, Stitches(k), Shapes::Cuff});
    row += 2;
  }
  half = 0.5 * (castOn + std::accumulate(spread.begin(), spread.end(), 0));
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
  piece.crownRow = l.sleeveUnderarmRow + right.rows.value();
  acts.push_back({piece.crownRow, ActKind::Close,
                  piece.crownRow % 2 == 1 ? EdgeSide::Right : EdgeSide::Left, right.crown,
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
  acts.push_back(
      {piece.crownRow, ActKind::Close, EdgeSide::Right, Stitches(l.sleeveWidth), Shapes::Crown});
  piece.sections.push_back(bodySection(piece.crownRow, -half, half, std::move(acts)));
  finish(piece);
  return piece;
}

int KnitPiece::addedAfter(int row) const {
  int stitches = 0;
  if (!sections.empty())
    for (const Act& a : sections.front().acts)
      if (a.kind == ActKind::Spread && a.shapes == Shapes::Hem && a.row > row)
        stitches += a.stitches.value();
  return stitches;
}

int KnitPiece::lastRow() const {
  int last = 0;
  for (const Section& s : sections)
    last = std::max(last, s.last);
  return last;
}

} // namespace scye
