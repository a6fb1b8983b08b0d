#include "worn/raster.h"

#include <numbers>

namespace scye {
namespace {

enum class Matter : std::uint8_t { Plain, Rib, Band, Facing, Form, Button, Hole };

// One stitch of stocking stitch: two legs that lean to one another.
class StitchTexture {
public:
  StitchTexture() {
    for (int j = 0; j < kSize; ++j)
      for (int i = 0; i < kSize; ++i) {
        const double s = (i + 0.5) / kSize, aside = std::abs(s - 0.5) * 2;
        double t = (j + 0.5) / kSize + 0.45 * aside;
        t -= std::floor(t);
        const double leg = 1 - (2 * t - 1) * (2 * t - 1);
        const double round = std::sin(std::numbers::pi * std::min(1.0, aside));
        value_[std::size_t(j * kSize + i)] = float(leg * (0.45 + 0.55 * round) - 0.42);
      }
  }
  [[nodiscard]] float at(float s, float t) const { // about 0 on the mean
    return value_[std::size_t(cell(t) * kSize + cell(s))];
  }

private:
  static constexpr int kSize = 32;
  // Rounding down is slow on processors of old; stitches and rows count far less than kPositive.
  [[nodiscard]] static int cell(float at) {
    constexpr int kPositive = 1 << 20; // whole stitches
    return (int(at * float(kSize) + float(kPositive))) % kSize;
  }
  std::array<float, std::size_t(kSize) * kSize> value_{};
};

struct Corner {
  float x = 0, y = 0, depth = 0;
  float front = 1, back = 1; // light on either side
  float s = 0, t = 0;        // stitches and rows
  float pull = 0;
};
struct Face {
  std::array<int, 3> corner{};
  Matter matter = Matter::Plain;
  float upTo = 1e9f; // the row above which it is plain
};

struct Lights {
  Vec3f key, fill;
};

// Of each sample. Frames that follow one another share them: fresh memory of this size costs as
// much as half a picture.
struct Canvas {
  std::vector<float> depth;
  std::vector<int> seen; // the nearest face; -1: none
  std::vector<Vec3f> colour;
};

class Raster {
public:
  Raster(const WornScene& scene, const View& view, const Drawing& drawing, Canvas& canvas)
      : scene_(scene), drawing_(drawing), width_(drawing.width * drawing.samples),
        height_(drawing.height * drawing.samples), eye_(view, scene.extent, width_, height_),
        depth_(canvas.depth), seen_(canvas.seen), colour_(canvas.colour) {
    const Vec3f toEye = -eye_.forward();
    lights_.key = (0.45f * toEye + 0.62f * eye_.up() - 0.66f * eye_.right()).normalized();
    lights_.fill = (0.60f * toEye + 0.10f * eye_.up() + 0.80f * eye_.right()).normalized();
  }

  Image run() {
    gather();
    depth_.assign(std::size_t(width_) * std::size_t(height_), 1e9f);
    seen_.assign(depth_.size(), -1);
    colour_.resize(depth_.size());
    for (std::size_t k = 0; k < faces_.size(); ++k)
      cover(int(k));
    shade();
    for (const DrawnLine& line : scene_.lines)
      stroke(line);
    return shrunk();
  }

  [[nodiscard]] std::vector<SeenNumber> numbers() const {
    std::vector<SeenNumber> out;
    const float share = 1 / float(drawing_.samples);
    for (const DrawnNumber& n : scene_.numbers) {
      const Eye::Place p = eye_.project(n.at);
      const int x = int(p.x), y = int(p.y);
      if (x < 0 || y < 0 || x >= width_ || y >= height_) continue;
      if (depth_[std::size_t(y) * std::size_t(width_) + std::size_t(x)] < p.depth - 1) continue;
      out.push_back({n.number, p.x * share, p.y * share});
    }
    return out;
  }

private:
  [[nodiscard]] float light(const Vec3f& n, float open) const {
    const float key = std::max(0.0f, n.dot(lights_.key)),
                fill = std::max(0.0f, n.dot(lights_.fill));
    const float sky = 0.5f + 0.5f * n.y();
    const float shut = open * open * (3 - 2 * open);
    return (0.30f + 0.20f * sky + 0.15f * fill) * (0.35f + 0.65f * open) +
           0.52f * key * (0.30f + 0.70f * shut);
  }

