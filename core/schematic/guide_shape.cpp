#include "schematic/guide_shape.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// The arm of a quarter circle's cubic.
const double kCircleArm = 4 * (std::sqrt(2.0) - 1) / 3;

} // namespace

Path smooth(const std::vector<Vec2>& p) {
  const std::size_t n = p.size();
  if (n < 3) return Path::polyline(p);
  std::vector<double> h(n - 1);
  for (std::size_t i = 0; i + 1 < n; ++i)
    h[i] = (p[i + 1] - p[i]).norm();
  // Rows of the system for the velocities v: below v[i-1] + diagonal v[i] + above v[i+1] = right.
  std::vector<double> above(n, 1);
  std::vector<Vec2> v(n);
  above[0] = 0.5;
  v[0] = 1.5 * (p[1] - p[0]) / h[0];
  for (std::size_t i = 1; i < n; ++i) {
    const bool inner = i + 1 < n;
    const double below = inner ? h[i] : 1, diagonal = inner ? 2 * (h[i - 1] + h[i]) : 2,
                 next = inner ? h[i - 1] : 0;
    const Vec2 before = (p[i] - p[i - 1]) / h[i - 1];
    const Vec2 right =
        inner ? Vec2(3 * (h[i] * before + h[i - 1] / h[i] * (p[i + 1] - p[i]))) : Vec2(3 * before);
    const double pivot = diagonal - below * above[i - 1];
    above[i] = next / pivot;
    v[i] = (right - below * v[i - 1]) / pivot;
  }
  for (std::size_t i = n - 1; i-- > 0;)
    v[i] -= above[i] * v[i + 1];
  Path path(p[0]);
  for (std::size_t i = 1; i < n; ++i)
    path.cubicTo(p[i - 1] + h[i - 1] / 3 * v[i - 1], p[i] - h[i - 1] / 3 * v[i], p[i]);
  return path;
}

Path smoothHalf(const std::vector<Vec2>& p) {
  // With its mirror image as neighbour: (-x, y) of all but the end itself.
  const auto mirrored = [&](std::vector<Vec2> points) {
    for (Vec2& v : points)
      v.x() = -v.x();
    return std::vector<Vec2>(points.rbegin(), points.rend());
  };
  std::vector<Vec2> more = p;
  std::size_t first = 0;
  if (p.back().x() == 0) {
    const std::vector<Vec2> after = mirrored({p.begin(), p.end() - 1});
    more.insert(more.end(), after.begin(), after.end());
  }
  if (p.front().x() == 0) {
    const std::vector<Vec2> before = mirrored({p.begin() + 1, p.end()});
    more.insert(more.begin(), before.begin(), before.end());
    first = before.size();
  }
  return part(smooth(more), first, first + p.size() - 1);
}

Path part(const Path& path, std::size_t from, std::size_t to) {
  const std::vector<Cubic>& spans = path.segments();
  Path out(spans[from].start());
  for (std::size_t i = from; i < to; ++i)
    out.cubicTo(spans[i].p[1], spans[i].p[2], spans[i].p[3]);
  return out;
}

Path scaled(const Path& path, double by) {
  Path out(by * path.start());
  for (const Cubic& c : path.segments())
    out.cubicTo(by * c.p[1], by * c.p[2], by * c.p[3]);
  return out;
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
