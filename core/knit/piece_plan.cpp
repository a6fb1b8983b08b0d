#include "knit/piece_plan.h"

#include "knit/acts.h"
#include "knit/neck_plan.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// What is worked along one outer edge of a bodice piece, from cast-on to shoulder.
Acts outerEdge(const Lattice& l, const BodiceLattice& counts, const Schedule& armhole, EdgeSide side,
               int& castOnOutward) {
  Acts acts = seamActs(counts.side, l.hemRows, side, Shapes::Side, castOnOutward);
  append(acts, edgeActs(knittedEdge(armhole, side, l.underarmRow), side, Shapes::Armhole));
  const int first = l.shoulderRow + (side == EdgeSide::Left ? 1 : 0);
  int row = first - 2; // runEvents counts from two rows before
  for (const EdgeEvent& e : runEvents(shoulderSteps(Stitches(counts.shoulder), l.shoulderSteps), row, 0))
    acts.push_back({e.row, ActKind::BindOff, side, e.change, Shapes::Shoulder});
  return acts;
}

KnitPiece started(const Lattice& l, PieceId id) {
  KnitPiece piece;
  piece.id = id;
  piece.hemRows = l.hemRows;
  piece.underarmRow = l.underarmRow;
  piece.shoulderRow = l.shoulderRow;
  return piece;
}

void finish(KnitPiece& piece) {
  for (Section& s : piece.sections) sortActs(s.acts);
  piece.rows = workedRows(piece.sections);
}

Section bodySection(int last, double left, double right, Acts acts) {
  Section body{SectionId::Body, 0, last, left, right, std::move(acts)};
  body.acts.insert(body.acts.begin(), {0, ActKind::CastOn, EdgeSide::Right,
                                       Stitches(int(std::lround(right - left))), Shapes::Hem});
  sortActs(body.acts);
  return body;
}

} // namespace

KnitPiece wholePiece(const BodicePlan& plan, PieceId id, const BodiceLattice& counts,
                     const Schedule& armhole) {
  const Lattice& l = plan.lattice;
  KnitPiece piece = started(l, id);
  int outward = 0;
  const Acts right = outerEdge(l, counts, armhole, EdgeSide::Right, outward);
  const Acts left = outerEdge(l, counts, armhole, EdgeSide::Left, outward);
  const NeckPlan neck = planNeck(plan, id, counts);
  piece.splitRow = neck.splitRow, piece.neckRow = neck.row;

  const auto below = [&](const Acts& acts) { return between(acts, 0, neck.splitRow - 1); };
  Acts both = below(right);
  append(both, below(left));
  piece.sections.push_back(
      bodySection(neck.splitRow - 1, counts.left - outward, counts.right + outward, std::move(both)));
  const RowLine at = workedRows(piece.sections).back();

  const double half = 0.5 * neck.atSplit;
  Section rightSide{SectionId::Right, neck.splitRow, l.neckTop - 2, half, at.rightEdge,
                    between(right, neck.splitRow, l.neckTop)};
  rightSide.acts.push_back({neck.splitRow, ActKind::Rest, EdgeSide::Left,
                            Stitches(int(std::lround(half - at.leftEdge))), Shapes::Neck});
  append(rightSide.acts, neck.rightSection);
  Section leftSide{SectionId::Left, neck.splitRow, l.neckTop - 1, at.leftEdge, half,
                   between(left, neck.splitRow, l.neckTop)};
  leftSide.acts.push_back({neck.splitRow, ActKind::Rejoin, EdgeSide::Right,
                           Stitches(int(std::lround(half - at.leftEdge))), Shapes::Neck});
  if (neck.atSplit > 0)
    leftSide.acts.push_back({neck.splitRow, ActKind::BindOff, EdgeSide::Right, Stitches(neck.atSplit),
                             Shapes::Neck});
  append(leftSide.acts, neck.leftSection);
  piece.sections.push_back(std::move(rightSide));
  piece.sections.push_back(std::move(leftSide));
  finish(piece);
  return piece;
}

KnitPiece jacketFront(const BodicePlan& plan, PieceId id, const Schedule& armhole) {
  const Lattice& l = plan.lattice;
  const BodiceLattice& counts = l.front;
  KnitPiece piece = started(l, id);
  const bool isLeft = id == PieceId::LeftFront;
  int outward = 0;
  Acts acts = outerEdge(l, counts, armhole, isLeft ? EdgeSide::Right : EdgeSide::Left, outward);
  const NeckPlan neck = planNeck(plan, id, counts);
  piece.neckRow = neck.row;
  append(acts, isLeft ? neck.rightSection : neck.leftSection);
  const double inner = counts.left, outer = counts.right + outward;
  piece.sections.push_back(isLeft ? bodySection(l.neckTop - 2, inner, outer, std::move(acts))
                                  : bodySection(l.neckTop - 1, -outer, -inner, std::move(acts)));
  finish(piece);
  return piece;
}

namespace {

KnitPiece sleeveStart(const Lattice& l, PieceId id, Acts& acts, double& half) {
  KnitPiece piece;
  piece.id = id;
  piece.hemRows = l.cuffRows;
  piece.underarmRow = l.sleeveUnderarmRow;
  int outward = 0;
  for (const EdgeSide side : {EdgeSide::Right, EdgeSide::Left})
    append(acts, seamActs(l.sleeveSeam, l.cuffRows, side, Shapes::Sleeve, outward));
  half = 0.5 * l.sleeveWidth + outward;
  return piece;
}

} // namespace

KnitPiece sleevePiece(const Lattice& l, PieceId id, const Schedule& right, const Schedule& left) {
  Acts acts;
  double half = 0;
  KnitPiece piece = sleeveStart(l, id, acts, half);
  append(acts, edgeActs(knittedEdge(right, EdgeSide::Right, l.sleeveUnderarmRow), EdgeSide::Right, Shapes::Cap));
  append(acts, edgeActs(knittedEdge(left, EdgeSide::Left, l.sleeveUnderarmRow), EdgeSide::Left, Shapes::Cap));
  piece.crownRow = l.sleeveUnderarmRow + right.rows.value();
  acts.push_back({piece.crownRow, ActKind::Close,
                  piece.crownRow % 2 == 1 ? EdgeSide::Right : EdgeSide::Left, right.crown, Shapes::Crown});
  piece.sections.push_back(bodySection(piece.crownRow, -half, half, std::move(acts)));
  finish(piece);
  return piece;
}

KnitPiece caplessSleeve(const Lattice& l) {
  Acts acts;
  double half = 0;
  KnitPiece piece = sleeveStart(l, PieceId::Sleeve, acts, half);
  piece.crownRow = l.sleeveUnderarmRow;
  acts.push_back({piece.crownRow, ActKind::Close, EdgeSide::Right, Stitches(l.sleeveWidth), Shapes::Crown});
  piece.sections.push_back(bodySection(piece.crownRow, -half, half, std::move(acts)));
  finish(piece);
  return piece;
}

int KnitPiece::lastRow() const {
  int last = 0;
  for (const Section& s : sections) last = std::max(last, s.last);
  return last;
}

} // namespace scye
