#include "schematic/cap_shape.h"

namespace scye {
namespace {

class CapShapeDrawer {
public:
  CapShapeDrawer(const GarmentDraft& g, const Phrases& phrases, const SchematicOptions& o)
      : shape_(g.cap.back), height_(g.cap.height), curve_(capCurve(shape_, height_)),
        phrases_(phrases), o_(o) {
    group_.id = "capShape";
    group_.title = phrases.say("capShape.title");
  }

  Group draw() {
    halfCap();
    arm(curve_.p[0], curve_.p[1], Field::LowerFullness);
    arm(curve_.p[3], curve_.p[2], Field::UpperFullness);
    words();
    return std::move(group_);
  }

private:
  void stroke(const Path& path, Role role, bool filled = false) {
    group_.strokes.push_back({path, role, filled});
  }
  [[nodiscard]] Role roleOf(Field field, Role usual) const {
    return o_.lit == field ? Role::Lit : usual;
  }

  void halfCap() {
    const Vec2 seam(shape_.halfWidth, 0), top(0, height_);
    Path edge(seam);
    edge.lineTo(curve_.p[0]).cubicTo(curve_.p[1], curve_.p[2], curve_.p[3]).lineTo(top);
    Path fabric = edge;
    fabric.lineTo(Vec2(0, 0)).lineTo(seam);
    stroke(fabric, Role::Fabric, true);
    stroke(Path::polyline({top, {0, 0}, seam}), Role::Guide);
    stroke(edge, Role::Outline);
  }

  // From the curve's end to its control point, with a knob.
  void arm(const Vec2& from, const Vec2& to, Field field) {
    const Role role = roleOf(field, Role::Measure);
    const double r = 0.28 * o_.textHeight;
    stroke(Path::polyline({from, to}), role);
    stroke(Path::polyline({to + Vec2(-r, -r), to + Vec2(r, -r), to + Vec2(r, r), to + Vec2(-r, r),
                           to + Vec2(-r, -r)}),
           role, true);
  }

  void words() {
    const double h = o_.textHeight;
    const auto label = [&](const char* key, double share, double y, Field field) {
      group_.labels.push_back({{0, y},
                               phrases_.say(key, {percentParam("share", share)}),
                               roleOf(field, Role::Note),
                               h,
                               Anchor::Start,
                               0});
    };
    label("capShape.upper", shape_.upperFullness, height_ + 0.7 * h, Field::UpperFullness);
    label("capShape.lower", shape_.lowerFullness, -1.4 * h, Field::LowerFullness);
  }

  const CapShape& shape_;
  double height_;
  Cubic curve_;
  const Phrases& phrases_;
  const SchematicOptions& o_;
  Group group_;
};

} // namespace

Picture capShapePicture(const GarmentDraft& g, const Phrases& phrases, const SchematicOptions& o) {
  Picture picture;
  picture.title = phrases.say("capShape.title");
  picture.textHeight = o.textHeight;
  picture.groups.push_back(CapShapeDrawer(g, phrases, o).draw());
  return picture;
}

} // namespace scye
