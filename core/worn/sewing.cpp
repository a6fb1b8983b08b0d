#include "worn/sewing.h"

#include "worn/panels.h"
#include "worn/strips.h"

#include <Eigen/LU>

#include <algorithm>
#include <map>
#include <numeric>

namespace scye {
namespace {

constexpr double kSpacing = 1.4;  // cm, of an adult's mesh
constexpr double kRibDraw = 0.93; // a rib draws in (common practice: 5 to 15 %)

// Joins vertices into points.
class Welds {
public:
  explicit Welds(std::size_t n) : up_(n) { std::iota(up_.begin(), up_.end(), 0); }
  int root(int i) {
    while (up_[std::size_t(i)] != i)
      i = up_[std::size_t(i)] = up_[std::size_t(up_[std::size_t(i)])];
    return i;
  }
  void join(int a, int b) {
    const int x = root(a), y = root(b);
    up_[std::size_t(std::max(x, y))] = std::min(x, y);
  }

private:
  std::vector<int> up_;
};

class Sewer {
public:
  Sewer(SewnGarment& garment, const Panels& panels) : g_(garment), panels_(panels) {}

  void run() {
    layPanels();
    sewSeams();
    numberPoints();
    notches();
    threads();
    edges();
    addStrips(g_, chains());
    closePanel();
  }

private:
  [[nodiscard]] std::vector<int> run(PanelId id, RunName name) const {
    const Panel& panel = id == PanelId::Back    ? panels_.back
                         : id == PanelId::Front ? panels_.front
                                                : panels_.sleeve;
    const int k = panel.find(name);
    std::vector<int> out;
    if (k < 0) return out;
    for (const int i : g_.meshes[std::size_t(id)].runs[std::size_t(k)])
      out.push_back(base_[std::size_t(id)] + i);
    return out;
  }
  [[nodiscard]] std::vector<int> back(std::vector<int> run) const {
    std::reverse(run.begin(), run.end());
    return run;
  }
  [[nodiscard]] int pointOf(int vertex) const { return g_.vertices[std::size_t(vertex)].point; }

  void layPanels() {
    for (const PanelId id : {PanelId::Back, PanelId::Front, PanelId::Sleeve}) {
      const PieceMesh& mesh = g_.meshes[std::size_t(id)];
      base_[std::size_t(id)] = int(g_.vertices.size());
      for (const Vec2& p : mesh.at)
        g_.vertices.push_back({p, id, 0});
    }
  }

  void sew(SeamKind kind, const std::vector<int>& a, const std::vector<int>& b) {
    if (a.size() != b.size() || a.empty()) return;
    Seam seam{kind, {}};
    for (std::size_t i = 0; i < a.size(); ++i)
      seam.pairs.emplace_back(a[i], b[i]);
    g_.seams.push_back(std::move(seam));
  }

  void sewSeams() {
    using enum RunName;
    const auto onBack = [&](RunName n) { return run(PanelId::Back, n); };
    const auto onFront = [&](RunName n) { return run(PanelId::Front, n); };
    const auto onSleeve = [&](RunName n) { return run(PanelId::Sleeve, n); };
    sew(SeamKind::Side, onBack(SideLow), onFront(SideLow));
    sew(SeamKind::Side, onBack(SideHigh), onFront(SideHigh));
    sew(SeamKind::Dart, onFront(DartLow), back(onFront(DartHigh)));
    sew(SeamKind::Shoulder, onBack(Shoulder), onFront(Shoulder));
    sew(SeamKind::Armhole, onFront(Armhole), onSleeve(CapFront));
    sew(SeamKind::Armhole, onBack(Armhole), back(onSleeve(CapBack)));
    sew(SeamKind::SleeveSeam, onSleeve(FrontSeam), back(onSleeve(BackSeam)));
  }

