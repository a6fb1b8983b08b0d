#include "worn/scene.h"

#include "worn/body_surface.h"
#include "worn/worn_measures.h"

#include <numbers>

namespace scye {
namespace {

class SceneMaker {
public:
  SceneMaker(const Worn& worn, const SceneOptions& options)
      : w_(worn), g_(*worn.garment), options_(options), n_(g_.vertices.size()) {}

  WornScene run(const Surface& trunk) {
    scene_.pulls = options_.pulls;
    double hem = 0;
    for (const int p : g_.hem)
      hem = std::min(hem, w_.state.x(p, 1));
    scene_.extent = extentOf(w_.body, hem);
    scene_.trunk = trunk;
    if (options_.sleevesOff <= 0) {
      scene_.arms = armSurface(w_.body);
      drawHandsIn();
    }
    cloth();
    lines();
    buttons();
    if (options_.sleevesOff > 0) threads();
    return std::move(scene_);
  }

private:
  [[nodiscard]] static bool onSleeve(PanelId id) {
    return id == PanelId::Sleeve || id == PanelId::Cuff;
  }
  // Cloth of the left half first, then its mirror image.
  [[nodiscard]] std::size_t place(int vertex, int half) const {
    return std::size_t(vertex) + std::size_t(half) * n_;
  }

  std::vector<Vec3> normals() const {
    const Points& x = w_.state.x;
    std::vector<Vec3> normal(std::size_t(g_.points), Vec3::Zero());
    for (const ClothTriangle& t : g_.triangles) {
      const Vec3 a = x.row(t.point[0]), b = x.row(t.point[1]), c = x.row(t.point[2]);
      const Vec3 n = (b - a).cross(c - a);
      for (const int p : t.point)
        normal[std::size_t(p)] += n;
    }
    for (int i = 0; i < g_.points; ++i) {
      Vec3& n = normal[std::size_t(i)];
      if (g_.onMirror[std::size_t(i)]) n.x() = 0;
      n = unit(n);
    }
    return normal;
  }

  // Where the fronts of a jacket lie on one another, one is lifted and the other pressed.
  [[nodiscard]] double overlapped(const ClothVertex& v, double worldX, int half) const {
    const FrontPattern& f = g_.pattern.fronts;
    if (!f.open || v.panel == PanelId::Back || onSleeve(v.panel) || w_.state.x(v.point, 2) < 0)
      return 0;
    const bool over = (half == 1) == f.rightOver;
    const double share = smoothStep(0.9 * f.bandWidth, 0.5 * f.bandWidth, worldX);
    return (over ? 0.5 : -0.45) * g_.gap * share;
  }

  void cloth() {
    const std::vector<Vec3> normal = normals();
    const std::vector<double> pull =
        options_.pulls ? pullOf(g_, w_.state.x) : std::vector<double>();
    DrawnCloth& c = scene_.cloth;
    const Vec3 off = options_.sleevesOff * unit(w_.body.leftArm().upper() + Vec3(0.25, 0, 0));
    for (int half = 0; half < 2; ++half) {
      const double side = half == 0 ? 1 : -1;
      for (const ClothVertex& v : g_.vertices) {
        Vec3 p = w_.state.x.row(v.point).transpose();
        const Vec3 n = normal[std::size_t(v.point)];
        p += overlapped(v, p.x(), half) * n;
        if (onSleeve(v.panel)) p += off;
        c.surface.at.emplace_back(Vec3(side * p.x(), p.y(), p.z()).cast<float>());
        c.surface.normal.emplace_back(Vec3(side * n.x(), n.y(), n.z()).cast<float>());
        c.stitch.emplace_back(float(v.at.x() / g_.pattern.stitch.width),
                              float(v.at.y() / g_.pattern.stitch.height));
        c.pull.push_back(pull.empty()
                             ? 0.0f
                             : float(std::clamp(pull[std::size_t(v.point)] / kMostPull, 0.0, 1.0)));
      }
    }
    for (int half = 0; half < 2; ++half)
      for (const ClothTriangle& t : g_.triangles) {
        std::array<int, 3> corner{};
        for (std::size_t k = 0; k < 3; ++k)
          corner[k] = int(place(t.vertex[half == 0 ? k : 2 - k], half));
        c.surface.triangles.push_back(corner);
        const auto [look, upTo] = lookOf(t.panel);
        c.look.push_back(look);
        c.upTo.push_back(float(upTo / g_.pattern.stitch.height));
      }
    c.open.assign(c.surface.at.size(), 1.0f);
    scene_.trunkOpen.assign(scene_.trunk.at.size(), 1.0f);
    scene_.armsOpen.assign(scene_.arms.at.size(), 1.0f);
  }