  Corner corner(const Vec3f& at, const Vec3f& normal, float open) const {
    const Eye::Place p = eye_.project(at);
    Corner c;
    c.x = p.x, c.y = p.y, c.depth = p.depth;
    const Vec3f toEye = (eye_.at() - at).normalized();
    const float facing = normal.dot(toEye);
    const float rim = 1 - std::min(1.0f, std::abs(facing));
    c.front = light(normal, open) + 0.10f * rim * rim * rim;
    c.back = 0.62f * light(-normal, 0.7f * open);
    return c;
  }

  void add(const Surface& s, const std::vector<float>& open, Matter matter) {
    const int base = int(corners_.size());
    for (std::size_t i = 0; i < s.at.size(); ++i)
      corners_.push_back(corner(s.at[i], s.normal[i], open[i]));
    for (const auto& t : s.triangles)
      faces_.push_back({{base + t[0], base + t[1], base + t[2]}, matter, 1e9f});
  }

  void gather() {
    const DrawnCloth& c = scene_.cloth;
    corners_.reserve(c.surface.at.size() + scene_.trunk.at.size() + scene_.arms.at.size());
    faces_.reserve(c.surface.triangles.size() + scene_.trunk.triangles.size() +
                   scene_.arms.triangles.size());
    add(c.surface, c.open, Matter::Plain);
    for (std::size_t i = 0; i < c.surface.at.size(); ++i) {
      corners_[i].s = c.stitch[i].x(), corners_[i].t = c.stitch[i].y();
      corners_[i].pull = c.pull[i];
    }
    for (std::size_t k = 0; k < c.look.size(); ++k) {
      faces_[k].upTo = c.upTo[k];
      faces_[k].matter = c.look[k] == ClothLook::Rib      ? Matter::Rib
                         : c.look[k] == ClothLook::Band   ? Matter::Band
                         : c.look[k] == ClothLook::Facing ? Matter::Facing
                                                          : Matter::Plain;
    }
    add(scene_.trunk, scene_.trunkOpen, Matter::Form);
    add(scene_.arms, scene_.armsOpen, Matter::Form);
    for (const DrawnButton& b : scene_.buttons)
      button(b);
  }

  void disc(const Vec3f& at, const Vec3f& normal, float radius, Matter matter) {
    constexpr int kSides = 20;
    const Vec3f across = normal.cross(Vec3f(0, 1, 0)).normalized(), up = across.cross(normal);
    Surface s;
    s.at.push_back(at);
    s.normal.push_back(normal);
    for (int i = 0; i < kSides; ++i) {
      const float angle = float(2 * std::numbers::pi * i / kSides);
      const Vec3f out = std::cos(angle) * across + std::sin(angle) * up;
      s.at.push_back(at + radius * out);
      s.normal.push_back((normal + 0.7f * out).normalized());
      s.triangles.push_back({0, 1 + (i + 1) % kSides, 1 + i});
    }
    add(s, std::vector<float>(s.at.size(), 1.0f), matter);
  }

  void button(const DrawnButton& b) {
    disc(b.at, b.normal, b.radius, Matter::Button);
    const Vec3f across = b.normal.cross(Vec3f(0, 1, 0)).normalized();
    for (const float side : {-1.0f, 1.0f})
      disc(b.at + 0.06f * b.normal + 0.28f * side * b.radius * across, b.normal, 0.14f * b.radius,
           Matter::Hole);
  }