  void numberPoints() {
    Welds welds(g_.vertices.size());
    for (const Seam& seam : g_.seams)
      for (const auto& [a, b] : seam.pairs)
        welds.join(a, b);
    std::vector<int> number(g_.vertices.size(), -1);
    for (std::size_t i = 0; i < g_.vertices.size(); ++i) {
      const std::size_t root = std::size_t(welds.root(int(i)));
      if (number[root] < 0) {
        number[root] = g_.points++;
        g_.layer.push_back(g_.vertices[i].panel == PanelId::Sleeve ? Layer::Sleeve : Layer::Bodice);
      }
      g_.vertices[i].point = number[root];
    }
    for (const Seam& seam : g_.seams)
      if (seam.kind == SeamKind::Armhole)
        for (const auto& [a, b] : seam.pairs)
          g_.layer[std::size_t(pointOf(a))] = Layer::Seam;
    g_.onMirror.assign(std::size_t(g_.points), 0);
    for (const int v : run(PanelId::Back, RunName::Closing))
      g_.onMirror[std::size_t(pointOf(v))] = 1;
    if (!g_.pattern.fronts.open)
      for (const int v : run(PanelId::Front, RunName::Closing))
        g_.onMirror[std::size_t(pointOf(v))] = 1;
  }

  void notches() {
    const auto mark = [&](bool ofBack, const std::vector<int>& armhole, const std::vector<int>& cap,
                          const SeamPlaces& places) {
      for (std::size_t i = 0; i < places.notch.size(); ++i) {
        const std::size_t at = std::size_t(places.notch[i]);
        g_.notches.push_back({int(i) + 1, ofBack, armhole[at], cap[at]});
      }
    };
    mark(true, run(PanelId::Back, RunName::Armhole), back(run(PanelId::Sleeve, RunName::CapBack)),
         panels_.backSeam);
    mark(false, run(PanelId::Front, RunName::Armhole), run(PanelId::Sleeve, RunName::CapFront),
         panels_.frontSeam);
  }

  // A seam is as long as the longer of its edges, but gathers are drawn up to the armhole. Edges
  // count as they are knitted, not as the mesh cuts their corners.
  void threads() {
    const auto at = [&](int v) { return g_.vertices[std::size_t(v)].at; };
    for (const Seam& seam : g_.seams) {
      if (seam.kind != SeamKind::Armhole && seam.kind != SeamKind::Shoulder) continue;
      const bool ofBack = g_.vertices[std::size_t(seam.pairs.front().first)].panel == PanelId::Back;
      const LetIn& let = (ofBack ? g_.pattern.backSeam : g_.pattern.frontSeam).letIn;
      const bool armhole = seam.kind == SeamKind::Armhole;
      const std::vector<double>& s = (ofBack ? panels_.backSeam : panels_.frontSeam).s;
      const std::size_t from = g_.threads.size();
      double edge = 0, other = 0, sum = 0;
      for (std::size_t i = 1; i < seam.pairs.size(); ++i) {
        const auto [a0, b0] = seam.pairs[i - 1];
        const auto [a1, b1] = seam.pairs[i];
        const double first = armhole ? s[i] - s[i - 1] : (at(a1) - at(a0)).norm();
        const bool gathered = armhole && let.gathers() && edge + 0.5 * first > let.gathersFrom;
        const double second = gathered  ? first
                              : armhole ? std::abs(let.onCap(s[i]) - let.onCap(s[i - 1]))
                                        : (at(b1) - at(b0)).norm();
        g_.threads.push_back({pointOf(a0), pointOf(a1), std::max(first, second)});
        edge += first, other += second, sum += std::max(first, second);
      }
      // Here the one edge is longer, there the other: the seam is no longer than the longer of
      // them.
      for (std::size_t k = from; k < g_.threads.size(); ++k)
        g_.threads[k].length *= std::max(edge, other) / sum;
    }
  }

