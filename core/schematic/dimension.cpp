#include "schematic/dimension.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scye {
namespace {

// Liang and Barsky's clipping: does any of the segment lie inside the box?
bool touches(const Box& box, const Vec2& a, const Vec2& b) {
  double t0 = 0, t1 = 1;
  const Vec2 d = b - a;
  for (int axis = 0; axis < 2; ++axis) {
    if (std::abs(d[axis]) < 1e-12) {
      if (a[axis] < box.low[axis] || a[axis] > box.high[axis]) return false;
      continue;
    }
    double in = (box.low[axis] - a[axis]) / d[axis], out = (box.high[axis] - a[axis]) / d[axis];
    if (in > out) std::swap(in, out);
    t0 = std::max(t0, in), t1 = std::min(t1, out);
    if (t0 > t1) return false;
  }
  return true;
}

bool overlap(const Box& a, const Box& b) {
  return a.low.x() < b.high.x() && b.low.x() < a.high.x() && a.low.y() < b.high.y() &&
         b.low.y() < a.high.y();
}

// Whether two lines run over one another for longer than the arrows outside a short one need.
bool runTogether(const Vec2& a, const Vec2& b, const Vec2& c, const Vec2& d, double textHeight) {
  const double length = (b - a).norm();
  if (length <= 0) return false;
  const Vec2 along = (b - a) / length, side(-along.y(), along.x());
  if (std::max(std::abs((c - a).dot(side)), std::abs((d - a).dot(side))) > 0.6 * textHeight)
    return false;
  const auto [low, high] = std::minmax({(c - a).dot(along), (d - a).dot(along)});
  return std::min(high, length) - std::max(low, 0.0) > 1.7 * textHeight;
}

} // namespace

Dimensions::Dimensions(Group& group, double textHeight) : group_(group), h_(textHeight) {
  for (const Label& l : group.labels)
    figures_.push_back(labelBox(l));
}

void Dimensions::avoid(const Path& path) {
  const std::vector<Vec2> points = path.flattened(8);
  for (std::size_t i = 1; i < points.size(); ++i)
    lines_.push_back({points[i - 1], points[i]});
}

void Dimensions::level(const Dimension& d, const std::vector<double>& ys) {
  std::vector<double> offsets;
  for (const double y : ys)
    offsets.push_back(y - d.from.y());
  place(d, Vec2(1, 0), offsets);
}

void Dimensions::upright(const Dimension& d, const std::vector<double>& xs) {
  std::vector<double> offsets;
  for (const double x : xs)
    offsets.push_back(d.from.x() - x);
  place(d, Vec2(0, 1), offsets);
}

void Dimensions::sloping(const Dimension& d, const std::vector<double>& offsets) {
  if (const double distance = (d.to - d.from).norm(); distance > 0)
    place(d, (d.to - d.from) / distance, offsets);
}

void Dimensions::label(Label label, const std::vector<Vec2>& places) {
  for (const Vec2& at : places) {
    label.at = at;
    if (clashes(labelBox(label)) == 0) break;
  }
  figures_.push_back(labelBox(label));
  group_.labels.push_back(std::move(label));
}

bool Dimensions::isFree(const Label& label) const {
  return clashes(labelBox(label)) == 0;
}

void Dimensions::labelIfFree(Label label, const std::vector<Vec2>& places) {
  const auto free = std::find_if(places.begin(), places.end(), [&](const Vec2& at) {
    label.at = at;
    return clashes(labelBox(label)) == 0;
  });
  if (free != places.end()) this->label(std::move(label), {*free});
}

void Dimensions::place(const Dimension& d, const Vec2& along, const std::vector<double>& offsets) {
  const double distance = std::abs((d.to - d.from).dot(along));
  const bool inside = distance > textWidth(d.text, h_) + 1.65 * h_;
  const std::vector<Figure> figures =
      inside ? std::vector{Figure::Middle, Figure::NearTo, Figure::NearFrom}
             : std::vector{Figure::BeyondTo, Figure::BeyondFrom};
  Drawn best;
  int fewest = 1 << 30;
  for (const double offset : offsets)
    for (const Figure figure : figures) {
      Drawn candidate = drawn(d, along, offset, figure);
      const int n = clashes(candidate);
      if (n >= fewest) continue;
      best = std::move(candidate), fewest = n;
      if (n == 0) {
        commit(d, best);
        return;
      }
    }
  if (!offsets.empty() && !d.orNone) commit(d, best);
}