  void cover(int k) {
    const Face& f = faces_[std::size_t(k)];
    const Corner &a = corners_[std::size_t(f.corner[0])], &b = corners_[std::size_t(f.corner[1])],
                 &c = corners_[std::size_t(f.corner[2])];
    const float area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    // Seen from outside a face runs clockwise on the screen, whose y goes down.
    if (std::abs(area) < 1e-6f || (f.matter == Matter::Form && area > 0)) return;
    const int x0 = std::max(0, int(std::ceil(std::min({a.x, b.x, c.x}) - 0.5f))),
              x1 = std::min(width_ - 1, int(std::floor(std::max({a.x, b.x, c.x}) - 0.5f)));
    const int y0 = std::max(0, int(std::ceil(std::min({a.y, b.y, c.y}) - 0.5f))),
              y1 = std::min(height_ - 1, int(std::floor(std::max({a.y, b.y, c.y}) - 0.5f)));
    if (x1 < x0 || y1 < y0) return;
    const float inverse = 1 / area;
    // Weights of a and b at a pixel, and what they change by from one to the next.
    const float ux = (b.y - c.y) * inverse, uy = (c.x - b.x) * inverse;
    const float vx = (c.y - a.y) * inverse, vy = (a.x - c.x) * inverse;
    const float px = float(x0) + 0.5f, py = float(y0) + 0.5f;
    float uRow = ux * (px - c.x) + uy * (py - c.y), vRow = vx * (px - c.x) + vy * (py - c.y);
    const float za = a.depth - c.depth, zb = b.depth - c.depth;
    const float bias = f.matter == Matter::Form ? 0.15f : 0; // cloth lies on it
    for (int y = y0; y <= y1; ++y, uRow += uy, vRow += vy) {
      float u = uRow, v = vRow;
      std::size_t at = std::size_t(y) * std::size_t(width_) + std::size_t(x0);
      for (int x = x0; x <= x1; ++x, u += ux, v += vx, ++at) {
        if (u < 0 || v < 0 || u + v > 1) continue;
        const float z = c.depth + u * za + v * zb + bias;
        if (z < depth_[at]) depth_[at] = z, seen_[at] = k;
      }
    }
  }

  [[nodiscard]] Vec3f groundAt(int y) const {
    return drawing_.palette.ground * (1 - drawing_.palette.deeper * float(y) / float(height_));
  }

  // How strongly single stitches show: not at all where they are smaller than a pixel or two.
  [[nodiscard]] static float detail(float pixels) { return float(smoothStep(1.6, 5, pixels)); }

  // A face as it lies on the screen: the weights of its corners at a pixel, and how large its
  // stitches are there.
  struct Lie {
    const Face* face = nullptr;
    const Corner *a = nullptr, *b = nullptr, *c = nullptr;
    float ux = 0, uy = 0, vx = 0, vy = 0;
    float stitches = 0, ribs = 0; // how strongly they show
    bool outside = true;
  };

  [[nodiscard]] Lie lieOf(const Face& f) const {
    Lie l;
    l.face = &f;
    l.a = &corners_[std::size_t(f.corner[0])], l.b = &corners_[std::size_t(f.corner[1])],
    l.c = &corners_[std::size_t(f.corner[2])];
    const Corner &a = *l.a, &b = *l.b, &c = *l.c;
    const float area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x), inverse = 1 / area;
    l.outside = area < 0;
    l.ux = (b.y - c.y) * inverse, l.uy = (c.x - b.x) * inverse;
    l.vx = (c.y - a.y) * inverse, l.vy = (a.x - c.x) * inverse;
    const auto across = [&](float atA, float atB) {
      const float x = l.ux * atA + l.vx * atB, y = l.uy * atA + l.vy * atB;
      return std::sqrt(x * x + y * y);
    };
    const float s = across(a.s - c.s, b.s - c.s), t = across(a.t - c.t, b.t - c.t);
    l.stitches = detail(1 / std::max({s, t, 1e-6f}));
    l.ribs = detail(2 / std::max(s, 1e-6f));
    return l;
  }