  void edges() {
    const auto points = [&](const std::vector<int>& vertices) {
      std::vector<int> out;
      for (const int v : vertices)
        out.push_back(pointOf(v));
      return out;
    };
    const std::vector<int> backHem = points(run(PanelId::Back, RunName::CastOn)),
                           frontHem = points(run(PanelId::Front, RunName::CastOn)),
                           cuff = points(run(PanelId::Sleeve, RunName::CastOn));
    g_.rims = {backHem, frontHem};
    g_.hem = backHem;
    g_.hem.insert(g_.hem.end(), frontHem.begin(), frontHem.end());
    g_.cuffEdge = cuff;
    if (g_.pattern.sleeve.cuffBand <= 0) g_.rims.push_back(cuff);
    if (g_.pattern.fronts.open && !g_.pattern.fronts.pickedUp)
      g_.rims.push_back(points(run(PanelId::Front, RunName::Closing)));
    if (g_.pattern.back.slitFrom >= 0) {
      Seam slit{SeamKind::Slit, {}};
      for (const int v : run(PanelId::Back, RunName::Closing))
        if (g_.vertices[std::size_t(v)].at.y() >= g_.pattern.back.slitFrom - 1e-6)
          slit.pairs.emplace_back(v, v);
      if (slit.pairs.size() > 1) g_.seams.push_back(std::move(slit));
    }
  }

  [[nodiscard]] Chains chains() const {
    Chains c;
    c.frontClosing = back(run(PanelId::Front, RunName::Closing)); // upward
    c.neck = back(run(PanelId::Front, RunName::Neck));
    const std::vector<int> backNeck = run(PanelId::Back, RunName::Neck);
    c.neck.insert(c.neck.end(), backNeck.begin() + 1, backNeck.end());
    c.cuff = run(PanelId::Sleeve, RunName::CastOn);
    return c;
  }

  // The fronts of a jacket meet on the middle line: at the buttons, and less firmly between them.
  void closePanel() {
    if (!g_.pattern.fronts.open) return;
    for (const double y : g_.pattern.fronts.buttons)
      g_.buttons.emplace_back(0, y);
    if (g_.pattern.fronts.pickedUp) return; // its strip is closed where it is made
    const double top = g_.pattern.front.closing.front().y();
    const auto at = [&](double y, double strength) {
      const PieceMesh& mesh = g_.meshes[std::size_t(PanelId::Front)];
      const Vec2 p(0, y);
      for (const auto& t : mesh.triangles) {
        const Vec2 a = mesh.at[std::size_t(t[0])], u = mesh.at[std::size_t(t[1])] - a,
                   v = mesh.at[std::size_t(t[2])] - a, d = p - a;
        const double area = u.x() * v.y() - u.y() * v.x();
        const double s = (d.x() * v.y() - d.y() * v.x()) / area,
                     r = (u.x() * d.y() - u.y() * d.x()) / area;
        if (s < -1e-9 || r < -1e-9 || s + r > 1 + 1e-9) continue;
        Closure closure{{}, {1 - s - r, s, r}, strength};
        for (std::size_t k = 0; k < 3; ++k)
          closure.point[k] = pointOf(base_[std::size_t(PanelId::Front)] + t[k]);
        g_.closures.push_back(closure);
        return;
      }
    };
    const int between = std::max(2, int(top / g_.spacing));
    for (int i = 0; i <= between; ++i)
      at(std::clamp(top * i / between, 0.1, top - 0.1), kBetweenButtons);
    for (const double y : g_.pattern.fronts.buttons)
      at(std::clamp(y, 0.1, top - 0.1), kAtButton);
  }