  // Cloth meets an arm that goes on evenly (BodyForm): of a hand that long sleeves reach over, what
  // lies within them is drawn no wider than that, or a thumb would stick out through the cloth.
  void drawHandsIn() {
    const BodyForm::Arm& arm = w_.body.leftArm();
    const Vec3 along = unit(arm.fingers - arm.wrist);
    double reach = 0;
    for (const int p : g_.cuffEdge)
      reach +=
          (Vec3(w_.state.x.row(p).transpose()) - arm.wrist).dot(along) / double(g_.cuffEdge.size());
    if (reach <= 0) return;
    const double length = (arm.fingers - arm.wrist).norm(), most = 0.9 * arm.wristRadius;
    for (Vec3f& at : scene_.arms.at) {
      const double side = at.x() < 0 ? -1 : 1;
      const Vec3 p(side * double(at.x()), at.y(), at.z()), from = p - arm.wrist;
      const double far = from.dot(along);
      if (far <= -0.2 * length || far >= reach + 1) continue;
      const Vec3 axis = arm.wrist + far * along, out = p - axis;
      const double share = smoothStep(reach + 1, reach, far) * smoothStep(-0.2 * length, 0, far);
      const double wide = out.norm(), kept = wide + share * (std::min(wide, most) - wide);
      const Vec3 q = axis + kept / std::max(wide, 1e-9) * out;
      at = Vec3(side * q.x(), q.y(), q.z()).cast<float>();
    }
  }

  // How a piece is worked from its edge up to a height; above it is plain.
  [[nodiscard]] std::pair<ClothLook, double> lookOf(PanelId id) const {
    const auto hem = [](const BodicePattern& p) {
      return std::pair(p.hemFabric == Fabric::Rib      ? ClothLook::Rib
                       : p.hemFabric == Fabric::Facing ? ClothLook::Facing
                                                       : ClothLook::Plain,
                       p.hem);
    };
    constexpr double kAll = 1e6;
    switch (id) {
    case PanelId::Back:
      return hem(g_.pattern.back);
    case PanelId::Front:
      return hem(g_.pattern.front);
    case PanelId::Sleeve:
      return {ClothLook::Rib, g_.pattern.sleeve.cuff};
    case PanelId::Cuff:
      return {ClothLook::Rib, kAll};
    case PanelId::NeckBand:
    case PanelId::FrontBand:
      break;
    }
    return {ClothLook::Band, kAll};
  }

  void addLine(StrokeKind kind, int a, int b) {
    for (int half = 0; half < 2; ++half) {
      const auto lifted = [&](int v) {
        const std::size_t i = place(v, half);
        return Vec3f(scene_.cloth.surface.at[i] + 0.06f * scene_.cloth.surface.normal[i]);
      };
      scene_.lines.push_back({kind, lifted(a), lifted(b)});
    }
  }

  void lines() {
    for (const Seam& seam : g_.seams)
      for (std::size_t i = 1; i < seam.pairs.size(); ++i)
        addLine(StrokeKind::Seam, seam.pairs[i - 1].first, seam.pairs[i].first);
    if (options_.sleevesOff > 0)
      for (const Seam& seam : g_.seams)
        if (seam.kind == SeamKind::Armhole)
          for (std::size_t i = 1; i < seam.pairs.size(); ++i)
            addLine(StrokeKind::Edge, seam.pairs[i - 1].second, seam.pairs[i].second);
    std::vector<int> vertexOf(std::size_t(g_.points), -1);
    for (std::size_t i = 0; i < n_; ++i)
      vertexOf[std::size_t(g_.vertices[i].point)] = int(i);
    for (const std::vector<int>& rim : g_.rims)
      for (std::size_t i = 1; i < rim.size(); ++i)
        addLine(StrokeKind::Edge, vertexOf[std::size_t(rim[i - 1])], vertexOf[std::size_t(rim[i])]);
  }

