// Shapes that the measuring guide is drawn with: smooth lines through points, discs, and the tape
// round a limb. Centimetres; drawings, not measurements: nothing here is exact but the points
// given.
#pragma once

#include "curve/path.h"

#include <optional>
#include <vector>

namespace scye {

// A smooth line through the points: the natural cubic spline over the chord lengths, so that the
// curvature has no jumps and runs out at the ends (a draughtsman's lath; textbook tridiagonal
// solution).
[[nodiscard]] Path smooth(const std::vector<Vec2>& through);
// The same for half of something symmetrical: an end on the axis x = 0 meets it squarely.
[[nodiscard]] Path smoothHalf(const std::vector<Vec2>& through);

// The segments from..to-1 of a path.
[[nodiscard]] Path part(const Path& path, std::size_t from, std::size_t to);

[[nodiscard]] Path scaled(const Path& path, double by); // from (0, 0)

[[nodiscard]] Path disc(const Vec2& centre, double radius);

// A tape round something round, seen from a little above: the half that is seen and the half
// behind. Both run from `left` to `right` and leave the line between them by `front` below and
// `back` above.
struct Band {
  Path front, back;
};
[[nodiscard]] Band bandRound(const Vec2& left, const Vec2& right, double front, double back);

// Points placed crosswise to an axis: x to the right of the way from `from` to `to`, y along it,
// the whole way being 1.
struct Frame {
  Vec2 from, to;
  [[nodiscard]] Vec2 along() const { return (to - from).normalized(); }
  [[nodiscard]] Vec2 across() const { return {-along().y(), along().x()}; }
  [[nodiscard]] Vec2 at(double share, double aside) const {
    return from + share * (to - from) + aside * across();
  }
};

// Where the path is at the height y, the outermost x; nothing where it does not reach.
[[nodiscard]] std::optional<double> outermostAt(const Path& path, double y);

} // namespace scye
