// Plane curves in centimetres: straight lines and cubic Bezier segments, and paths made of them.
// Evaluation is exact to rounding. Lengths are computed by Gauss-Legendre quadrature of the speed
// |dP/dt| (never by counting sample points) with the error bound the caller asks for.
#pragma once

#include <Eigen/Core>
#include <array>
#include <vector>

namespace scye {

using Vec2 = Eigen::Vector2d;

// A cubic Bezier segment; a straight line is the cubic with its inner points on the thirds.
// Parameter t in [0, 1]; values outside are evaluated, not clamped.
struct Cubic {
  std::array<Vec2, 4> p;

  [[nodiscard]] static Cubic line(const Vec2& a, const Vec2& b);
  [[nodiscard]] bool isStraight() const; // all four points on one line, to rounding
  [[nodiscard]] const Vec2& start() const { return p[0]; }
  [[nodiscard]] const Vec2& end() const { return p[3]; }
  [[nodiscard]] Vec2 at(double t) const;
  [[nodiscard]] Vec2 derivative(double t) const; // dP/dt
  [[nodiscard]] Cubic reversed() const;
  [[nodiscard]] std::pair<Cubic, Cubic> split(double t) const; // de Casteljau
};

// Length of the part between t0 and t1 (t0 <= t1) by adaptive Gauss-Legendre: an interval is halved
// until 16 points on the whole and 2 x 16 on the halves agree within `relative` of the running
// total (at most 40 halvings deep, where the speed vanishes). Two estimates may agree by chance
// where the speed nearly vanishes: asked for 1e-12, 2 of 20,000 random cubics were off by up to
// 7e-10; asked for kLengthTolerance, none by 1e-11 (tests/reference/arc_length.cpp). Cost: 48 speed
// evaluations for a smooth piece.
inline constexpr double kLengthTolerance = 1e-14;
[[nodiscard]] double length(const Cubic& c, double relative = kLengthTolerance);
[[nodiscard]] double length(const Cubic& c, double t0, double t1,
                            double relative = kLengthTolerance);

// A connected run of segments: each starts where the one before ends.
class Path {
public:
  Path() = default;
  explicit Path(Vec2 start) : start_(std::move(start)) {}

  [[nodiscard]] static Path polyline(const std::vector<Vec2>& points);

  Path& lineTo(const Vec2& to); // a zero-length line is left out
  Path& cubicTo(const Vec2& c1, const Vec2& c2, const Vec2& to);
  Path& append(const Path& next); // joined by a line where the ends differ

  [[nodiscard]] bool empty() const { return segments_.empty(); }
  [[nodiscard]] const std::vector<Cubic>& segments() const { return segments_; }
  [[nodiscard]] const Vec2& start() const { return start_; }
  [[nodiscard]] const Vec2& end() const {
    return segments_.empty() ? start_ : segments_.back().end();
  }
  [[nodiscard]] Path reversed() const;
  [[nodiscard]] Path mirroredX() const; // x -> -x, same direction of travel
  [[nodiscard]] Path moved(const Vec2& by) const;
  [[nodiscard]] double length(double relative = kLengthTolerance) const;
  // Corners of every straight piece and n points on every curved one, ends included.
  [[nodiscard]] std::vector<Vec2> flattened(int perCurve = 32) const;

private:
  Vec2 start_ = Vec2::Zero();
  std::vector<Cubic> segments_;
};

// The axis-aligned box round a set of points; empty until something is added.
struct Box {
  Vec2 low = Vec2::Constant(1e300), high = Vec2::Constant(-1e300);
  void add(const Vec2& p) { low = low.cwiseMin(p), high = high.cwiseMax(p); }
  void add(const Path& path); // by flattening: within 0.1 % of a curved segment's size
  void add(const Box& other) {
    if (!other.empty()) add(other.low), add(other.high);
  }
  [[nodiscard]] bool empty() const { return low.x() > high.x(); }
  [[nodiscard]] Vec2 size() const { return empty() ? Vec2(0, 0) : Vec2(high - low); }
};

} // namespace scye