  // Cloth at weights u, v, w of the corners; `bright` is the light on it.
  [[nodiscard]] Vec3f clothColour(const Lie& l, float u, float v, float w, float bright) const {
    static const StitchTexture texture;
    const Face& f = *l.face;
    const float s = u * l.a->s + v * l.b->s + w * l.c->s, t = u * l.a->t + v * l.b->t + w * l.c->t;
    Vec3f base = drawing_.palette.yarn;
    float strength = 1;
    if (scene_.pulls) {
      base = pullColour(u * l.a->pull + v * l.b->pull + w * l.c->pull);
      bright = 0.62f + 0.38f * bright; // folds must not darken the scale
      strength = 0.35f;
    }
    if (l.stitches > 0) bright *= 1 + 0.30f * strength * l.stitches * texture.at(s, t);
    if (t < f.upTo && (f.matter == Matter::Rib || f.matter == Matter::Band)) {
      const float wave = // two and two
          l.ribs > 0 ? std::cos(float(std::numbers::pi) * s / 2) : 0;
      bright *= 1 + strength * (0.16f * l.ribs * wave - 0.07f);
    } else if (f.matter == Matter::Facing && t < f.upTo) {
      bright *= 1 + 0.04f * strength;
    }
    return bright * base;
  }

  [[nodiscard]] Vec3f colourOf(const Lie& l, float px, float py) const {
    const float u = l.ux * px + l.uy * py, v = l.vx * px + l.vy * py, w = 1 - u - v;
    const float bright = l.outside ? u * l.a->front + v * l.b->front + w * l.c->front
                                   : u * l.a->back + v * l.b->back + w * l.c->back;
    switch (l.face->matter) {
    case Matter::Form:
      return bright * drawing_.palette.form;
    case Matter::Button:
      return bright * drawing_.palette.button;
    case Matter::Hole:
      return 0.25f * bright * drawing_.palette.button;
    default:
      return clothColour(l, u, v, w, bright);
    }
  }

  void shade() {
    int last = -1;
    Lie lie;
    for (int y = 0; y < height_; ++y) {
      const Vec3f behind = groundAt(y);
      std::size_t at = std::size_t(y) * std::size_t(width_);
      for (int x = 0; x < width_; ++x, ++at) {
        const int k = seen_[at];
        if (k < 0) {
          colour_[at] = behind;
          continue;
        }
        if (k != last) lie = lieOf(faces_[std::size_t(k)]), last = k;
        colour_[at] = colourOf(lie, float(x) + 0.5f - lie.c->x, float(y) + 0.5f - lie.c->y);
      }
    }
  }

  void stroke(const DrawnLine& line) {
    const Eye::Place p = eye_.project(line.from), q = eye_.project(line.to);
    const float k = float(drawing_.samples);
    const bool thread = line.kind == StrokeKind::Thread || line.kind == StrokeKind::Notch;
    const float radius = k * (line.kind == StrokeKind::Notch    ? 1.1f
                              : line.kind == StrokeKind::Thread ? 0.7f
                              : line.kind == StrokeKind::Edge   ? 0.62f
                                                                : 0.75f);
    const float alpha = thread ? 0.9f : line.kind == StrokeKind::Edge ? 0.45f : 0.6f;
    const Vec3f ink = thread ? drawing_.palette.thread : drawing_.palette.line;
    const float dx = q.x - p.x, dy = q.y - p.y, length2 = std::max(dx * dx + dy * dy, 1e-6f);
    const int x0 = std::max(0, int(std::min(p.x, q.x) - radius - 1)),
              x1 = std::min(width_ - 1, int(std::max(p.x, q.x) + radius + 1));
    const int y0 = std::max(0, int(std::min(p.y, q.y) - radius - 1)),
              y1 = std::min(height_ - 1, int(std::max(p.y, q.y) + radius + 1));
    const float bias = thread ? 0.3f : 0.45f;
    for (int y = y0; y <= y1; ++y)
      for (int x = x0; x <= x1; ++x) {
        const float px = float(x) + 0.5f - p.x, py = float(y) + 0.5f - p.y;
        const float along = (px * dx + py * dy) / length2;
        if (along < 0 || along > 1) continue; // the next piece goes on from there
        const float off = std::abs(px * dy - py * dx) / std::sqrt(length2);
        const float covered = std::clamp(radius + 0.5f - off, 0.0f, 1.0f);
        if (covered <= 0) continue;
        const std::size_t at = std::size_t(y) * std::size_t(width_) + std::size_t(x);
        if (p.depth + along * (q.depth - p.depth) > depth_[at] + bias) continue;
        if (!thread && seen_[at] < 0) continue;
        colour_[at] += alpha * covered * (ink - colour_[at]);
      }
  }

