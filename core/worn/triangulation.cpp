#include "worn/triangulation.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

using Vec2 = Eigen::Vector2d;

double turn(const Vec2& a, const Vec2& b, const Vec2& c) {
  return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
}

// Whether d lies in the circle through a, b, c (counter-clockwise).
bool inCircle(const Vec2& a, const Vec2& b, const Vec2& c, const Vec2& d) {
  const Vec2 p = a - d, q = b - d, r = c - d;
  const double pp = p.squaredNorm(), qq = q.squaredNorm(), rr = r.squaredNorm();
  return p.x() * (q.y() * rr - qq * r.y()) - p.y() * (q.x() * rr - qq * r.x()) +
             pp * (q.x() * r.y() - q.y() * r.x()) >
         0;
}

struct Triangle {
  std::array<int, 3> corner{}; // counter-clockwise
  std::array<int, 3> beyond{}; // the triangle across the edge that faces the corner; -1: none
};

class Mesh {
public:
  explicit Mesh(const std::vector<Vec2>& points) : at_(points) {
    Vec2 low = at_.front(), high = at_.front();
    for (const Vec2& p : at_)
      low = low.cwiseMin(p), high = high.cwiseMax(p);
    const double size = std::max((high - low).maxCoeff(), 1e-9);
    for (std::size_t i = 0; i < at_.size(); ++i) // by no pattern, and the same each time
      at_[i] +=
          1e-7 * size * Vec2(std::sin(12.9898 * double(i + 1)), std::sin(78.233 * double(i + 1)));
    const Vec2 middle = 0.5 * (low + high);
    const int n = int(at_.size());
    at_.push_back(middle + 40 * size * Vec2(-1, -1));
    at_.push_back(middle + 40 * size * Vec2(1, -1));
    at_.push_back(middle + 40 * size * Vec2(0, 1.2));
    triangles_.push_back({{n, n + 1, n + 2}, {-1, -1, -1}});
    last_ = 0;
    for (int i = 0; i < n; ++i)
      insert(i);
  }

  void force(int a, int b) {
    for (int guard = 0; guard < 200 && !hasEdge(a, b); ++guard)
      if (!flipOneAcross(a, b)) return;
  }

  [[nodiscard]] const std::vector<Triangle>& triangles() const { return triangles_; }

private:
  [[nodiscard]] const Vec2& p(int i) const { return at_[std::size_t(i)]; }
  Triangle& t(int i) { return triangles_[std::size_t(i)]; }

  int find(const Vec2& q) {
    int now = last_;
    for (std::size_t steps = 0; steps < triangles_.size() + 3; ++steps) {
      const Triangle& tri = t(now);
      int next = -1;
      for (int k = 0; k < 3 && next < 0; ++k)
        if (turn(p(tri.corner[std::size_t((k + 1) % 3)]), p(tri.corner[std::size_t((k + 2) % 3)]),
                 q) < 0)
          next = tri.beyond[std::size_t(k)];
      if (next < 0) break;
      now = next;
    }
    return now;
  }

  void relink(int triangle, int from, int to) {
    if (triangle < 0) return;
    for (int& b : t(triangle).beyond)
      if (b == from) b = to;
  }

  void insert(int i) {
    const int a = find(p(i)), b = int(triangles_.size()), c = b + 1;
    const Triangle old = t(a);
    const auto [x, y, z] = old.corner;
    t(a) = {{x, y, i}, {b, c, old.beyond[2]}};
    triangles_.push_back({{y, z, i}, {c, a, old.beyond[0]}});
    triangles_.push_back({{z, x, i}, {a, b, old.beyond[1]}});
    relink(old.beyond[0], a, b), relink(old.beyond[1], a, c);
    last_ = a;
    std::vector<int> open{a, b, c}; // whose edge across from the new point may not be Delaunay
    while (!open.empty()) {
      const int now = open.back();
      open.pop_back();
      const Triangle& tri = t(now);
      const int k = int(std::find(tri.corner.begin(), tri.corner.end(), i) - tri.corner.begin());
      const int other = tri.beyond[std::size_t(k)];
      if (k == 3 || other < 0) continue;
      const int far = oppositeIn(other, now);
      if (!inCircle(p(tri.corner[0]), p(tri.corner[1]), p(tri.corner[2]), p(far))) continue;
      flip(now, k);
      open.push_back(now), open.push_back(other);
    }
  }