  SewnGarment& g_;
  const Panels& panels_;
  std::array<int, 3> base_{};
};

// The panels' triangles as they lie relaxed. A panel's outline is counter-clockwise as seen with x
// to the right; back and sleeve are seen from inside that way.
void layTriangles(SewnGarment& g) {
  int base = 0;
  for (const PanelId id : {PanelId::Back, PanelId::Front, PanelId::Sleeve}) {
    const PieceMesh& mesh = g.meshes[std::size_t(id)];
    const BodicePattern& bodice = id == PanelId::Back ? g.pattern.back : g.pattern.front;
    const bool sleeve = id == PanelId::Sleeve;
    const double hem = sleeve ? g.pattern.sleeve.cuff : bodice.hem;
    const Fabric below = sleeve ? Fabric::Rib : bodice.hemFabric;
    for (const auto& t : mesh.triangles) {
      ClothTriangle tri;
      tri.panel = id;
      const double middle = (mesh.at[std::size_t(t[0])].y() + mesh.at[std::size_t(t[1])].y() +
                             mesh.at[std::size_t(t[2])].y()) /
                            3;
      tri.fabric = middle < hem ? below : Fabric::Plain;
      const double draw = tri.fabric == Fabric::Rib ? kRibDraw : 1;
      const bool inside = id != PanelId::Front;
      for (std::size_t k = 0; k < 3; ++k) {
        const std::size_t from = inside ? 2 - k : k;
        tri.vertex[k] = base + t[from];
        const Vec2 p = mesh.at[std::size_t(t[from])];
        tri.flat[k] = Vec2((inside ? -draw : draw) * p.x(), p.y());
      }
      g.triangles.push_back(tri);
    }
    base += int(mesh.at.size());
  }
}

double densityOf(const SewnGarment& g, Fabric fabric) {
  return g.pattern.areaWeight * (fabric == Fabric::Facing ? 2 : 1);
}

void measureTriangles(SewnGarment& g) {
  g.mass.assign(std::size_t(g.points), 0);
  g.area.assign(std::size_t(g.points), 0);
  for (ClothTriangle& t : g.triangles) {
    Eigen::Matrix2d d;
    d << t.flat[1] - t.flat[0], t.flat[2] - t.flat[0];
    const double twice = d.determinant();
    t.area = 0.5 * twice;
    const Eigen::Matrix2d inverse = d.inverse();
    t.gradient[1] = inverse.row(0).transpose();
    t.gradient[2] = inverse.row(1).transpose();
    t.gradient[0] = -t.gradient[1] - t.gradient[2];
    for (std::size_t k = 0; k < 3; ++k) {
      t.point[k] = g.vertices[std::size_t(t.vertex[k])].point;
      g.mass[std::size_t(t.point[k])] += densityOf(g, t.fabric) * t.area / 3;
      g.area[std::size_t(t.point[k])] += t.area / 3;
    }
  }
}

double cotangent(const ClothTriangle& t, std::size_t corner) {
  const Vec2 a = t.flat[(corner + 1) % 3] - t.flat[corner],
             b = t.flat[(corner + 2) % 3] - t.flat[corner];
  return a.dot(b) / std::max(std::abs(a.x() * b.y() - a.y() * b.x()), 1e-9);
}

// Quadratic bending over each shared edge (Bergou, Wardetzky, Harmon, Zorin and Grinspun,
// Symposium on Geometry Processing 2006).
void findHinges(SewnGarment& g) {
  std::map<std::pair<int, int>, std::vector<std::pair<int, int>>> across; // triangle, corner
  for (std::size_t i = 0; i < g.triangles.size(); ++i)
    for (std::size_t k = 0; k < 3; ++k)
      across[std::minmax(g.triangles[i].point[(k + 1) % 3], g.triangles[i].point[(k + 2) % 3])]
          .emplace_back(int(i), int(k));
  for (const auto& [edge, sides] : across) {
    const bool mirrored = sides.size() == 1 && g.onMirror[std::size_t(edge.first)] &&
                          g.onMirror[std::size_t(edge.second)];
    if (sides.size() != 2 && !mirrored) continue;
    const auto [i, k] = sides.front();
    const auto [j, m] = sides.back();
    const ClothTriangle &a = g.triangles[std::size_t(i)], &b = g.triangles[std::size_t(j)];
    const std::size_t ka = std::size_t(k), kb = std::size_t(m);
    Hinge h;
    h.acrossMirror = mirrored;
    h.point = {a.point[(ka + 1) % 3], a.point[(ka + 2) % 3], a.point[ka], b.point[kb]};
    const bool turned = b.point[(kb + 1) % 3] == h.point[1];
    const double a0 = cotangent(a, (ka + 1) % 3), a1 = cotangent(a, (ka + 2) % 3);
    double b0 = cotangent(b, (kb + 1) % 3), b1 = cotangent(b, (kb + 2) % 3);
    if (turned && !mirrored) std::swap(b0, b1);
    h.weight = {a1 + b1, a0 + b0, -a0 - a1, -b0 - b1};
    const bool doubled = a.fabric == Fabric::Facing && b.fabric == Fabric::Facing;
    h.stiffness =
        g.stiffness.bending * 3 / (a.area + b.area) * (doubled ? 4 : 1) * (mirrored ? 0.5 : 1);
    g.hinges.push_back(h);
  }
}

bool build(SewnGarment& g, const Panels& panels) {
  Sewer(g, panels).run();
  for (Seam& seam : g.seams)
    for (auto& [a, b] : seam.pairs)
      if (g.vertices[std::size_t(a)].point != g.vertices[std::size_t(b)].point) return false;
  measureTriangles(g);
  findHinges(g);
  return std::all_of(g.triangles.begin(), g.triangles.end(),
                     [](const ClothTriangle& t) { return t.area > 1e-6; });
}

SewnGarment started(const WornPattern& pattern, double spacing) {
  SewnGarment g;
  g.pattern = pattern;
  g.spacing = spacing;
  // Half the thickness of the cloth, about a stitch's width (common practice), and a little air.
  g.gap = std::clamp(0.7 * pattern.stitch.width, 0.2, 0.6);
  return g;
}

} // namespace

SewnGarment sewn(const WornPattern& pattern, double spacing) {
  SewnGarment g = started(pattern, spacing > 0 ? spacing : kSpacing * pattern.size);
  bool even = true;
  const Panels panels = panelsOf(pattern, g.spacing, g.parts, even);
  g.meshes = {meshed(panels.back.runs, g.spacing), meshed(panels.front.runs, g.spacing),
              meshed(panels.sleeve.runs, g.spacing)};
  layTriangles(g);
  build(g, panels);
  return g;
}

std::optional<SewnGarment> reshaped(const SewnGarment& garment, const WornPattern& pattern) {
  SewnGarment g = started(pattern, garment.spacing);
  g.stiffness = garment.stiffness;
  g.parts = garment.parts;
  bool even = true;
  const Panels panels = panelsOf(pattern, g.spacing, g.parts, even);
  if (!even || g.parts != garment.parts) return std::nullopt;
  const Panel* panel[] = {&panels.back, &panels.front, &panels.sleeve};
  for (std::size_t k = 0; k < 3; ++k) {
    auto mesh = morphed(garment.meshes[k], panel[k]->runs);
    if (!mesh) return std::nullopt;
    g.meshes[k] = std::move(*mesh);
  }
  layTriangles(g);
  if (!build(g, panels) || g.points != garment.points ||
      g.vertices.size() != garment.vertices.size() ||
      g.triangles.size() != garment.triangles.size() || g.hinges.size() != garment.hinges.size())
    return std::nullopt;
  return g;
}

SewnGarment flatCloth(const PieceMesh& mesh, double areaWeight, const ClothStiffness& stiffness) {
  SewnGarment g;
  g.pattern.areaWeight = areaWeight;
  g.stiffness = stiffness;
  g.points = int(mesh.at.size());
  for (int i = 0; i < g.points; ++i)
    g.vertices.push_back({mesh.at[std::size_t(i)], PanelId::Front, i});
  g.layer.assign(mesh.at.size(), Layer::Bodice);
  g.onMirror.assign(mesh.at.size(), 0);
  for (const auto& corner : mesh.triangles) {
    ClothTriangle t;
    t.panel = PanelId::Front;
    t.vertex = corner;
    for (std::size_t k = 0; k < 3; ++k)
      t.flat[k] = mesh.at[std::size_t(corner[k])];
    g.triangles.push_back(t);
  }
  measureTriangles(g);
  findHinges(g);
  return g;
}

} // namespace scye
