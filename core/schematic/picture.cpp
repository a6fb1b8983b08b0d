#include "schematic/picture.h"

#include <cmath>
#include <numbers>

namespace scye {

double textWidth(std::string_view text, double height) {
  // Count code points, not bytes.
  int n = 0;
  for (const char c : text) n += (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  return 0.62 * height * n;
}

Box labelBox(const Label& label) {
  const double width = textWidth(label.text, label.height);
  const double left = label.anchor == Anchor::Start    ? 0
                      : label.anchor == Anchor::Middle ? -0.5 * width
                                                       : -width;
  const double angle = label.angle * std::numbers::pi / 180;
  const Vec2 along(std::cos(angle), std::sin(angle)), up(-along.y(), along.x());
  Box box;
  for (const double x : {left, left + width})
    for (const double y : {-0.25 * label.height, 0.8 * label.height})
      box.add(Vec2(label.at + x * along + y * up));
  return box;
}

Box Group::box() const {
  Box box;
  for (const Stroke& s : strokes) box.add(s.path);
  for (const Label& l : labels) box.add(labelBox(l));
  return box;
}

Box Picture::box() const {
  Box box;
  for (const Group& g : groups) box.add(g.box());
  return box;
}

void moveGroup(Group& g, const Vec2& by) {
  g.origin += by;
  for (Stroke& s : g.strokes) s.path = s.path.moved(by);
  for (Label& l : g.labels) l.at += by;
  for (HotSpot& h : g.hotSpots) h.box.low += by, h.box.high += by;
}

namespace {

void addArrow(Group& group, const Vec2& tip, const Vec2& direction, double size, Role role) {
  const Vec2 side(-direction.y(), direction.x());
  const Vec2 back = tip - size * direction;
  group.strokes.push_back(
      {Path::polyline({tip, back + 0.17 * size * side, back - 0.17 * size * side, tip}), role, true});
}

} // namespace

void addDimension(Group& group, const Vec2& from, const Vec2& to, double offset,
                  const std::string& text, double textHeight, std::optional<Field> field, Role role) {
  const double distance = (to - from).norm();
  if (distance < 1e-6) return;
  const Vec2 along = (to - from) / distance, side(-along.y(), along.x());
  const Vec2 a = from + offset * side, b = to + offset * side;
  const double sign = offset < 0 ? -1 : 1;
  if (std::abs(offset) > 0.6 * textHeight) {
    const Vec2 gap = sign * 0.25 * textHeight * side, over = sign * 0.35 * textHeight * side;
    for (const auto& [near, far] : {std::pair(from, a), std::pair(to, b)})
      group.strokes.push_back({Path::polyline({near + gap, far + over}), role, false});
  }
  const double arrow = 0.75 * textHeight, width = textWidth(text, textHeight);
  const bool inside = distance > width + 2.2 * arrow;
  // Read from below or from the right.
  Vec2 reading = along;
  if (reading.x() < -1e-9 || (std::abs(reading.x()) <= 1e-9 && reading.y() < 0)) reading = -reading;
  const Vec2 up(-reading.y(), reading.x());
  Label label{.text = text, .role = role, .height = textHeight};
  label.angle = std::atan2(reading.y(), reading.x()) * 180 / std::numbers::pi;
  if (inside) {
    group.strokes.push_back({Path::polyline({a, b}), role, false});
    addArrow(group, a, -along, arrow, role);
    addArrow(group, b, along, arrow, role);
    label.at = 0.5 * (a + b) + 0.3 * textHeight * up;
  } else {
    const Vec2 end = b + (2.2 * arrow + width) * along;
    group.strokes.push_back({Path::polyline({a - 2 * arrow * along, end}), role, false});
    addArrow(group, a, along, arrow, role);
    addArrow(group, b, -along, arrow, role);
    label.at = b + (1.8 * arrow + 0.5 * width) * along + 0.3 * textHeight * up;
  }
  group.labels.push_back(label);
  if (field) group.hotSpots.push_back({labelBox(label), *field});
}

} // namespace scye