  [[nodiscard]] int oppositeIn(int triangle, int neighbour) {
    for (int k = 0; k < 3; ++k)
      if (t(triangle).beyond[std::size_t(k)] == neighbour)
        return t(triangle).corner[std::size_t(k)];
    return -1;
  }

  // The edge across from corner k of a becomes the other diagonal.
  void flip(int a, int k) {
    const int b = t(a).beyond[std::size_t(k)];
    const Triangle ta = t(a), tb = t(b);
    int m = 0;
    while (tb.beyond[std::size_t(m)] != a)
      ++m;
    const auto at = [](const std::array<int, 3>& v, int i) { return v[std::size_t(i % 3)]; };
    const int near = at(ta.corner, k), from = at(ta.corner, k + 1), to = at(ta.corner, k + 2);
    const int far = at(tb.corner, m);
    const int nearTo = at(ta.beyond, k + 1), nearFrom = at(ta.beyond, k + 2);
    const int farFrom = at(tb.beyond, m + 1), farTo = at(tb.beyond, m + 2);
    // tb runs far, to, from: across from `to` lies (from, far), across from `from` lies (far, to).
    t(a) = {{near, from, far}, {farFrom, b, nearFrom}};
    t(b) = {{near, far, to}, {farTo, nearTo, a}};
    relink(farFrom, b, a), relink(nearTo, a, b);
  }

  [[nodiscard]] bool hasEdge(int a, int b) const {
    return std::any_of(triangles_.begin(), triangles_.end(), [&](const Triangle& tri) {
      return std::count(tri.corner.begin(), tri.corner.end(), a) &&
             std::count(tri.corner.begin(), tri.corner.end(), b);
    });
  }

  // Flips one edge that crosses a to b and whose triangles make a convex quadrangle.
  bool flipOneAcross(int a, int b) {
    for (int i = 0; i < int(triangles_.size()); ++i)
      for (int k = 0; k < 3; ++k) {
        const Triangle& tri = t(i);
        const int from = tri.corner[std::size_t((k + 1) % 3)],
                  to = tri.corner[std::size_t((k + 2) % 3)], near = tri.corner[std::size_t(k)];
        const int other = tri.beyond[std::size_t(k)];
        if (other < i || from == a || from == b || to == a || to == b) continue;
        const int far = oppositeIn(other, i);
        const bool crosses = turn(p(a), p(b), p(from)) * turn(p(a), p(b), p(to)) < 0 &&
                             turn(p(from), p(to), p(a)) * turn(p(from), p(to), p(b)) < 0;
        const bool convex = turn(p(near), p(far), p(from)) * turn(p(near), p(far), p(to)) < 0;
        if (!crosses || !convex) continue;
        flip(i, k);
        return true;
      }
    return false;
  }

  std::vector<Vec2> at_;
  std::vector<Triangle> triangles_;
  int last_ = 0;
};

} // namespace

bool isInside(const std::vector<Vec2>& polygon, const Vec2& q) {
  bool inside = false;
  for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
    const Vec2 &a = polygon[i], &b = polygon[j];
    if ((a.y() > q.y()) != (b.y() > q.y()) &&
        q.x() < (b.x() - a.x()) * (q.y() - a.y()) / (b.y() - a.y()) + a.x())
      inside = !inside;
  }
  return inside;
}

std::vector<std::array<int, 3>> triangulated(const std::vector<Vec2>& points, int boundary) {
  std::vector<std::array<int, 3>> out;
  if (boundary < 3) return out;
  Mesh mesh(points);
  std::vector<char> present(std::size_t(boundary), 0);
  for (const Triangle& tri : mesh.triangles())
    for (std::size_t k = 0; k < 3; ++k) {
      const int a = tri.corner[k], b = tri.corner[(k + 1) % 3];
      if (a < boundary && b == (a + 1) % boundary) present[std::size_t(a)] = 1;
      if (b < boundary && a == (b + 1) % boundary) present[std::size_t(b)] = 1;
    }
  for (int i = 0; i < boundary; ++i)
    if (!present[std::size_t(i)]) mesh.force(i, (i + 1) % boundary);
  const std::vector<Vec2> polygon(points.begin(), points.begin() + boundary);
  const int n = int(points.size());
  for (const Triangle& tri : mesh.triangles()) {
    const auto [a, b, c] = tri.corner;
    if (a >= n || b >= n || c >= n) continue;
    const auto at = [&](int i) { return points[std::size_t(i)]; };
    if (isInside(polygon, (at(a) + at(b) + at(c)) / 3)) out.push_back(tri.corner);
  }
  return out;
}

} // namespace scye