  struct Spot {
    const ClothTriangle* triangle = nullptr; // none: the garment has no such piece
    Vec3 share = Vec3::Zero();               // of its corners
  };
  // Where a place of a piece is; one beside the piece is put to its edge.
  [[nodiscard]] Spot spotOn(PanelId panel, const Vec2& p) const {
    Spot spot;
    double most = -1e9;
    for (const ClothTriangle& t : g_.triangles) {
      if (t.panel != panel) continue;
      const auto at = [&](std::size_t k) { return g_.vertices[std::size_t(t.vertex[k])].at; };
      const Vec2 u = at(1) - at(0), v = at(2) - at(0), d = p - at(0);
      const double area = u.x() * v.y() - u.y() * v.x();
      if (std::abs(area) < 1e-9) continue;
      const double s = (d.x() * v.y() - d.y() * v.x()) / area,
                   r = (u.x() * d.y() - u.y() * d.x()) / area;
      const Vec3 share(1 - s - r, s, r);
      if (share.minCoeff() <= most) continue;
      most = share.minCoeff();
      spot = {&t, share};
    }
    spot.share = spot.share.cwiseMax(0.0) / std::max(spot.share.cwiseMax(0.0).sum(), 1e-9);
    return spot;
  }

  void buttons() {
    const FrontPattern& f = g_.pattern.fronts;
    if (!f.open) return;
    const float radius = float(std::clamp(0.28 * f.bandWidth, 0.5, 1.1));
    // A button lies where the middle line has its height on the piece, or on the middle of a band
    // that was picked up.
    for (const Vec2& b : g_.buttons) {
      const Spot spot = f.pickedUp ? spotOn(PanelId::FrontBand, Vec2(b.y(), 0.5 * f.bandWidth))
                                   : spotOn(PanelId::Front, b);
      if (!spot.triangle) continue;
      DrawnButton button;
      button.at = button.normal = Vec3f::Zero();
      for (std::size_t k = 0; k < 3; ++k) {
        const std::size_t i = place(spot.triangle->vertex[k], f.rightOver ? 1 : 0);
        const float share = float(spot.share[Eigen::Index(k)]);
        button.at += share * scene_.cloth.surface.at[i];
        button.normal += share * scene_.cloth.surface.normal[i];
      }
      button.normal.x() = 0;
      button.normal.normalize();
      button.at += 0.22f * button.normal;
      button.at.x() = 0;
      button.radius = radius;
      scene_.buttons.push_back(button);
    }
  }

  void threads() {
    const auto at = [&](int v, int half) { return scene_.cloth.surface.at[place(v, half)]; };
    for (int half = 0; half < 2; ++half) {
      for (const Seam& seam : g_.seams) {
        if (seam.kind != SeamKind::Armhole) continue;
        for (std::size_t i = 0; i < seam.pairs.size(); i += 2)
          scene_.lines.push_back(
              {StrokeKind::Thread, at(seam.pairs[i].first, half), at(seam.pairs[i].second, half)});
      }
      for (const NotchPlace& n : g_.notches) {
        const Vec3f a = at(n.armhole, half), b = at(n.cap, half);
        scene_.lines.push_back({StrokeKind::Notch, a, b});
        scene_.numbers.push_back({n.number, Vec3f(0.22f * a + 0.78f * b)});
        scene_.numbers.push_back({n.number, Vec3f(0.78f * a + 0.22f * b)});
      }
    }
  }

  const Worn& w_;
  const SewnGarment& g_;
  SceneOptions options_;
  std::size_t n_;
  WornScene scene_;
};

// The heights of everything as seen from one direction, coarse.
class DepthMap {
public:
  DepthMap(const Vec3f& toward, const Vec3f& middle, float half) : middle_(middle) {
    z_ = toward.normalized();
    x_ = z_.cross(std::abs(z_.y()) > 0.9f ? Vec3f(1, 0, 0) : Vec3f(0, 1, 0)).normalized();
    y_ = z_.cross(x_);
    scale_ = kSize / (2 * half);
    depth_.assign(std::size_t(kSize) * kSize, -1e9f);
  }

  void add(const Surface& s) {
    std::vector<Vec3f> seen(s.at.size());
    for (std::size_t i = 0; i < s.at.size(); ++i)
      seen[i] = look(s.at[i]);
    for (const auto& t : s.triangles)
      fill(seen[std::size_t(t[0])], seen[std::size_t(t[1])], seen[std::size_t(t[2])]);
  }

  // 1 where nothing lies between, softened over a few cells.
  [[nodiscard]] float open(const Vec3f& p) const {
    const Vec3f q = look(p);
    constexpr float kBias = 0.7f; // cm
    float sum = 0;
    for (int dy = -1; dy <= 1; dy += 2)
      for (int dx = -1; dx <= 1; dx += 2) {
        const int x = int(q.x() + 0.7f * float(dx)), y = int(q.y() + 0.7f * float(dy));
        const bool outside = x < 0 || y < 0 || x >= kSize || y >= kSize;
        sum += outside || depth_[std::size_t(y * kSize + x)] < q.z() + kBias ? 0.25f : 0;
      }
    return sum;
  }
  [[nodiscard]] const Vec3f& toward() const { return z_; }

private:
  static constexpr int kSize = 170;

