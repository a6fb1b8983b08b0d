#include "knit/neck_plan.h"

#include "draft/neckline.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

struct NeckShape {
  Path curve;      // from where it leaves the bind-off, upward, x outward
  double flat = 0; // cm from the start of the neck to there
  bool straight = false;
};

// The drafted neck on the lattice's width and depth. What rises less than one row belongs to the
// flat.
NeckShape shapeOf(Neckline kind, bool back, const NeckHalf& half, double rowHeight) {
  const Path down = back ? backNeck(half) : frontNeck(kind, half);
  const Path up = down.reversed();
  NeckShape shape;
  shape.straight = !back && traitsOf(kind).straight;
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
      while (t < 0.9 && c.at(t + 0.02).y() < half.low + rowHeight)
        t += 0.02;
    const Cubic rest = c.split(t).second;
    curve = Path(rest.start());
    curve.cubicTo(rest.p[1], rest.p[2], rest.p[3]);
  }
  shape.flat = curve.start().x() - half.from;
  shape.curve = curve.moved(Vec2(0, -curve.start().y()));
  return shape;
}

// Stitches that can be taken away on every second row with the steps allowed.
Stitches mostTaken(Rows rows, const ShapingStyle& style, const StitchSize& size) {
  const int events = std::max(0, (rows.value() - 1) / 2), wide = std::min(events, style.maxSteps);
  return Stitches(wide * style.widestBindOff(size) + (events - wide));
}

struct NeckCounts {
  Rows row{0}, rows{0}; // RS start; from there to where the neck edge ends
  Stitches taken{0};    // by the shaping of one side
};

Acts shapedSide(const BodicePlan& plan, const NeckShape& shape, const NeckCounts& n,
                EdgeSide section) {
  const EdgeSide edge = section == EdgeSide::Right ? EdgeSide::Left : EdgeSide::Right;
  if (shape.straight) {
    Acts acts;
    const EvenShaping even = shapeEvenly({.kind = ShapingKind::Decrease,
                                          .changes = n.taken.value(),
                                          .firstRow = n.row + Rows(2),
                                          .lastRow = n.row + n.rows - Rows(2)});
    for (const Rows row : changeRows(even))
      acts.push_back({row, ActKind::Decrease, edge, Stitches(1), Shapes::Neck});
    return acts;
  }
  const ArmholeShaping shaping = shapeNeck({.curve = shape.curve,
                                            .size = plan.lattice.size,
                                            .taken = n.taken,
                                            .rows = n.rows,
                                            .style = plan.style});
  return edgeActs(neckEdge(shaping.schedule, section, n.row), edge, Shapes::Neck);
}

constexpr Rows kLeastSlit{2};

// How many rows a slit below the neck row has.
Rows slitRows(const BodicePlan& plan, Rows neckRow) {
  const Lattice& l = plan.lattice;
  return std::min(nearestEven(plan.draft.sizes[Field::BackOpening] / l.size.height),
                  neckRow - l.hemRows - Rows(3));
}

// Bound off straight across when the shoulders are done; a slit divides the piece below.
NeckPlan straightNeck(const BodicePlan& plan, const BodiceLattice& counts) {
  NeckPlan out;
  out.straight = true;
  out.row = plan.lattice.neckTop + counts.longer;
  const Rows slit = slitRows(plan, out.row);
  const Stitches neck = counts.neck(true);
  if (slit < kLeastSlit) return out;
  out.splitRow = out.row - slit + Rows(slit % 2);
  out.atSplit = Stitches(neck % 2);
  if (neck < Stitches(2)) return out;
  out.rightSection = {
      {out.row - Rows(1), ActKind::BindOff, EdgeSide::Left, neck / 2, Shapes::Neck}};
  out.leftSection = {{out.row, ActKind::BindOff, EdgeSide::Right, neck / 2, Shapes::Neck}};
  return out;
}

} // namespace

NeckPlan planNeck(const BodicePlan& plan, PieceId id, const BodiceLattice& counts) {
  const Lattice& l = plan.lattice;
  const Bodice& b = plan.draft.bodice;
  const bool back = id == PieceId::Back, whole = back || id == PieceId::Front;
  const Neckline kind = plan.draft.sizes.style.neckline;
  const Stitches neck = counts.neck(whole);
  const double w = l.size.width, h = l.size.height;
  const BodiceHeights& at = back ? b.at : b.frontAt;
  const double drop = at.neckPoint - at.neckLow;
  const Rows top = l.neckTop + counts.longer, four(4);
  // Below it lie the rib and the rows that are turned over the bust.
  const Rows lowest =
      std::max(l.hemRows + Rows(3 - l.hemRows % 2),
               counts.longer > Rows(0) ? counts.bustRow + counts.longer + four : Rows(0));
  if (back && plan.draft.sizes.style.straightBackNeck()) return straightNeck(plan, counts);

  NeckCounts n;
  n.row = std::min(std::max(top - std::max(four, nearestEven(drop / h)), lowest), top - four);
  n.row += Rows(1 - n.row % 2); // right side
  n.rows = top - Rows(2) - n.row;

  // On the lattice the neck reaches from the centre (or the band's inner edge) to the shoulder
  // stitches.
  const double inner = whole ? 0 : b.bandInner / w;
  const double neckX = whole ? 0.5 * neck.value() : counts.left + neck.value();
  const NeckHalf half{inner * w, std::max(neckX, inner + 1) * w, 0, l.size.up(n.rows)};
  const NeckShape shape = shapeOf(kind, back, half, h);
  const Stitches free = whole ? neck / 2 : neck;
  const Stitches wanted(shape.straight ? int(std::floor(neckX - inner + 1e-9))
                                       : int(std::lround(neckX - inner - shape.flat / w)));
  const bool corner = !back && traitsOf(kind).corner; // all of it is bound off
  n.taken = corner ? Stitches(0) : std::clamp(wanted, Stitches(0), free);
  const Stitches most = shape.straight ? Stitches(std::max(0, (n.rows.value() - 2) / 2))
                                       : mostTaken(n.rows, plan.style, l.size);
  n.taken = std::min(n.taken, most);

  NeckPlan out;
  out.row = n.row;
  out.rightSection = shapedSide(plan, shape, n, EdgeSide::Right);
  out.leftSection = shapedSide(plan, shape, n, EdgeSide::Left);
  const Stitches centre = whole ? neck - 2 * n.taken : neck - n.taken;
  const auto begin = [&](Stitches right, Stitches left) {
    if (right > Stitches(0))
      out.rightSection.insert(out.rightSection.begin(), {n.row - Rows(1), ActKind::BindOff,
                                                         EdgeSide::Left, right, Shapes::Neck});
    if (left > Stitches(0))
      out.leftSection.insert(out.leftSection.begin(),
                             {n.row, ActKind::BindOff, EdgeSide::Right, left, Shapes::Neck});
  };
  if (!whole) {
    begin(centre, centre);
    return out;
  }
  if (const Rows slit = back ? slitRows(plan, n.row) : Rows(0); slit >= kLeastSlit) {
    // Divided first; the centre is bound off half by half.
    out.splitRow = n.row - slit + Rows(slit % 2);
    out.atSplit = Stitches(centre % 2);
    begin(centre / 2, centre / 2);
  } else {
    out.splitRow = n.row;
    out.atSplit = centre;
  }
  return out;
}

} // namespace scye
