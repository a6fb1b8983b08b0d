#include "schematic/guide_shape.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// The arm of a quarter circle's cubic.
const double kCircleArm = 4 * (std::sqrt(2.0) - 1) / 3;

Vec2 tangent(const Vec2& before, const Vec2& here, const Vec2& after) {
  const double a = std::sqrt((here - before).norm()), b = std::sqrt((after - here).norm());
  return ((here - before) / a * b + (after - here) / b * a) / (a + b);
}

// A span whose end tangents are given for a unit of the square root of the chord.
void addSpan(Path& path, const Vec2& a, const Vec2& va, const Vec2& vb, const Vec2& b) {
  const double h = std::sqrt((b - a).norm()) / 3;
  path.cubicTo(a + h * va, b - h * vb, b);
}

} // namespace

Path smooth(const std::vector<Vec2>& p) {
  const std::size_t n = p.size();
  if (n < 3) return Path::polyline(p);
  std::vector<Vec2> v(n);
  for (std::size_t i = 1; i + 1 < n; ++i) v[i] = tangent(p[i - 1], p[i], p[i + 1]);
  // At the ends the curvature runs out.
  v[0] = 1.5 * (p[1] - p[0]) / std::sqrt((p[1] - p[0]).norm()) - 0.5 * v[1];
  v[n - 1] = 1.5 * (p[n - 1] - p[n - 2]) / std::sqrt((p[n - 1] - p[n - 2]).norm()) - 0.5 * v[n - 2];
  Path path(p[0]);
  for (std::size_t i = 1; i < n; ++i) addSpan(path, p[i - 1], v[i - 1], v[i], p[i]);
  return path;
}

Path smoothHalf(const std::vector<Vec2>& p) {
  const auto mirrored = [](const Vec2& v) { return Vec2(-v.x(), v.y()); };
  const bool first = p.front().x() == 0, last = p.back().x() == 0;
  std::vector<Vec2> more = p;
  if (first) more.insert(more.begin(), mirrored(p[1]));
  if (last) more.push_back(mirrored(p[p.size() - 2]));
  const std::vector<Cubic> spans = smooth(more).segments();
  Path path(p.front());
  for (std::size_t i = first; i + last < spans.size(); ++i) path.cubicTo(spans[i].p[1], spans[i].p[2], spans[i].p[3]);
  return path;
}

Path disc(const Vec2& c, double r) {
  Path path(c + Vec2(r, 0));
  const double arm = kCircleArm * r;
  Vec2 out(1, 0);
  for (int quarter = 0; quarter < 4; ++quarter) {
    const Vec2 next(-out.y(), out.x());
    path.cubicTo(c + r * out + arm * next, c + r * next + arm * out, c + r * next);
    out = next;
  }
  return path;
}

Band bandRound(const Vec2& left, const Vec2& right, double front, double back) {
  const Vec2 half = (right - left) / 2, middle = (left + right) / 2;
  const Vec2 up = Vec2(-half.y(), half.x()).normalized();
  const auto arc = [&](double sag) {
    const Vec2 deep = middle + sag * up;
    return Path(left)
        .cubicTo(left + kCircleArm * sag * up, deep - kCircleArm * half, deep)
        .cubicTo(deep + kCircleArm * half, right + kCircleArm * sag * up, right);
  };
  return {arc(-front), arc(back)};
}

std::optional<double> outermostAt(const Path& path, double y) {
  std::optional<double> x;
  const std::vector<Vec2> points = path.flattened(24);
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Vec2 &a = points[i - 1], &b = points[i];
    if (std::min(a.y(), b.y()) > y || std::max(a.y(), b.y()) < y) continue;
    const double t = a.y() == b.y() ? 0 : (y - a.y()) / (b.y() - a.y());
    const double here = a.x() + t * (b.x() - a.x());
    if (!x || here > *x) x = here;
  }
  return x;
}

} // namespace scye
