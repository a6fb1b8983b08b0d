#include "worn/trunk_field.h"

#include <array>
#include <cmath>
#include <numbers>

namespace scye {
namespace {

using Vec2 = Eigen::Vector2d;

// Shares of the girth there: half width, depth before and behind; own proportions of each figure.
struct Shares {
  double half, front, back;
};
struct Build {
  Shares hip, waist, bust, chest, shoulder;
  double neckTilt; // degrees forward
};
// Chest: half way from armpit to shoulder tip, of the bust; shoulder: just below the tip.
constexpr std::array<Build, 4> kBuilds{{
    {{.174, .110, .127},
     {.174, .128, .116},
     {.153, .145, .117},
     {.148, .098, .108},
     {.108, .068, .082},
     14},
    {{.168, .110, .122},
     {.170, .128, .112},
     {.161, .122, .116},
     {.158, .098, .110},
     {.112, .068, .082},
     14},
    {{.166, .120, .124},
     {.164, .136, .116},
     {.158, .124, .118},
     {.154, .100, .108},
     {.112, .070, .084},
     10},
    {{.163, .130, .122},
     {.160, .142, .114},
     {.160, .128, .116},
     {.156, .104, .106},
     {.114, .074, .084},
     6},
}};

// A monotone cubic through rising places (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 1980, with
// harmonic means).
template <class F>
double monotone(const std::vector<TrunkSection>& s, double y, const F& value) {
  const std::size_t n = s.size();
  std::size_t i = 0;
  while (i + 2 < n && y > s[i + 1].y)
    ++i;
  const auto slope = [&](std::size_t k) {
    return (value(s[k + 1]) - value(s[k])) / (s[k + 1].y - s[k].y);
  };
  const auto tangent = [&](std::size_t k) {
    if (k == 0) return slope(0);
    if (k == n - 1) return slope(n - 2);
    const double a = slope(k - 1), b = slope(k);
    return a * b <= 0 ? 0.0 : 2 * a * b / (a + b);
  };
  const double h = s[i + 1].y - s[i].y, t = std::clamp((y - s[i].y) / h, 0.0, 1.0);
  const double t2 = t * t, t3 = t2 * t;
  return value(s[i]) * (2 * t3 - 3 * t2 + 1) + h * tangent(i) * (t3 - 2 * t2 + t) +
         value(s[i + 1]) * (3 * t2 - 2 * t3) + h * tangent(i + 1) * (t3 - t2);
}

constexpr double kRound = 3.5; // cells

TrunkSection sectionOf(double y, double girth, const Shares& share, double middle, double power) {
  return {y, share.half * girth, share.front * girth, share.back * girth, middle, power};
}

void widen(TrunkSection& s, double by) {
  s.half *= by, s.front *= by, s.back *= by;
}

// Distance to a rod whose radius changes evenly from end to end.
double rod(const Vec3& p, const Vec3& a, const Vec3& b, double ra, double rb) {
  const Vec3 d = b - a;
  const double t = std::clamp((p - a).dot(d) / d.squaredNorm(), 0.0, 1.0);
  return (p - a - t * d).norm() - ra - (rb - ra) * t;
}

} // namespace

double hullPerimeter(std::vector<Vec2> p) {
  if (p.size() < 3) return 0;
  const auto less = [](const Vec2& a, const Vec2& b) {
    return a.x() < b.x() || (a.x() == b.x() && a.y() < b.y());
  };
  std::sort(p.begin(), p.end(), less);
  const auto turn = [](const Vec2& a, const Vec2& b, const Vec2& c) {
    return (b - a).x() * (c - a).y() - (b - a).y() * (c - a).x();
  };
  std::vector<Vec2> hull; // Andrew's monotone chain
  for (int pass = 0; pass < 2; ++pass) {
    const std::size_t start = hull.size();
    for (const Vec2& q : p) {
      while (hull.size() >= start + 2 && turn(hull[hull.size() - 2], hull.back(), q) <= 0)
        hull.pop_back();
      hull.push_back(q);
    }
    hull.pop_back();
    std::reverse(p.begin(), p.end());
  }
  double length = 0;
  for (std::size_t i = 0; i < hull.size(); ++i)
    length += (hull[(i + 1) % hull.size()] - hull[i]).norm();
  return length;
}

double sectionGirth(const std::function<double(const Vec3&)>& field, const Vec3& middle,
                    const Vec3& axis, double reach) {
  const Vec3 along = unit(axis), across = unit(along.cross(Vec3::UnitZ()), Vec3::UnitX()),
             other = along.cross(across);
  std::vector<Vec2> outline;
  constexpr int kRays = 180, kHalvings = 28;
  for (int i = 0; i < kRays; ++i) {
    const double angle = 2 * std::numbers::pi * i / kRays;
    const Vec2 ray(std::cos(angle), std::sin(angle));
    double low = 0, high = reach;
    for (int k = 0; k < kHalvings; ++k) {
      const double r = 0.5 * (low + high);
      (field(middle + r * (ray.x() * across + ray.y() * other)) < 0 ? low : high) = r;
    }
    outline.emplace_back(low * ray);
  }
  return hullPerimeter(std::move(outline));
}

TrunkField::TrunkField(const BodyMeasures& m) : m_(m) {
  const Build& build = kBuilds[std::size_t(m.figure)];
  const double u = m.scale(), depth = m.tipY - m.armpitY;
  const double tilt = build.neckTilt * std::numbers::pi / 180;
  neckRadius = 0.95 * m.neckBase / (2 * std::numbers::pi);
  neckAxis = Vec3(0, std::cos(tilt), std::sin(tilt));
  neckBase = Vec3(0, 0, -0.5 * u);
  spacing = std::clamp(u, 0.5, 1.15);
  bottom = m.hipY - 16 * std::min(1.0, u + 0.1);
  top = 0.42 * m.neckBase * 0.45 + 1.5 * u;
  const double hipMiddle = -0.9 * u;
  sections = {sectionOf(bottom, 0.94 * m.hip, build.hip, hipMiddle, 2.2),
              sectionOf(m.hipY, m.hip, build.hip, hipMiddle, 2.25),
              {m.waistY + 0.45 * (m.hipY - m.waistY), 0, 0, 0, -0.5 * u, 2.2},
              sectionOf(m.waistY, m.waist, build.waist, 0, 2.15),
              {m.waistY + 0.45 * (m.bustY - m.waistY), 0, 0, 0, 0, 2.2},
              sectionOf(m.bustY, m.bust, build.bust, -0.2 * u, 2.2),
              sectionOf(m.armpitY + 0.35 * depth, m.bust, build.chest, -0.8 * u, 2.3),
              sectionOf(m.tipY - 0.14 * depth, m.bust, build.shoulder, -1.2 * u, 2.1),
              underNeck()};
  // Across the chest a body is no wider than its shoulders leave room for the arms.
  sections[6].half = std::min(sections[6].half, 0.86 * m.halfShoulder);
  sections[7].half = std::min(sections[7].half, 0.62 * m.halfShoulder);
  fitGirths();
  sample();
}

// The uppermost section, out of which the neck rises.
TrunkSection TrunkField::underNeck() const {
  const double u = m_.scale(), r = neckRadius;
  return {0.6 * u, 1.02 * r, 0.98 * r, r, -0.7 * u, 2.0};
}

// The three measured sections are scaled to their girths, those between follow their neighbours;
// then the neck, together with what the shoulders add round its base.
void TrunkField::fitGirths() {
  const auto between = [&](std::size_t i, double share) {
    const TrunkSection &a = sections[i - 1], &b = sections[i + 1];
    TrunkSection& s = sections[i];
    s.half = a.half + share * (b.half - a.half), s.front = a.front + share * (b.front - a.front);
    s.back = a.back + share * (b.back - a.back);
  };
  for (int pass = 0; pass < 4; ++pass) {
    for (const auto& [i, wanted] :
         {std::pair{1, m_.hip}, std::pair{3, m_.waist}, std::pair{5, m_.bust}})
      widen(sections[std::size_t(i)], wanted / exactGirth(sections[std::size_t(i)].y));
    between(2, 0.40), between(4, 0.42);
    sections[0].half = 0.96 * sections[1].half;
    sections[0].front = 0.95 * sections[1].front, sections[0].back = 0.9 * sections[1].back;
  }
  for (int pass = 0; pass < 8; ++pass) {
    const auto outside = [&](const Vec3& p) { return exact(p, section(p.y())); };
    const double girth = sectionGirth(outside, neckMiddle(), neckAxis, m_.neckBase);
    neckRadius += 1.2 * (m_.neckBase - girth) / (2 * std::numbers::pi);
    sections.back() = underNeck();
  }
}

Vec3 TrunkField::neckMiddle() const {
  return neckBase + 0.6 * m_.scale() * neckAxis;
}

TrunkSection TrunkField::section(double y) const {
  const auto at = [&](double TrunkSection::*value) {
    return monotone(sections, y, [value](const TrunkSection& s) { return s.*value; });
  };
  return {y,
          at(&TrunkSection::half),
          at(&TrunkSection::front),
          at(&TrunkSection::back),
          at(&TrunkSection::middle),
          at(&TrunkSection::power)};
}

double TrunkField::exact(const Vec3& point, const TrunkSection& s) const {
  const Vec3 p(std::abs(point.x()), point.y(), point.z());
  const double z = p.z() - s.middle, depth = z > 0 ? s.front : s.back;
  const double X = p.x() / s.half, Z = std::abs(z) / depth;
  const double f = std::pow(std::pow(X, s.power) + std::pow(Z, s.power), 1 / s.power);
  double gx = 1 / s.half, gz = 1 / depth;
  if (f > 1e-6) {
    gx *= std::pow(X / f, s.power - 1);
    gz *= std::pow(Z / f, s.power - 1);
  }
  double d = (f - 1) / std::max(std::hypot(gx, gz), 1e-6);
  const double u = m_.scale();
  // Shoulders: a rod from the side of the neck to the tip, its upper side along their slope.
  const double lie = std::hypot(1.0, m_.slope);
  const auto onTop = [&](double x) { return m_.neckPointY - m_.slope * (x - m_.neckPointX); };
  const double r0 = 4.3 * u, r1 = 3.4 * u, x0 = 0.45 * m_.neckPointX,
               x1 = std::max(m_.halfShoulder - 0.9 * r1, 0.6 * m_.halfShoulder);
  const Vec3 a(x0, onTop(x0) - 0.2 * u - r0 * lie, -1.2 * u),
      b(x1, onTop(x1) - 0.2 * u - r1 * lie, -1.4 * u);
  if (p.y() > m_.armpitY) d = smoothMin(d, rod(p, a, b, r0, r1), 2.0 * u);
  if (p.y() > m_.tipY - 4 * u) {
    const Vec3 along = p - neckBase;
    const double way = along.dot(neckAxis);
    const double radius = neckRadius * (1 - 0.04 * smoothStep(0, 6 * u, way));
    const double neck = std::max((along - way * neckAxis).norm() - radius, -2 * u - way);
    // Rounded off over some cells of the samples at least, or the edge comes out in steps.
    d = smoothMin(d, neck, std::max(1.6 * u, kRound * spacing));
    d = -smoothMin(-d, -(way - top), std::max(1.2 * u, kRound * spacing));
  }
  return d;
}

double TrunkField::exactGirth(double y) const {
  const TrunkSection s = section(y);
  return sectionGirth([&](const Vec3& p) { return exact(p, s); }, Vec3(0, y, 0), Vec3::UnitY(),
                      m_.bust + m_.hip);
}

void TrunkField::sample() {
  double half = m_.halfShoulder, deep = 0;
  for (const TrunkSection& s : sections) {
    half = std::max(half, s.half);
    deep = std::max({deep, s.front + s.middle, s.back - s.middle});
  }
  constexpr double kRoom = 5; // cells of free space round the trunk
  low = Vec3(-spacing, bottom - spacing, -deep - kRoom * spacing);
  const Vec3 high(half + kRoom * spacing, top + kRoom * spacing, deep + kRoom * spacing);
  for (int c = 0; c < 3; ++c)
    count[c] = int(std::ceil((high[c] - low[c]) / spacing)) + 1;
  const auto at = [&](int i, int j, int k) {
    return std::size_t((k * count.y() + j) * count.x() + i);
  };
  std::vector<float> raw(at(count.x() - 1, count.y() - 1, count.z() - 1) + 1);
  for (int j = 0; j < count.y(); ++j) {
    const double y = low.y() + j * spacing;
    const TrunkSection s = section(y);
    for (int k = 0; k < count.z(); ++k)
      for (int i = 0; i < count.x(); ++i)
        raw[at(i, j, k)] = float(exact({low.x() + i * spacing, y, low.z() + k * spacing}, s));
  }
  const auto eachNode = [&](const auto& visit) {
    for (int k = 0; k < count.z(); ++k)
      for (int j = 0; j < count.y(); ++j)
        for (int i = 0; i < count.x(); ++i)
          visit(i, j, k);
  };
  // Between the neighbours, or at the rim between a node and its one neighbour.
  const auto slope = [&](const auto& value, int i, int j, int k) {
    const auto along = [&](int c, int n, const auto& node) {
      const int down = std::max(c - 1, 0), up = std::min(c + 1, n - 1);
      return (value(node(up)) - value(node(down))) / float((up - down) * spacing);
    };
    return Eigen::Vector3f(along(i, count.x(), [&](int c) { return at(c, j, k); }),
                           along(j, count.y(), [&](int c) { return at(i, c, k); }),
                           along(k, count.z(), [&](int c) { return at(i, j, c); }));
  };
  // Sections that change with the height are steeper than they are told to be: divided by the
  // field's own slope the values are distances near the surface.
  nodes.resize(raw.size());
  eachNode([&](int i, int j, int k) {
    const float steep = slope([&](std::size_t n) { return raw[n]; }, i, j, k).norm();
    nodes[at(i, j, k)][0] = raw[at(i, j, k)] / std::clamp(steep, 0.6f, 2.0f);
  });
  eachNode([&](int i, int j, int k) {
    nodes[at(i, j, k)].tail<3>() = slope([&](std::size_t n) { return nodes[n][0]; }, i, j, k);
  });
}

double TrunkField::sampled(const Vec3& point, Vec3* normal) const {
  const double side = point.x() < 0 ? -1 : 1;
  Vec3 q = (Vec3(side * point.x(), point.y(), point.z()) - low) / spacing;
  double outside = 0; // beyond the sampled box it is at least as far as from the box
  for (int c = 0; c < 3; ++c) {
    const double held = std::clamp(q[c], 0.0, count[c] - 1.001);
    if (c != 1 || q[c] > held) outside += (q[c] - held) * (q[c] - held);
    q[c] = held;
  }
  const int i = int(q.x()), j = int(q.y()), k = int(q.z());
  const float x = float(q.x() - i), y = float(q.y() - j), z = float(q.z() - k);
  const std::size_t X = std::size_t(count.x()), Z = X * std::size_t(count.y());
  using Node = Eigen::Vector4f;
  const Node* a = &nodes[std::size_t(k) * Z + std::size_t(j) * X + std::size_t(i)];
  const auto between = [](const Node& from, const Node& to, float share) {
    return Node(from + share * (to - from));
  };
  const auto row = [&](const Node* n) { return between(n[0], n[1], x); };
  const Node here =
      between(between(row(a), row(a + X), y), between(row(a + Z), row(a + Z + X), y), z);
  if (normal) *normal = unit(Vec3(side * double(here[1]), here[2], here[3]));
  return double(here[0]) + std::sqrt(outside) * spacing;
}

} // namespace scye