  [[nodiscard]] Vec3f look(const Vec3f& p) const {
    const Vec3f d = p - middle_;
    return {0.5f * kSize + scale_ * d.dot(x_), 0.5f * kSize + scale_ * d.dot(y_), d.dot(z_)};
  }

  void fill(const Vec3f& a, const Vec3f& b, const Vec3f& c) {
    const float area = (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
    if (std::abs(area) < 1e-6f) return;
    const int x0 = std::max(0, int(std::min({a.x(), b.x(), c.x()}))),
              x1 = std::min(kSize - 1, int(std::max({a.x(), b.x(), c.x()})) + 1);
    const int y0 = std::max(0, int(std::min({a.y(), b.y(), c.y()}))),
              y1 = std::min(kSize - 1, int(std::max({a.y(), b.y(), c.y()})) + 1);
    for (int y = y0; y <= y1; ++y)
      for (int x = x0; x <= x1; ++x) {
        const float px = float(x) + 0.5f, py = float(y) + 0.5f;
        const float u = ((b.x() - px) * (c.y() - py) - (b.y() - py) * (c.x() - px)) / area,
                    v = ((c.x() - px) * (a.y() - py) - (c.y() - py) * (a.x() - px)) / area;
        if (u < -0.01f || v < -0.01f || u + v > 1.01f) continue;
        float& d = depth_[std::size_t(y * kSize + x)];
        d = std::max(d, u * a.z() + v * b.z() + (1 - u - v) * c.z());
      }
  }

  Vec3f middle_, x_, y_, z_;
  float scale_ = 1;
  std::vector<float> depth_;
};

// Each corner's value averaged with those of its triangles.
std::vector<float> evened(const Surface& surface, const std::vector<float>& value) {
  std::vector<float> sum(value.size(), 0), count(value.size(), 0);
  for (const auto& t : surface.triangles) {
    const float all =
        value[std::size_t(t[0])] + value[std::size_t(t[1])] + value[std::size_t(t[2])];
    for (const int corner : t)
      sum[std::size_t(corner)] += all, count[std::size_t(corner)] += 3;
  }
  for (std::size_t k = 0; k < sum.size(); ++k)
    sum[k] = count[k] > 0 ? sum[k] / count[k] : value[k];
  return sum;
}

} // namespace

WornScene sceneOf(const Worn& worn, const Surface& trunk, const SceneOptions& options) {
  return SceneMaker(worn, options).run(trunk);
}

void lightUp(WornScene& scene) {
  // Directions over the upper part of a sphere, evenly by the golden angle.
  constexpr int kDirections = 16;
  struct Lit {
    const Surface* surface;
    std::vector<float>* open;
    std::vector<float> weight;
    bool bothSides;
  };
  std::array<Lit, 3> lit{{{&scene.cloth.surface, &scene.cloth.open, {}, true},
                          {&scene.trunk, &scene.trunkOpen, {}, false},
                          {&scene.arms, &scene.armsOpen, {}, false}}};
  for (Lit& l : lit) {
    l.open->assign(l.surface->at.size(), 0.0f);
    l.weight.assign(l.surface->at.size(), 1e-6f);
  }
  const Vec3f middle = scene.extent.middle.cast<float>();
  for (int i = 0; i < kDirections; ++i) {
    const double y = 1 - 1.35 * (i + 0.5) / kDirections, r = std::sqrt(std::max(0.0, 1 - y * y));
    const double angle = i * std::numbers::pi * (3 - std::sqrt(5.0));
    DepthMap map(Vec3f(float(r * std::cos(angle)), float(y), float(r * std::sin(angle))), middle,
                 float(1.25 * scene.extent.half));
    for (const Lit& l : lit)
      map.add(*l.surface);
    for (Lit& l : lit)
      for (std::size_t k = 0; k < l.surface->at.size(); ++k) {
        const float facing = l.surface->normal[k].dot(map.toward());
        if (facing <= 0.05f) continue;
        const Vec3f p = l.surface->at[k] + 0.5f * l.surface->normal[k];
        (*l.open)[k] += facing * map.open(p);
        l.weight[k] += facing;
      }
  }
  for (Lit& l : lit) {
    for (std::size_t k = 0; k < l.open->size(); ++k)
      (*l.open)[k] = std::min(1.0f, (*l.open)[k] / l.weight[k]);
    constexpr int kPasses = 3; // coarse maps leave blotches
    for (int pass = 0; pass < kPasses; ++pass)
      *l.open = evened(*l.surface, *l.open);
  }
}

} // namespace scye
