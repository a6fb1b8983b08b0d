#include "curve/path.h"

#include "curve/quadrature.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace scye {

Cubic Cubic::line(const Vec2& a, const Vec2& b) {
  return {{a, a + (b - a) / 3.0, a + (b - a) * (2.0 / 3.0), b}};
}

bool Cubic::isStraight() const {
  const Vec2 chord = p[3] - p[0];
  const double tolerance = 1e-12 * std::max(1.0, chord.squaredNorm());
  const auto off = [&](const Vec2& q) {
    return std::abs(chord.x() * (q.y() - p[0].y()) - chord.y() * (q.x() - p[0].x()));
  };
  return off(p[1]) <= tolerance && off(p[2]) <= tolerance;
}

Vec2 Cubic::at(double t) const {
  const double s = 1 - t;
  return s * s * s * p[0] + 3 * s * s * t * p[1] + 3 * s * t * t * p[2] + t * t * t * p[3];
}

Vec2 Cubic::derivative(double t) const {
  const double s = 1 - t;
  return 3 * (s * s * (p[1] - p[0]) + 2 * s * t * (p[2] - p[1]) + t * t * (p[3] - p[2]));
}

Cubic Cubic::reversed() const {
  return {{p[3], p[2], p[1], p[0]}};
}

std::pair<Cubic, Cubic> Cubic::split(double t) const {
  const auto mix = [t](const Vec2& a, const Vec2& b) -> Vec2 { return a + t * (b - a); };
  const Vec2 a = mix(p[0], p[1]), b = mix(p[1], p[2]), c = mix(p[2], p[3]);
  const Vec2 ab = mix(a, b), bc = mix(b, c), m = mix(ab, bc);
  return {Cubic{{p[0], a, ab, m}}, Cubic{{m, bc, c, p[3]}}};
}

double length(const Cubic& c, double t0, double t1, double relative) {
  return integrate([&](double t) { return c.derivative(t).norm(); }, t0, t1, relative);
}

double length(const Cubic& c, double relative) {
  return c.isStraight() && (c.p[1] - c.p[0]).dot(c.p[3] - c.p[2]) >= 0 &&
                 (c.p[1] - c.p[0]).dot(c.p[2] - c.p[1]) >= 0
             ? (c.p[3] - c.p[0]).norm()
             : length(c, 0.0, 1.0, relative);
}

Path Path::polyline(const std::vector<Vec2>& points) {
  Path path(points.empty() ? Vec2(0, 0) : points.front());
  for (const Vec2& p : points)
    path.lineTo(p);
  return path;
}

Path& Path::lineTo(const Vec2& to) {
  if ((to - end()).norm() > 0) segments_.push_back(Cubic::line(end(), to));
  return *this;
}

Path& Path::cubicTo(const Vec2& c1, const Vec2& c2, const Vec2& to) {
  segments_.push_back(Cubic{{end(), c1, c2, to}});
  return *this;
}

Path& Path::append(const Path& next) {
  if (next.empty()) return *this;
  lineTo(next.start());
  segments_.insert(segments_.end(), next.segments_.begin(), next.segments_.end());
  return *this;
}

Path Path::reversed() const {
  Path out(end());
  for (auto it = segments_.rbegin(); it != segments_.rend(); ++it)
    out.segments_.push_back(it->reversed());
  return out;
}

Path Path::mirroredX() const {
  const auto flip = [](const Vec2& v) { return Vec2(-v.x(), v.y()); };
  Path out(flip(start_));
  for (const Cubic& c : segments_)
    out.segments_.push_back(Cubic{{flip(c.p[0]), flip(c.p[1]), flip(c.p[2]), flip(c.p[3])}});
  return out;
}

Path Path::moved(const Vec2& by) const {
  Path out(start_ + by);
  for (const Cubic& c : segments_)
    out.segments_.push_back(Cubic{{c.p[0] + by, c.p[1] + by, c.p[2] + by, c.p[3] + by}});
  return out;
}

double Path::length(double relative) const {
  double sum = 0;
  for (const Cubic& c : segments_)
    sum += scye::length(c, relative);
  return sum;
}

std::vector<Vec2> Path::flattened(int perCurve) const {
  std::vector<Vec2> points{start_};
  for (const Cubic& c : segments_) {
    if (!c.isStraight())
      for (int i = 1; i < perCurve; ++i)
        points.push_back(c.at(double(i) / perCurve));
    points.push_back(c.end());
  }
  return points;
}

void Box::add(const Path& path) {
  for (const Vec2& p : path.flattened())
    add(p);
}

} // namespace scye
