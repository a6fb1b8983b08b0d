#include "worn/body_surface.h"

#include <numbers>

namespace scye {
namespace {

void addMirrored(Surface& s) {
  const int n = int(s.at.size());
  const std::size_t triangles = s.triangles.size();
  for (int i = 0; i < n; ++i) {
    const Vec3f p = s.at[std::size_t(i)], m = s.normal[std::size_t(i)];
    s.at.emplace_back(-p.x(), p.y(), p.z());
    s.normal.emplace_back(-m.x(), m.y(), m.z());
  }
  for (std::size_t k = 0; k < triangles; ++k) {
    const auto t = s.triangles[k];
    s.triangles.push_back({t[0] + n, t[2] + n, t[1] + n});
  }
}

// A lattice of cells; each cell that the surface passes through has one point.
class Nets {
public:
  Nets(const BodyForm& body, double spacing) : body_(body), h_(spacing) {
    const auto hip = body.sectionAt(body.measures().hipY),
               bust = body.sectionAt(body.measures().bustY);
    const double half = std::max({hip.half, bust.half, body.measures().halfShoulder}) + 3 * h_;
    const double front = std::max(hip.front, bust.front) + 4 * h_,
                 back = std::max(hip.back, bust.back) + 4 * h_;
    low_ = Vec3(-h_, body.bottom() - 2.5 * h_, -back);
    const Vec3 size(half + h_, body.top() - body.bottom() + 6.5 * h_, front + back);
    for (int c = 0; c < 3; ++c)
      n_[c] = int(std::ceil(size[c] / h_)) + 1;
    field_.resize(std::size_t(n_.x()) * std::size_t(n_.y()) * std::size_t(n_.z()));
    for (int k = 0; k < n_.z(); ++k)
      for (int j = 0; j < n_.y(); ++j)
        for (int i = 0; i < n_.x(); ++i)
          field_[at(i, j, k)] = float(closed(low_ + h_ * Vec3(i, j, k), nullptr));
  }

  Surface run() {
    cell_.assign(field_.size(), -1);
    for (int k = 0; k + 1 < n_.z(); ++k)
      for (int j = 0; j + 1 < n_.y(); ++j)
        for (int i = 0; i + 1 < n_.x(); ++i)
          place(i, j, k);
    for (int k = 1; k + 1 < n_.z(); ++k)
      for (int j = 1; j + 1 < n_.y(); ++j)
        for (int i = 1; i + 1 < n_.x(); ++i)
          faces(i, j, k);
    addMirrored(out_);
    return std::move(out_);
  }

private:
  // The trunk cut off where its field ends.
  [[nodiscard]] double closed(const Vec3& p, Vec3* normal) const {
    const double d = body_.trunk(p, normal), cut = body_.bottom() - p.y(), round = 1.5 * h_;
    const double h = std::max(round - std::abs(d - cut), 0.0) / round;
    if (normal) {
      const double share = cut > d ? 1 - 0.5 * h : 0.5 * h;
      *normal = unit(share * -Vec3::UnitY() + (1 - share) * *normal);
    }
    return std::max(d, cut) + h * h * round / 4;
  }

  [[nodiscard]] std::size_t at(int i, int j, int k) const {
    return std::size_t((k * n_.y() + j) * n_.x() + i);
  }

  void place(int i, int j, int k) {
    std::array<float, 8> value{};
    int inside = 0;
    for (int c = 0; c < 8; ++c) {
      value[std::size_t(c)] = field_[at(i + (c & 1), j + (c >> 1 & 1), k + (c >> 2))];
      inside += value[std::size_t(c)] < 0;
    }
    if (inside == 0 || inside == 8) return;
    constexpr std::array<std::array<int, 2>, 12> kEdges{{{0, 1},
                                                         {2, 3},
                                                         {4, 5},
                                                         {6, 7},
                                                         {0, 2},
                                                         {1, 3},
                                                         {4, 6},
                                                         {5, 7},
                                                         {0, 4},
                                                         {1, 5},
                                                         {2, 6},
                                                         {3, 7}}};
    Vec3 sum = Vec3::Zero();
    int crossed = 0;
    for (const auto& [a, b] : kEdges) {
      const double fa = value[std::size_t(a)], fb = value[std::size_t(b)];
      if ((fa < 0) == (fb < 0)) continue;
      const Vec3 p(a & 1, a >> 1 & 1, a >> 2), q(b & 1, b >> 1 & 1, b >> 2);
      sum += p + (q - p) * (fa / (fa - fb));
      ++crossed;
    }
    Vec3 p = low_ + h_ * (Vec3(i, j, k) + sum / crossed), normal;
    for (int again = 0; again < 3; ++again) {
      const double off = closed(p, &normal);
      p -= std::clamp(off, -0.4 * h_, 0.4 * h_) * normal;
    }
    cell_[at(i, j, k)] = int(out_.at.size());
    out_.at.push_back(p.cast<float>());
    out_.normal.push_back(normal.cast<float>());
  }

