// Half a sleeve cap and the length of its edge, in centimetres.
//
// x is measured from the sleeve's centre line, y up from the underarm line. With the span
// s = halfWidth - underarm - crownHalf + lean the S-shaped cubic has the control points
//   (halfWidth - underarm, 0), then a*s inward, (crownHalf - lean + b*s, H), (crownHalf - lean, H):
// it leaves the underarm bind-off horizontally and arrives at the crown horizontally. The edge of
// the half runs from the underarm seam over the flat underarm, the curve and half the crown to the
// mark that meets the shoulder seam. x(t) is monotone where 0 <= a, b and a + b <= 1 + sqrt(ab).
//
// The length is strictly increasing and convex in H >= 0 for s != 0 (for s = 0 it is H + flats).
// Length and derivative come from one adaptive 16-point Gauss-Legendre quadrature, the derivative
// by differentiating under the integral: length to 1e-12 relative, derivative to 1e-11. Cost: about
// 1 us an evaluation for a common cap (H / s near 1).
#pragma once

#include "curve/path.h"
#include "curve/roots.h"

#include <span>
#include <utility>

namespace scye {

struct CapShape {
  double halfWidth = 0;        // W / 2
  double underarm = 0;         // U: flat at the underarm
  double crownHalf = 0;        // T / 2: flat at the top, on this side of the shoulder mark
  double lowerFullness = 0.37; // a
  double upperFullness = 0.42; // b
  double lean = 0; // how far the crown lies away from this half: +c for the back, -c for the front

  [[nodiscard]] double span() const { return halfWidth - underarm - crownHalf + lean; }
  bool operator==(const CapShape&) const = default;
};

// The S-curve alone, from the end of the underarm bind-off to the crown.
[[nodiscard]] Cubic capCurve(const CapShape& shape, double height);

// {length of the half cap's edge with both flats, its derivative by height}; height >= 0.
[[nodiscard]] std::pair<double, double> capEdge(const CapShape& shape, double height);

// The common height at which the edges of the given halves add up to `target`. Newton's iteration
// from above on a bracket, to |dH| <= 1e-11 cm. Status NoSignChange: even at height 0 the edge is
// longer than the target (the sleeve is too wide for the armhole); x is then meaningless.
[[nodiscard]] RootSummary solveCapHeight(std::span<const CapShape> halves, double target);

} // namespace scye