Dimensions::Drawn Dimensions::drawn(const Dimension& d, const Vec2& direction, double offset,
                                    Figure figure) const {
  const Vec2 along = (d.to - d.from).dot(direction) < 0 ? Vec2(-direction) : direction;
  const Vec2 side(-direction.y(), direction.x());
  const Vec2 a = d.from + offset * side;
  const Vec2 b = d.to + (a - d.to).dot(side) * side;
  Drawn out;
  for (const auto& [feature, foot] : {std::pair(d.from, a), std::pair(d.to, b)}) {
    const double far = (foot - feature).dot(side), sign = far < 0 ? -1 : 1;
    if (std::abs(far) > 0.6 * h_)
      out.lines.push_back({feature + sign * 0.25 * h_ * side, foot + sign * 0.35 * h_ * side});
  }
  const double arrow = 0.75 * h_, width = textWidth(d.text, h_), distance = (b - a).norm();
  const bool beyondTo = figure == Figure::BeyondTo,
             beyond = beyondTo || figure == Figure::BeyondFrom;
  // Read from below or from the right.
  Vec2 reading = along;
  if (reading.x() < -1e-9 || (std::abs(reading.x()) <= 1e-9 && reading.y() < 0)) reading = -reading;
  const Vec2 up(-reading.y(), reading.x());
  out.label = {.text = d.text, .role = d.role, .height = h_};
  out.label.angle = std::atan2(reading.y(), reading.x()) * 180 / std::numbers::pi;
  const double room = 0.5 * distance - 0.5 * width - 1.1 * arrow; // from the middle either way
  const double far = 1.8 * arrow + 0.5 * width;
  const double middle = figure == Figure::NearTo     ? 0.5 * distance + 0.6 * room
                        : figure == Figure::NearFrom ? 0.5 * distance - 0.6 * room
                        : figure == Figure::Middle   ? 0.5 * distance
                        : beyondTo                   ? distance + far
                                                     : -far;
  out.label.at = a + middle * along + 0.3 * h_ * up;
  const double longer = far + 0.5 * width + 0.4 * arrow, shorter = 2 * arrow;
  out.lines.push_back(beyond ? Line{a - (beyondTo ? shorter : longer) * along,
                                    b + (beyondTo ? longer : shorter) * along}
                             : Line{a, b});
  out.arrowAt[0] = a, out.arrowAt[1] = b;
  out.arrowTo[0] = beyond ? along : Vec2(-along), out.arrowTo[1] = -out.arrowTo[0];
  return out;
}

int Dimensions::clashes(const Box& figure) const {
  int n = 0;
  for (const Box& other : figures_)
    n += 10 * overlap(figure, other);
  for (const Line& l : lines_)
    n += touches(figure, l.a, l.b);
  return n;
}

int Dimensions::clashes(const Drawn& drawn) const {
  int n = clashes(labelBox(drawn.label));
  for (const Line& own : drawn.lines)
    for (const Box& figure : figures_)
      n += 3 * touches(figure, own.a, own.b);
  // A figure beyond its arrows would be read as that of the next dimension.
  const Line& own = drawn.lines.back();
  for (const Line& other : runs_)
    n += 10 * runTogether(own.a, own.b, other.a, other.b, h_);
  return n;
}

void Dimensions::commit(const Dimension& d, const Drawn& drawn) {
  const double size = 0.75 * h_;
  for (const Line& l : drawn.lines) {
    group_.strokes.push_back({Path::polyline({l.a, l.b}), d.role, false});
    lines_.push_back(l);
  }
  runs_.push_back(drawn.lines.back());
  for (int i = 0; i < 2; ++i) {
    const Vec2 &tip = drawn.arrowAt[i], &way = drawn.arrowTo[i];
    const Vec2 side(-way.y(), way.x()), back = tip - size * way;
    group_.strokes.push_back(
        {Path::polyline({tip, back + 0.17 * size * side, back - 0.17 * size * side, tip}), d.role,
         true});
  }
  const Box figure = labelBox(drawn.label);
  group_.labels.push_back(drawn.label);
  figures_.push_back(figure);
  if (d.field) group_.hotSpots.push_back({figure, *d.field});
}

} // namespace scye
