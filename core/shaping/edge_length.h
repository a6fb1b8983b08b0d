// The length of a knitted edge, in centimetres, from the changes worked along it.
//
// An edge of whole stitches and rows is a staircase; how long it is when it is sewn is a matter of
// where the seam is thought to run. An event is a change of k stitches worked in a row: a tread
// from the outer corner, where the edge stood before, to the inner corner, where it stands after.
// From there it goes straight up to the next event's outer corner. Three ways along it are
// measured, each a chain of straight pieces from the end of the underarm bind-off to the end of the
// edge:
//   chord   through the outer corners: the first piece goes straight up, each event gives
//           hypot(k, rows to the next event)
//   corner  through the inner corners: each event gives hypot(k, rows since the event before), the
//           last piece goes straight up
//   middle  through the middles of the treads
// The underarm and crown bind-offs lie flat, stitches x stitch width, in all three. Where k and the
// rows between stay the same the three are equal; they part where one run gives way to another.
// Armhole and cap are matched by their mean. Exact to rounding; cost: three square roots an event.
#pragma once

#include "curve/path.h"
#include "model/units.h"

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

namespace scye {

enum class EdgeSide { Right, Left }; // as the piece is seen from its right side

enum class EventKind { Underarm, BindOff, Decrease, Increase };

struct EdgeEvent {
  Rows row{0};        // of the piece, in which it is worked
  Stitches change{0}; // stitches taken away at this edge; negative where it grows
  EventKind kind = EventKind::Decrease;
  bool operator==(const EdgeEvent&) const = default;
};

// An edge of one piece from the underarm bind-off to its end. Rows are those of the piece.
struct KnittedEdge {
  Rows begin{0}; // the row of the underarm bind-off on this side
  Rows end{0};   // the row that ends the edge: first shoulder bind-off, or the crown
  std::vector<EdgeEvent> events{}; // by row; the underarm bind-off, if there is one, first
  double flatTop = 0;              // stitches: this edge's half of the crown without its selvedges
};

struct EdgeLength {
  double chord = 0, corner = 0, middle = 0; // cm
  [[nodiscard]] double mean() const { return (chord + corner + middle) / 3; }
  // Between the largest and the smallest of the three.
  [[nodiscard]] double spread() const {
    return std::max({chord, corner, middle}) - std::min({chord, corner, middle});
  }
  EdgeLength& operator+=(const EdgeLength& o) {
    chord += o.chord, corner += o.corner, middle += o.middle;
    return *this;
  }
  friend EdgeLength operator+(EdgeLength a, const EdgeLength& b) { return a += b; }
  friend EdgeLength operator*(double f, const EdgeLength& a) {
    return {f * a.chord, f * a.corner, f * a.middle};
  }
  friend EdgeLength operator-(const EdgeLength& a, const EdgeLength& b) { return a + -1.0 * b; }
};

// One straight piece. Quicker than std::hypot, and far from where squares overflow.
[[nodiscard]] inline double slant(double across, double up) {
  return std::sqrt(across * across + up * up);
}

[[nodiscard]] EdgeLength edgeLength(const KnittedEdge& edge, const StitchSize& size);

// This edge's half of a crown bind-off of `crown` stitches that hold a selvedge at each end.
[[nodiscard]] double crownHalfStitches(Stitches crown, Stitches selvedge);

// The same edge read back from a row table. `positions` is the left_edge or right_edge column, in
// stitches from x = 0, as it stands after the rows begin - 1, begin, begin + 1, ...; rows from
// `end` on are not looked at. The change in row `begin` is the underarm bind-off. Changes are whole
// stitches.
[[nodiscard]] KnittedEdge edgeFromColumn(std::span<const double> positions, EdgeSide side,
                                         Rows begin, Rows end, double flatTop = 0);

// How far the edge leaves a reference curve, in stitches: over the steps of two rows that start
// with the right-side row `firstRow` (the row of the right edge's underarm bind-off) and fill
// `rows` rows, the edge as it stands in the step's second row is compared with the interval of x
// that the curve covers between the step's bottom and its top; the largest distance outside.
// `reference` starts where the edge stands after the underarm bind-off, at the height of
// `firstRow`, with x toward the centre falling on both edges (a left edge is compared with its
// mirror image), and never falls; above its end the curve is taken to go straight up.
[[nodiscard]] double edgeDeviation(const KnittedEdge& edge, Rows firstRow, Rows rows,
                                   const Path& reference, const StitchSize& size);

} // namespace scye
