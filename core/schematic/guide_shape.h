// Shapes that the measuring guide is drawn with: smooth lines through points, discs, and the tape round a
// limb. Centimetres; drawings, not measurements: nothing here is exact but the points given.
#pragma once

#include "curve/path.h"

#include <optional>
#include <vector>

namespace scye {

// A smooth line through the points: cubics whose tangents are those of the parabola through each three
// neighbours, by chord lengths (Barry and Goldman's non-uniform Catmull-Rom spline, from memory).
[[nodiscard]] Path smooth(const std::vector<Vec2>& through);
// The same for half of something symmetrical: an end on the axis x = 0 meets it squarely.
[[nodiscard]] Path smoothHalf(const std::vector<Vec2>& through);

[[nodiscard]] Path disc(const Vec2& centre, double radius);

// A tape round something round, seen from a little above: the half that is seen and the half behind.
// Both run from `left` to `right` and leave the line between them by `front` below and `back` above.
struct Band {
  Path front, back;
};
[[nodiscard]] Band bandRound(const Vec2& left, const Vec2& right, double front, double back);

// Points placed crosswise to an axis: x to the right of the way from `from` to `to`, y along it, the
// whole way being 1.
struct Frame {
  Vec2 from, to;
  [[nodiscard]] Vec2 along() const { return (to - from).normalized(); }
  [[nodiscard]] Vec2 across() const { return {-along().y(), along().x()}; }
  [[nodiscard]] Vec2 at(double share, double aside) const { return from + share * (to - from) + aside * across(); }
};

// Where the path is at the height y, the outermost x; nothing where it does not reach.
[[nodiscard]] std::optional<double> outermostAt(const Path& path, double y);

} // namespace scye
