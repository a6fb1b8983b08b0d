#include "worn/worn_measures.h"

#include <algorithm>
#include <numeric>

namespace scye {
namespace {

constexpr double kRibFlat = 0.93; // a rib lies so much narrower than the cloth beside it

// How far points of the sleeve lie on the body's side of the bodice under the arm.
double layersThrough(const SewnGarment& g, const Points& x, const BodyForm& body) {
  // Bodice triangles, by cells of their middles, so that near ones are found.
  struct Face {
    Vec3 middle, normal;
  };
  std::vector<Face> faces;
  for (const ClothTriangle& t : g.triangles) {
    if (t.panel == PanelId::Sleeve || t.panel == PanelId::Cuff) continue;
    const Vec3 a = x.row(t.point[0]), b = x.row(t.point[1]), c = x.row(t.point[2]);
    const Vec3 n = (b - a).cross(c - a);
    if (n.norm() < 1e-9) continue;
    faces.push_back({(a + b + c) / 3, n.normalized()});
  }
  std::sort(faces.begin(), faces.end(),
            [](const Face& a, const Face& b) { return a.middle.y() < b.middle.y(); });
  std::vector<char> seam(std::size_t(g.points), 0), seen(std::size_t(g.points), 0);
  for (const Seam& s : g.seams)
    if (s.kind == SeamKind::Armhole)
      for (const auto& [a, b] : s.pairs)
        seam[std::size_t(g.vertices[std::size_t(a)].point)] = 1;
  const double reach = 1.5 * g.spacing, under = body.measures().armpitY;
  double deepest = 0;
  for (const ClothVertex& v : g.vertices) {
    const std::size_t i = std::size_t(v.point);
    if (v.panel != PanelId::Sleeve || seam[i] || seen[i]) continue;
    seen[i] = 1;
    const Vec3 p = x.row(v.point);
    if (p.y() > under) continue; // the cap folds over its own seam above
    double nearest = reach;
    const Face* near = nullptr;
    auto from = std::lower_bound(faces.begin(), faces.end(), p.y() - reach,
                                 [](const Face& f, double y) { return f.middle.y() < y; });
    for (; from != faces.end() && from->middle.y() < p.y() + reach; ++from) {
      const double d = (from->middle - p).norm();
      if (d < nearest) nearest = d, near = &*from;
    }
    if (near) deepest = std::max(deepest, -(p - near->middle).dot(near->normal));
  }
  return deepest;
}

} // namespace

std::vector<double> stretchOf(const SewnGarment& g, const Points& x) {
  std::vector<double> out;
  out.reserve(g.triangles.size());
  for (const ClothTriangle& t : g.triangles) {
    Vec3 u = Vec3::Zero(), v = Vec3::Zero();
    for (std::size_t a = 0; a < 3; ++a) {
      const Vec3 p = x.row(t.point[a]).transpose();
      u += t.gradient[a].x() * p, v += t.gradient[a].y() * p;
    }
    if (t.fabric == Fabric::Rib && t.panel != PanelId::Cuff) u *= kRibFlat;
    const double a = u.squaredNorm(), b = v.squaredNorm(), c = u.dot(v);
    const double middle = 0.5 * (a + b), r = std::hypot(0.5 * (a - b), c);
    out.push_back(std::sqrt(middle + r) - 1);
  }
  return out;
}

std::vector<double> pullOf(const SewnGarment& g, const Points& x) {
  const std::vector<double> stretch = stretchOf(g, x);
  std::vector<double> sum(std::size_t(g.points), 0), area(std::size_t(g.points), 0);
  for (std::size_t k = 0; k < g.triangles.size(); ++k)
    for (const int p : g.triangles[k].point) {
      sum[std::size_t(p)] += g.triangles[k].area * stretch[k];
      area[std::size_t(p)] += g.triangles[k].area;
    }
  for (std::size_t i = 0; i < sum.size(); ++i)
    sum[i] = area[i] > 0 ? sum[i] / area[i] : 0;
  return sum;
}

WornMeasures measuresOf(const Worn& worn) {
  const SewnGarment& g = *worn.garment;
  const Points& x = worn.state.x;
  WornMeasures m;
  const auto at = [&](int vertex) { return x.row(g.vertices[std::size_t(vertex)].point); };
  for (const Seam& seam : g.seams)
    if (seam.kind == SeamKind::Armhole)
      for (std::size_t i = 1; i < seam.pairs.size(); ++i)
        m.seam += (at(seam.pairs[i].first) - at(seam.pairs[i - 1].first)).norm();
  const auto mean = [&](const std::vector<int>& points) {
    double sum = 0;
    for (const int p : points)
      sum += x(p, 1);
    return points.empty() ? 0 : sum / double(points.size());
  };
  m.hemY = mean(g.hem), m.cuffY = mean(g.cuffEdge);
  std::vector<double> stretch = stretchOf(g, x);
  std::sort(stretch.begin(), stretch.end());
  m.mostStretch = stretch.back();
  m.pull = stretch[stretch.size() * 95 / 100];
  for (int i = 0; i < g.points; ++i)
    m.deepest = std::max(m.deepest, -worn.body.distance(x.row(i).transpose()));
  m.layersThrough = layersThrough(g, x, worn.body);
  return m;
}

std::optional<double> hemLift(const std::shared_ptr<const SewnGarment>& garment,
                              const BodyForm& body, const Watch& watch) {
  bool stopped = false;
  const Watch asked = [&](const DrapeState& state, const BodyForm& form) {
    return stopped = stopped || (watch && watch(state, form));
  };
  const Worn down = canonicalDrape(garment, body, 0, asked);
  if (stopped) return std::nullopt;
  const Worn up = canonicalDrape(garment, body, kLifted, asked);
  if (stopped) return std::nullopt;
  return measuresOf(up).hemY - measuresOf(down).hemY;
}

} // namespace scye
