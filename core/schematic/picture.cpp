#include "schematic/picture.h"

#include <cmath>
#include <numbers>

namespace scye {

double textWidth(std::string_view text, double height) {
  // Count code points, not bytes.
  int n = 0;
  for (const char c : text)
    n += (static_cast<unsigned char>(c) & 0xC0) != 0x80;
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
  for (const PlacedImage& i : images)
    box.add(i.box.low), box.add(i.box.high);
  for (const Stroke& s : strokes)
    box.add(s.path);
  for (const Label& l : labels)
    box.add(labelBox(l));
  return box;
}

Box Picture::box() const {
  Box box;
  for (const Group& g : groups)
    box.add(g.box());
  return box;
}

void moveGroup(Group& g, const Vec2& by) {
  g.origin += by;
  for (PlacedImage& i : g.images)
    i.box.low += by, i.box.high += by;
  for (Stroke& s : g.strokes)
    s.path = s.path.moved(by);
  for (Label& l : g.labels)
    l.at += by;
  for (HotSpot& h : g.hotSpots)
    h.box.low += by, h.box.high += by;
}

} // namespace scye
