#include "knit/neck_plan.h"

#include "draft/neckline.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

struct NeckShape {
  Path curve;    // from where it leaves the bind-off, upward, x outward
  double flat = 0; // cm from the start of the neck to there
  bool straight = false;
};

// The drafted neck on the lattice's width and depth. What rises less than one row belongs to the flat.
NeckShape shapeOf(Neckline kind, bool back, const NeckHalf& half, double rowHeight) {
  const Path down = back ? backNeck(half) : frontNeck(kind, half);
  const Path up = down.reversed();
  NeckShape shape;
  shape.straight = !back && kind == Neckline::Vee;
  if (shape.straight) {
    shape.curve = up;
    return shape;
  }
  Path curve;
  bool leaving = false;
  for (const Cubic& c : up.segments()) {
    if (!leaving && c.end().y() <= half.low + 1e-9) continue; // the flat middle
    if (leaving) {
      curve.cubicTo(c.p[1], c.p[2], c.p[3]);
      continue;
    }
    leaving = true;
    double t = 0;
    if (!c.isStraight())
      while (t < 0.9 && c.at(t + 0.02).y() < half.low + rowHeight) t += 0.02;
    const Cubic rest = c.split(t).second;
    curve = Path(rest.start());
    curve.cubicTo(rest.p[1], rest.p[2], rest.p[3]);
  }
  shape.flat = curve.start().x() - half.from;
  shape.curve = curve.moved(Vec2(0, -curve.start().y()));
  return shape;
}

// Stitches that can be taken away on every second row with the steps allowed.
int mostTaken(int rows, const ShapingStyle& style, const StitchSize& size) {
  const int events = std::max(0, (rows - 1) / 2), wide = std::min(events, style.maxSteps);
  return wide * style.widestStep(size) + (events - wide);
}

struct NeckCounts {
  int row = 0, rows = 0; // RS start; from there to where the neck edge ends
  int taken = 0;         // by the shaping of one side
};

Acts shapedSide(const BodicePlan& plan, const NeckShape& shape, const NeckCounts& n, EdgeSide section) {
  const EdgeSide edge = section == EdgeSide::Right ? EdgeSide::Left : EdgeSide::Right;
  if (shape.straight) {
    Acts acts;
    const EvenShaping even = shapeEvenly({.kind = ShapingKind::Decrease,
                                          .changes = n.taken,
                                          .firstRow = n.row + 2,
                                          .lastRow = n.row + n.rows - 2});
    for (const int row : changeRows(even))
      acts.push_back({row, ActKind::Decrease, edge, Stitches(1), Shapes::Neck});
    return acts;
  }
  const ArmholeShaping shaping = shapeNeck({.curve = shape.curve,
                                            .size = plan.lattice.size,
                                            .taken = Stitches(n.taken),
                                            .rows = Rows(n.rows),
                                            .style = plan.style});
  return edgeActs(neckEdge(shaping.schedule, section, n.row), edge, Shapes::Neck);
}

} // namespace

NeckPlan planNeck(const BodicePlan& plan, PieceId id, const BodiceLattice& counts) {
  const Lattice& l = plan.lattice;
  const Bodice& b = plan.draft.bodice;
  const bool back = id == PieceId::Back, whole = back || id == PieceId::Front;
  const Neckline kind = plan.draft.design.as<Neckline>(Choice::Neckline);
  const int neck = counts.neck(whole);
  const double w = l.size.width, h = l.size.height;
  const double drop = b.at.neckPoint - (back ? b.at.nape : b.at.frontNeck);

  NeckCounts n;
  n.row = std::clamp(l.neckTop - std::max(4, nearestEven(drop / h)), l.hemRows + 3 - l.hemRows % 2,
                     l.neckTop - 4);
  n.row += 1 - n.row % 2; // right side
  n.rows = l.neckTop - 2 - n.row;

  // On the lattice the neck reaches from the centre (or the band's inner edge) to the shoulder stitches.
  const double inner = whole ? 0 : b.bandInner / w;
  const double neckX = whole ? 0.5 * neck : counts.left + neck;
  const NeckHalf half{inner * w, std::max(neckX, inner + 1) * w, 0, n.rows * h};
  const NeckShape shape = shapeOf(kind, back, half, h);
  const int free = whole ? neck / 2 : neck;
  const int wanted = shape.straight ? int(std::floor(neckX - inner + 1e-9))
                                    : int(std::lround(neckX - inner - shape.flat / w));
  const bool square = !back && kind == Neckline::Square;
  n.taken = square ? 0 : std::clamp(wanted, 0, free);
  const int most = shape.straight ? std::max(0, (n.rows - 2) / 2) : mostTaken(n.rows, plan.style, l.size);
  n.taken = std::min(n.taken, most);

  NeckPlan out;
  out.row = n.row;
  out.rightSection = shapedSide(plan, shape, n, EdgeSide::Right);
  out.leftSection = shapedSide(plan, shape, n, EdgeSide::Left);
  const int centre = whole ? neck - 2 * n.taken : neck - n.taken;
  const auto begin = [&](int right, int left) {
    if (right > 0)
      out.rightSection.insert(out.rightSection.begin(),
                              {n.row - 1, ActKind::BindOff, EdgeSide::Left, Stitches(right), Shapes::Neck});
    if (left > 0)
      out.leftSection.insert(out.leftSection.begin(),
                             {n.row, ActKind::BindOff, EdgeSide::Right, Stitches(left), Shapes::Neck});
  };
  if (!whole) {
    begin(centre, centre);
    return out;
  }
  const double slit = back ? plan.draft.sizes[Field::BackOpening] : 0;
  const int slitRows = std::min(nearestEven(slit / h), n.row - l.hemRows - 3);
  if (slitRows >= 2) { // divided first; the centre is bound off half by half
    out.splitRow = n.row - slitRows + (slitRows % 2);
    out.atSplit = centre % 2;
    begin(centre / 2, centre / 2);
  } else {
    out.splitRow = n.row;
    out.atSplit = centre;
  }
  return out;
}

} // namespace scye
