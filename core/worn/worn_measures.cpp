#include "worn/worn_measures.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace scye {
namespace {

constexpr double kSliver = 0.2;   // of the area of the mesh's usual triangle
constexpr double kRibFlat = 0.93; // a rib lies so much narrower than the cloth beside it

// The shares of a triangle's corners in its point nearest to p (Ericson, Real-Time Collision
// Detection, 2005, section 5.1.5).
Vec3 nearestShares(const Vec3& p, const std::array<Vec3, 3>& t) {
  const Vec3 ab = t[1] - t[0], ac = t[2] - t[0], ap = p - t[0], bp = p - t[1], cp = p - t[2];
  const double d1 = ab.dot(ap), d2 = ac.dot(ap), d3 = ab.dot(bp), d4 = ac.dot(bp), d5 = ab.dot(cp),
               d6 = ac.dot(cp);
  if (d1 <= 0 && d2 <= 0) return {1, 0, 0};
  if (d3 >= 0 && d4 <= d3) return {0, 1, 0};
  if (d6 >= 0 && d5 <= d6) return {0, 0, 1};
  const double vc = d1 * d4 - d3 * d2, vb = d5 * d2 - d1 * d6, va = d3 * d6 - d5 * d4;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) return {1 - d1 / (d1 - d3), d1 / (d1 - d3), 0};
  if (vb <= 0 && d2 >= 0 && d6 <= 0) return {1 - d2 / (d2 - d6), 0, d2 / (d2 - d6)};
  if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
    const double share = (d4 - d3) / ((d4 - d3) + (d5 - d6));
    return {0, 1 - share, share};
  }
  const double all = va + vb + vc;
  return {va / all, vb / all, vc / all};
}

// How far points of the sleeve lie on the body's side of the bodice under the arm. One that is
// nearest to the armhole's seam, where the bodice ends, has gone through nothing.
double layersThrough(const SewnGarment& g, const Points& x, const BodyForm& body) {
  std::vector<char> seam(std::size_t(g.points), 0), seen(std::size_t(g.points), 0);
  for (const Seam& s : g.seams)
    if (s.kind == SeamKind::Armhole)
      for (const auto& [a, b] : s.pairs)
        seam[std::size_t(g.vertices[std::size_t(a)].point)] = 1;
  // Bodice triangles by height, so that near ones are found.
  struct Face {
    std::array<Vec3, 3> at;
    Vec3 inside; // 1 for a corner that is not of the seam
    double y;
  };
  std::vector<Face> faces;
  for (const ClothTriangle& t : g.triangles) {
    if (t.panel == PanelId::Sleeve || t.panel == PanelId::Cuff) continue;
    Face f;
    for (std::size_t a = 0; a < 3; ++a) {
      f.at[a] = x.row(t.point[a]);
      f.inside[Eigen::Index(a)] = seam[std::size_t(t.point[a])] ? 0 : 1;
    }
    f.y = (f.at[0].y() + f.at[1].y() + f.at[2].y()) / 3;
    faces.push_back(f);
  }
  std::ranges::sort(faces, {}, &Face::y);
  const double reach = 1.5 * g.spacing, under = body.measures().armpitY;
  double deepest = 0;
  for (const ClothVertex& v : g.vertices) {
    const std::size_t i = std::size_t(v.point);
    if (v.panel != PanelId::Sleeve || seam[i] || seen[i]) continue;
    seen[i] = 1;
    const Vec3 p = x.row(v.point);
    if (p.y() > under) continue; // the cap folds over its own seam above
    double nearest = reach, through = 0;
    auto from = std::ranges::lower_bound(faces, p.y() - 2 * reach, {}, &Face::y);
    for (; from != faces.end() && from->y < p.y() + 2 * reach; ++from) {
      const auto& t = from->at;
      const Vec3 share = nearestShares(p, t);
      const Vec3 away = p - share[0] * t[0] - share[1] * t[1] - share[2] * t[2];
      if (away.norm() >= nearest) continue;
      nearest = away.norm();
      const Vec3 normal = (t[1] - t[0]).cross(t[2] - t[0]);
      const bool atSeam = share.dot(from->inside) < 1e-9;
      through = atSeam ? 0 : -away.dot(unit(normal, away));
    }
    deepest = std::max(deepest, through);
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
  // What a sliver shows is the mesh's doing, not the cloth's.
  const double usual = 0.25 * std::sqrt(3.0) * g.spacing * g.spacing;
  for (std::size_t k = 0; k < stretch.size(); ++k)
    if (g.triangles[k].area < kSliver * usual) stretch[k] = 0;
  std::sort(stretch.begin(), stretch.end());
  m.mostStretch = stretch.back();
  m.pull = stretch[stretch.size() * 95 / 100];
  for (int i = 0; i < g.points; ++i)
    m.deepest = std::max(m.deepest, -worn.body.distance(x.row(i).transpose()));
  m.layersThrough = layersThrough(g, x, worn.body);
  return m;
}

double liftedArm(const BodyForm& body) {
  return std::min(90.0, std::max(60.0, body.hanging() + 30));
}

std::optional<double> hemLift(const std::shared_ptr<const SewnGarment>& garment,
                              const BodyForm& body, const Watch& watch) {
  bool stopped = false;
  const Watch asked = [&](const DrapeState& state, const BodyForm& form) {
    return stopped = stopped || (watch && watch(state, form));
  };
  const Worn down = canonicalDrape(garment, body, 0, asked);
  if (stopped) return std::nullopt;
  const Worn up = canonicalDrape(garment, body, liftedArm(body), asked);
  if (stopped) return std::nullopt;
  return measuresOf(up).hemY - measuresOf(down).hemY;
}

} // namespace scye
