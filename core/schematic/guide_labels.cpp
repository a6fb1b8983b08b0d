#include "schematic/guide_labels.h"

#include "schematic/guide_shape.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

constexpr double kLabelOnLabel = 100, kLeader = 3;
constexpr double kNearMiddle = 0.25; // of the way, either side of its middle
constexpr double kFinest = 1;        // cm of letters, below which chords need be no shorter

bool overlap(const Box& a, const Box& b) {
  return a.low.x() < b.high.x() && b.low.x() < a.high.x() && a.low.y() < b.high.y() &&
         b.low.y() < a.high.y();
}

Box grown(Box box, const Vec2& by) {
  box.low -= by, box.high += by;
  return box;
}

// The lines avoided are chains of short chords, so their ends tell.
bool inside(const Box& box, const Vec2& p) {
  return p.x() > box.low.x() && p.x() < box.high.x() && p.y() > box.low.y() && p.y() < box.high.y();
}

} // namespace

void GuideLabels::avoid(const Path& path, double weight) {
  for (const Cubic& c : path.segments()) {
    const int n =
        std::max(1, int(std::ceil(4 * (c.end() - c.start()).norm() / std::max(h_, kFinest))));
    for (int i = 0; i < n; ++i)
      lines_.push_back({c.at(double(i) / n), c.at(double(i + 1) / n), weight});
  }
}

std::vector<GuideLabels::Line> GuideLabels::linesIn(const Box& region) const {
  std::vector<Line> in;
  for (const Line& l : lines_)
    if (inside(region, l.a) || inside(region, l.b)) in.push_back(l);
  return in;
}

double GuideLabels::cost(const Box& box, const std::vector<Line>& lines) const {
  double sum = 0;
  for (const Box& other : boxes_)
    sum += kLabelOnLabel * overlap(box, other);
  double worst = 0; // a line counts once, however many chords of it lie there
  for (const Line& l : lines)
    if (inside(box, l.a) || inside(box, l.b)) worst += l.weight;
  return sum + worst;
}

std::pair<Label, double> GuideLabels::best(const Path& way, const std::string& text, Role role,
                                           double farthest) const {
  std::vector<Vec2> points{way.start()};
  for (const Cubic& c : way.segments())
    for (int i = 1; i <= 16; ++i)
      points.push_back(c.at(i / 16.0));
  Label found{.text = text, .role = role, .height = h_};
  double least = 1e300;
  const double half = 0.56 * textWidth(text, h_); // bold letters run a little wide
  Box region;
  for (const Vec2& p : points)
    region.add(p);
  const std::vector<Line> near = linesIn(grown(region, Vec2::Constant(2 * half + 3 * h_)));
  for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.0, 1.0}) {
    if (std::abs(share - 0.5) > farthest) break;
    for (const double side : {1.0, -1.0})
      for (const double off : {0.25, 0.6, 1.2}) {
        const std::size_t i = std::clamp<std::size_t>(
            std::size_t(share * double(points.size() - 1)), 1, points.size() - 1);
        const Vec2 along = (points[i] - points[i - 1]).normalized(),
                   normal = side * Vec2(-along.y(), along.x());
        // Off the line by the half of the box that lies that way.
        const double reach =
            half * std::abs(normal.x()) + 0.53 * h_ * std::abs(normal.y()) + off * h_;
        Label label = found;
        label.at = points[i] + reach * normal - Vec2(0, 0.28 * h_);
        const double here =
            cost(grown(labelBox(label),
                       Vec2(half - 0.5 * textWidth(text, h_) + 0.08 * h_, 0.08 * h_)),
                 near) +
            0.3 * off + std::abs(share - 0.5) * 0.4;
        if (here < least) found.at = label.at, least = here;
      }
  }
  return {found, least};
}

bool GuideLabels::beside(const Path& way, const std::string& text, Role role,
                         std::optional<Field> field) {
  const auto [label, cost] = best(way, text, role, kNearMiddle);
  if (cost >= 1) return false;
  put(label, field);
  return true;
}

void GuideLabels::besideAnyhow(const Path& way, const std::string& text, Role role,
                               std::optional<Field> field) {
  put(best(way, text, role, 0.5).first, field);
}

void GuideLabels::put(const Label& label, std::optional<Field> field) {
  group_.labels.push_back(label);
  boxes_.push_back(labelBox(label));
  if (field) group_.hotSpots.push_back({labelBox(label), *field});
}

void GuideLabels::callout(const Vec2& point, const std::string& text, Role role) {
  callouts_.push_back({point, text, role, point.y()});
}

void GuideLabels::finish(const Box& drawing) {
  std::vector<Callout> left, right;
  for (const Callout& c : callouts_)
    (c.point.x() < 0 ? left : right).push_back(c);
  callouts_.clear();
  column(std::move(left), drawing.low.x() - 1.2 * h_, Anchor::End);
  column(std::move(right), drawing.high.x() + 1.2 * h_, Anchor::Start);
}

void GuideLabels::column(std::vector<Callout> callouts, double x, Anchor anchor) {
  std::stable_sort(callouts.begin(), callouts.end(),
                   [](const Callout& a, const Callout& b) { return a.y > b.y; });
  for (std::size_t i = 1; i < callouts.size(); ++i)
    callouts[i].y = std::min(callouts[i].y, callouts[i - 1].y - 1.5 * h_);
  const double toward = anchor == Anchor::End ? 1 : -1;
  for (const Callout& c : callouts) {
    const Vec2 from(x + toward * 0.35 * h_, c.y);
    group_.strokes.push_back({Path::polyline({from, c.point}), Role::Measure, false});
    avoid(group_.strokes.back().path, kLeader);
    put({.at = {x, c.y - 0.28 * h_},
         .text = c.text,
         .role = c.role,
         .height = h_,
         .anchor = anchor},
        {});
  }
}

} // namespace scye
