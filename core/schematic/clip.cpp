#include "schematic/clip.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace scye {
namespace {

constexpr double kOnEdge = 1e-9; // cm

bool isStraight(const Path& path) {
  const auto& segments = path.segments();
  return std::all_of(segments.begin(), segments.end(),
                     [](const Cubic& c) { return c.isStraight(); });
}

std::vector<Vec2> cornersOf(const Path& path) {
  std::vector<Vec2> points{path.start()};
  for (const Cubic& c : path.segments())
    points.push_back(c.end());
  return points;
}

// Sutherland and Hodgman, "Reentrant polygon clipping" (1974): one side of the box after the other.
std::vector<Vec2> clippedFace(std::vector<Vec2> points, const Box& box) {
  for (int axis = 0; axis < 2; ++axis)
    for (const bool upper : {false, true}) {
      const double limit = upper ? box.high[axis] : box.low[axis];
      const auto inside = [&](const Vec2& p) {
        return upper ? p[axis] <= limit : p[axis] >= limit;
      };
      std::vector<Vec2> kept;
      for (std::size_t i = 0; i < points.size(); ++i) {
        const Vec2 &a = points[i], &b = points[(i + 1) % points.size()];
        if (inside(a)) kept.push_back(a);
        if (inside(a) != inside(b))
          kept.emplace_back(a + (b - a) * (limit - a[axis]) / (b[axis] - a[axis]));
      }
      points = std::move(kept);
    }
  return points;
}

// Liang and Barsky, "A new concept and method for line clipping" (1984).
std::optional<std::pair<Vec2, Vec2>> clippedLine(const Vec2& a, const Vec2& b, const Box& box) {
  double from = 0, to = 1;
  const Vec2 d = b - a;
  for (int axis = 0; axis < 2; ++axis) {
    const double low = box.low[axis] - kOnEdge - a[axis], high = box.high[axis] + kOnEdge - a[axis];
    if (std::abs(d[axis]) < kOnEdge) {
      if (low > 0 || high < 0) return std::nullopt;
      continue;
    }
    from = std::max(from, std::min(low / d[axis], high / d[axis]));
    to = std::min(to, std::max(low / d[axis], high / d[axis]));
  }
  if (from > to) return std::nullopt;
  return std::pair(Vec2(a + from * d), Vec2(a + to * d));
}

} // namespace

void clipTo(Group& group, const Box& box) {
  std::vector<Stroke> kept;
  for (Stroke& stroke : group.strokes) {
    Box all;
    all.add(stroke.path);
    if (all.empty() || (all.low.array() > box.high.array() + kOnEdge).any() ||
        (all.high.array() < box.low.array() - kOnEdge).any())
      continue;
    if ((all.low.array() >= box.low.array() - kOnEdge).all() &&
        (all.high.array() <= box.high.array() + kOnEdge).all()) {
      kept.push_back(std::move(stroke));
      continue;
    }
    if (!isStraight(stroke.path)) continue;
    const std::vector<Vec2> points = cornersOf(stroke.path);
    if (stroke.filled) {
      std::vector<Vec2> face = clippedFace(points, box);
      if (face.size() < 3) continue;
      face.push_back(face.front());
      kept.push_back({Path::polyline(face), stroke.role, true});
      continue;
    }
    std::vector<Vec2> run;
    const auto flush = [&] {
      if (run.size() > 1) kept.push_back({Path::polyline(run), stroke.role, false});
      run.clear();
    };
    for (std::size_t i = 1; i < points.size(); ++i) {
      const auto part = clippedLine(points[i - 1], points[i], box);
      if (!part || (part->second - part->first).norm() < kOnEdge) {
        if (!part) flush();
        continue;
      }
      if (run.empty() || (run.back() - part->first).norm() > kOnEdge) {
        flush();
        run.push_back(part->first);
      }
      run.push_back(part->second);
    }
    flush();
  }
  group.strokes = std::move(kept);
}

} // namespace scye
