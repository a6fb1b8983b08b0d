#include "knit/on_stitches.h"

#include <algorithm>

namespace scye {
namespace {

// A seam from the bottom up, drawn out so that its upper end lies at `x`.
Path reaching(const Path& seam, double x) {
  const double by = x - seam.end().x(), low = seam.start().y(), high = seam.end().y();
  const auto drawn = [&](const Vec2& p) {
    return Vec2(p.x() + (high > low ? by * (p.y() - low) / (high - low) : by), p.y());
  };
  Path out(drawn(seam.start()));
  for (const Cubic& c : seam.segments()) {
    if (c.isStraight())
      out.lineTo(drawn(c.p[3]));
    else
      out.cubicTo(drawn(c.p[1]), drawn(c.p[2]), drawn(c.p[3]));
  }
  return out;
}

// What lies over an underarm, x from the centre line.
struct Upper {
  double corner = 0; // x of the seam's upper end
  Path curve;        // from the end of the underarm bind-off, at height 0
};

// One edge of a piece; its left half is the mirror image of the right one and runs downward.
void draw(PieceEdge& edge, const Upper& right, const Upper& left) {
  const bool mirrored = edge.path.start().x() + edge.path.end().x() < 0;
  const Upper& upper = mirrored ? left : right;
  const Path half = mirrored ? edge.path.mirroredX().reversed() : edge.path;
  const double y = edge.kind == EdgeKind::Side || edge.kind == EdgeKind::SleeveSeam
                       ? half.end().y()
                       : half.start().y();
  Path drawn;
  switch (edge.kind) {
  case EdgeKind::Side:
  case EdgeKind::SleeveSeam:
    drawn = reaching(half, upper.corner);
    break;
  case EdgeKind::Underarm:
    drawn = Path(Vec2(upper.corner, y)).lineTo(Vec2(upper.curve.start().x(), y));
    break;
  case EdgeKind::Armhole:
  case EdgeKind::Cap:
    drawn = upper.curve.moved(Vec2(0, y));
    break;
  default:
    return;
  }
  edge.path = mirrored ? drawn.mirroredX().reversed() : drawn;
}

void capOnStitches(GarmentDraft& g, const CapShaping& cap) {
  CapMatch& m = g.cap;
  m.back = cap.referenceBack, m.front = cap.referenceFront, m.height = cap.referenceHeight;
  m.capBack = capEdge(m.back, m.height).first, m.capFront = capEdge(m.front, m.height).first;
  if (m.lean == 0) { // each half has its armhole and its share of the ease, see seam/match.cpp
    const double share = m.armhole() > 0 ? m.armholeBack / m.armhole() : 0.5;
    m.crownMark = std::clamp(m.armholeBack + share * m.ease() - m.capBack, -m.back.crownHalf,
                             m.back.crownHalf);
    m.capBack += m.crownMark, m.capFront -= m.crownMark;
  }
  g.sleeve.halfWidth = m.back.halfWidth;
}

void sleeveOnStitches(Piece& sleeve, const CapMatch& m) {
  const auto upper = [&](const CapShape& half) {
    return Upper{half.halfWidth, capReference(half, m.height)};
  };
  const Upper front = upper(m.front), back = upper(m.back);
  double top = 0;
  for (PieceEdge& edge : sleeve.edges) {
    if (edge.kind == EdgeKind::Cap) top = std::min(edge.path.start().y(), edge.path.end().y());
    draw(edge, front, back);
  }
  top += m.height;
  for (PieceEdge& edge : sleeve.edges)
    if (edge.kind == EdgeKind::Crown)
      edge.path = Path(Vec2(front.curve.end().x(), top)).lineTo(Vec2(-back.curve.end().x(), top));
}

} // namespace

GarmentDraft onStitches(const GarmentDraft& draft, const KnitGarment& knitted) {
  GarmentDraft g = draft;
  if (!knitted.gaugeUsable) return g;
  const Lattice& l = knitted.lattice;
  g.bodice.back = armholeOnStitches(l, l.back), g.bodice.front = armholeOnStitches(l, l.front);
  g.cap.armholeBack = armholeEdge(g.bodice.back);
  g.cap.armholeFront = armholeEdge(g.bodice.front);
  if (knitted.capKnitted) capOnStitches(g, knitted.cap);
  for (Piece& piece : g.pieces) {
    if (piece.id == PieceId::Sleeve) {
      if (knitted.capKnitted) sleeveOnStitches(piece, g.cap);
      continue;
    }
    const ArmholeShape& a = piece.id == PieceId::Back ? g.bodice.back : g.bodice.front;
    const Upper upper{a.halfBust, armholeCurve(a)};
    for (PieceEdge& edge : piece.edges)
      draw(edge, upper, upper);
  }
  return g;
}

} // namespace scye