  void quad(int a, int b, int c, int d, bool turned) {
    if (a < 0 || b < 0 || c < 0 || d < 0) return;
    if (turned) std::swap(b, d);
    out_.triangles.push_back({a, b, c});
    out_.triangles.push_back({a, c, d});
  }

  void faces(int i, int j, int k) {
    const bool in = field_[at(i, j, k)] < 0;
    const auto cell = [&](int x, int y, int z) { return cell_[at(x, y, z)]; };
    if (in != (field_[at(i + 1, j, k)] < 0))
      quad(cell(i, j - 1, k - 1), cell(i, j, k - 1), cell(i, j, k), cell(i, j - 1, k), !in);
    if (in != (field_[at(i, j + 1, k)] < 0))
      quad(cell(i - 1, j, k - 1), cell(i - 1, j, k), cell(i, j, k), cell(i, j, k - 1), !in);
    if (in != (field_[at(i, j, k + 1)] < 0))
      quad(cell(i - 1, j - 1, k), cell(i, j - 1, k), cell(i, j, k), cell(i - 1, j, k), !in);
  }

  const BodyForm& body_;
  double h_;
  Vec3 low_ = Vec3::Zero();
  Eigen::Vector3i n_ = Eigen::Vector3i::Zero();
  std::vector<float> field_;
  std::vector<int> cell_;
  Surface out_;
};

} // namespace

Surface trunkSurface(const BodyForm& body) {
  return Nets(body, 1.1 * std::clamp(body.measures().scale(), 0.5, 1.15)).run();
}

Surface armSurface(const BodyForm& body) {
  constexpr int kAround = 24, kAlong = 44, kHalvings = 12;
  const BodyForm::Arm& a = body.leftArm();
  Surface s;
  const Vec3 top = a.shoulder - 0.9 * a.shoulderRadius * a.upper();
  const Vec3 tip = a.fingers + 0.20 * a.handRadius * (a.fingers - a.wrist).normalized();
  const std::array<Vec3, 4> bone{top, a.elbow, a.wrist, tip};
  std::array<double, 4> way{};
  for (std::size_t i = 1; i < 4; ++i)
    way[i] = way[i - 1] + (bone[i] - bone[i - 1]).norm();
  const double reach = 1.6 * std::max(a.shoulderRadius, 2 * a.handRadius);
  for (int r = 0; r <= kAlong; ++r) {
    const double at =
        way[3] * (0.5 - 0.5 * std::cos(std::numbers::pi * (0.02 + 0.975 * r / kAlong)));
    const std::size_t i = at < way[1] ? 1 : at < way[2] ? 2 : 3;
    const Vec3 axis = (bone[i] - bone[i - 1]).normalized();
    const Vec3 middle = bone[i - 1] + (at - way[i - 1]) * axis;
    const Vec3 across = Vec3::UnitZ().cross(axis).normalized(), other = axis.cross(across);
    for (int k = 0; k < kAround; ++k) {
      const double angle = 2 * std::numbers::pi * k / kAround;
      const Vec3 ray = std::cos(angle) * across + std::sin(angle) * other;
      double low = 0, high = reach;
      for (int h = 0; h < kHalvings; ++h) {
        const double m = 0.5 * (low + high);
        (body.arms(middle + m * ray) < 0 ? low : high) = m;
      }
      const Vec3 p = middle + low * ray;
      Vec3 normal;
      (void)body.arms(p + 0.05 * ray, &normal);
      s.at.push_back(p.cast<float>());
      s.normal.push_back(normal.cast<float>());
    }
  }
  for (int k = 2; k < kAround; ++k) { // the finger tips
    const int last = kAlong * kAround;
    s.triangles.push_back({last, last + k - 1, last + k});
  }
  for (int r = 0; r < kAlong; ++r)
    for (int k = 0; k < kAround; ++k) {
      const int p = r * kAround + k, q = r * kAround + (k + 1) % kAround;
      s.triangles.push_back({p, q, q + kAround});
      s.triangles.push_back({p, q + kAround, p + kAround});
    }
  addMirrored(s);
  return s;
}

} // namespace scye