  [[nodiscard]] Image shrunk() const {
    Image image{drawing_.width, drawing_.height, {}, {}};
    image.rgb.resize(std::size_t(drawing_.width) * std::size_t(drawing_.height) * 3);
    const int n = drawing_.samples;
    const float share = 255.0f / float(n * n);
    std::size_t out = 0;
    for (int y = 0; y < image.height; ++y)
      for (int x = 0; x < image.width; ++x) {
        Vec3f sum = Vec3f::Zero();
        for (int j = 0; j < n; ++j)
          for (int i = 0; i < n; ++i)
            sum += colour_[std::size_t(y * n + j) * std::size_t(width_) + std::size_t(x * n + i)]
                       .cwiseMin(1.0f);
        for (int c = 0; c < 3; ++c)
          image.rgb[out++] = std::uint8_t(std::max(0.0f, share * sum[c]) + 0.5f);
      }
    return image;
  }

  const WornScene& scene_;
  const Drawing& drawing_;
  int width_, height_;
  Eye eye_;
  Lights lights_;
  std::vector<Corner> corners_;
  std::vector<Face> faces_;
  std::vector<float>& depth_;
  std::vector<int>& seen_;
  std::vector<Vec3f>& colour_;
};

} // namespace

Palette lightPalette() {
  return {};
}

Palette darkPalette() {
  Palette p;
  p.ground = Vec3f(0.13f, 0.135f, 0.145f);
  p.form = Vec3f(0.58f, 0.55f, 0.52f);
  p.yarn = Vec3f(0.40f, 0.55f, 0.74f);
  p.line = Vec3f(0.04f, 0.06f, 0.10f);
  p.thread = Vec3f(1.0f, 0.70f, 0.20f);
  p.button = Vec3f(0.55f, 0.40f, 0.28f);
  return p;
}

Vec3f pullColour(float share) {
  const std::array<Vec3f, 4> stops{Vec3f(0.95f, 0.94f, 0.90f), Vec3f(0.97f, 0.78f, 0.45f),
                                   Vec3f(0.84f, 0.42f, 0.13f), Vec3f(0.45f, 0.12f, 0.10f)};
  const float at = std::clamp(share, 0.0f, 1.0f) * 3;
  const std::size_t i = std::min<std::size_t>(2, std::size_t(at));
  const float t = at - float(i);
  return (1 - t) * stops[i] + t * stops[i + 1];
}

Image drawn(const WornScene& scene, const View& view, const Drawing& drawing,
            std::vector<SeenNumber>* numbers) {
  thread_local Canvas frames; // of plain pictures; those of smooth ones are let go, being large
  Canvas own;
  Raster raster(scene, view, drawing, drawing.samples > 1 ? own : frames);
  Image image = raster.run();
  if (numbers) *numbers = raster.numbers();
  return image;
}

} // namespace scye
