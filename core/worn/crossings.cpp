#include "worn/crossings.h"

#include <algorithm>
#include <array>
#include <set>

namespace scye {
namespace {

struct Face {
  std::array<int, 3> point{};
  std::array<Vec3, 3> at;
  Vec3 low, high;
};

// Whether the way from a to b goes through the triangle (Moeller and Trumbore, Journal of Graphics
// Tools 2, 1997).
bool goesThrough(const Vec3& a, const Vec3& b, const std::array<Vec3, 3>& t) {
  const Vec3 way = b - a, u = t[1] - t[0], v = t[2] - t[0], across = way.cross(v);
  const double volume = u.dot(across);
  if (std::abs(volume) < 1e-12) return false;
  const Vec3 from = a - t[0];
  const double s = from.dot(across) / volume;
  if (s <= 0 || s >= 1) return false;
  const Vec3 other = from.cross(u);
  const double r = way.dot(other) / volume, far = v.dot(other) / volume;
  return r > 0 && s + r < 1 && far > 0 && far < 1;
}

} // namespace

int crossingsAbove(double y, const SewnGarment& g, const Points& x) {
  std::vector<Face> faces;
  std::set<std::pair<int, int>> edges;
  double widest = 0;
  for (const ClothTriangle& t : g.triangles) {
    Face f;
    f.point = t.point;
    for (std::size_t k = 0; k < 3; ++k)
      f.at[k] = x.row(t.point[k]).transpose();
    f.low = f.at[0].cwiseMin(f.at[1]).cwiseMin(f.at[2]);
    f.high = f.at[0].cwiseMax(f.at[1]).cwiseMax(f.at[2]);
    if (f.low.y() < y) continue;
    widest = std::max(widest, f.high.x() - f.low.x());
    for (std::size_t k = 0; k < 3; ++k)
      edges.insert(std::minmax(t.point[k], t.point[(k + 1) % 3]));
    faces.push_back(f);
  }
  std::ranges::sort(faces, {}, [](const Face& f) { return f.low.x(); });
  int crossings = 0;
  for (const auto& [i, j] : edges) {
    const Vec3 a = x.row(i).transpose(), b = x.row(j).transpose();
    const Vec3 low = a.cwiseMin(b), high = a.cwiseMax(b);
    auto f = std::ranges::lower_bound(faces, low.x() - widest, {},
                                      [](const Face& face) { return face.low.x(); });
    for (; f != faces.end() && f->low.x() <= high.x(); ++f) {
      if ((f->high.array() < low.array()).any() || (f->low.array() > high.array()).any()) continue;
      if (std::ranges::find(f->point, i) != f->point.end() ||
          std::ranges::find(f->point, j) != f->point.end())
        continue;
      crossings += goesThrough(a, b, f->at);
    }
  }
  return crossings;
}

} // namespace scye
