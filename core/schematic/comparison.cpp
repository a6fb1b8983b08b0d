#include "schematic/schematic.h"
#include "seam/walk.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// One side: the two edges over each other, ticks between the points that are sewn together, and below
// the strip along the seam.
class SideDrawer {
public:
  SideDrawer(const GarmentDraft& g, BodySide side, const Phrases& phrases, const SchematicOptions& o)
      : walk_(g, side), phrases_(phrases), o_(o), h_(o.textHeight) {
    group_.id = side == BodySide::Back ? "back" : "front";
    group_.title = phrases.say("side." + group_.id);
  }

  Group draw(double strip) {
    edges();
    ticks();
    this->strip(strip);
    return std::move(group_);
  }
  [[nodiscard]] const SeamWalk& walk() const { return walk_; }

private:
  void edges() {
    const double step = 1.5; // cm between ticks that only show the pairing
    for (double s = step; s < walk_.armhole().length(); s += step)
      pair(s, Role::Pair);
    group_.strokes.push_back({walk_.armhole().path(), Role::Armhole, false});
    group_.strokes.push_back({walk_.cap().path(), Role::Cap, false});
  }

  void pair(double s, Role role) {
    const Vec2 a = walk_.armhole().at(s).point, c = walk_.cap().at(walk_.onCap(s)).point;
    if ((a - c).norm() > 0.05) group_.strokes.push_back({Path::polyline({a, c}), role, false});
  }

  void ticks() {
    for (const double s : walk_.notches()) {
      for (const auto& place : {walk_.armhole().at(s), walk_.cap().at(walk_.onCap(s))}) {
        const Vec2 across(-place.tangent.y(), place.tangent.x());
        const Vec2 half = 0.45 * h_ * across;
        group_.strokes.push_back(
            {Path::polyline({Vec2(place.point - half), Vec2(place.point + half)}), Role::Notch, false});
      }
      pair(s, Role::Notch);
    }
  }

  // How much longer the cap has become, over the way along the armhole; 1 cm of ease is drawn kScale cm
  // high.
  void strip(double top) {
    constexpr double kScale = 1.5;
    const double length = walk_.armhole().length(), zero = top - kScale * std::max(walk_.ease(), 0.5);
    std::vector<Vec2> line{{0, zero}};
    constexpr int kSteps = 48;
    for (int i = 0; i <= kSteps; ++i) {
      const double s = length * i / kSteps;
      line.push_back({s, zero + kScale * (walk_.onCap(s) - s)});
    }
    line.push_back({length, zero});
    line.push_back({0, zero});
    group_.strokes.push_back({Path::polyline(line), walk_.ease() >= 0 ? Role::Ease : Role::Short, true});
    group_.strokes.push_back({Path::polyline({{0, zero}, {length, zero}}), Role::Guide, false});
    for (const double s : walk_.notches())
      group_.strokes.push_back(
          {Path::polyline({{s, zero - 0.4 * h_}, {s, zero}}), Role::Notch, false});
    const double y = zero - 1.6 * h_;
    label({0, y}, phrases_.say("fit.strip.underarm"), Anchor::Start);
    label({length, y}, phrases_.say("fit.strip.shoulder"), Anchor::End);
    label({length, zero + kScale * std::max(walk_.ease(), 0.0) + 0.4 * h_},
          phrases_.say("fit.strip.ease", {lengthParam("ease", walk_.ease())}, o_.unit), Anchor::End);
  }

  void label(const Vec2& at, std::string text, Anchor anchor) {
    group_.labels.push_back({at, std::move(text), Role::Note, h_, anchor, 0});
  }

  SeamWalk walk_;
  const Phrases& phrases_;
  const SchematicOptions& o_;
  double h_;
  Group group_;
};

} // namespace

Picture fitComparison(const GarmentDraft& g, const Phrases& phrases, const SchematicOptions& o) {
  Picture picture;
  picture.title = phrases.say("fit.title");
  picture.textHeight = o.textHeight;
  Vec2 at = Vec2::Zero();
  for (const BodySide side : {BodySide::Back, BodySide::Front}) {
    SideDrawer drawer(g, side, phrases, o);
    const Box armhole = [&] {
      Box b;
      b.add(drawer.walk().armhole().path());
      b.add(drawer.walk().cap().path());
      return b;
    }();
    Group group = drawer.draw(-1.5 * o.textHeight);
    group.labels.push_back({Vec2(0.5 * armhole.high.x(), armhole.high.y() + 0.8 * o.textHeight), group.title,
                            Role::Caption, 1.2 * o.textHeight, Anchor::Middle, 0});
    moveGroup(group, at);
    if (o.perRow == 1)
      at.y() -= group.box().size().y() + 2 * o.textHeight;
    else
      at.x() += std::max(armhole.high.x(), drawer.walk().armhole().length()) + 2.5 * o.textHeight;
    picture.groups.push_back(std::move(group));
  }
  return picture;
}

FitVerdict fitVerdict(const GarmentDraft& g, const Phrases& phrases, LengthUnit unit) {
  FitVerdict v;
  v.armhole = g.cap.armhole(), v.cap = g.cap.cap(), v.ease = g.cap.ease();
  v.fits = g.cap.found && !anyBlocking(g.findings);
  if (!v.fits) {
    for (const Finding& f : g.findings)
      if (f.severity == Severity::Blocking) {
        v.sentence = phrases.say("finding." + f.code, f.params, unit);
        return v;
      }
  }
  const bool smooth = v.ease >= 0 && v.ease <= g.sizes[Field::LimitCapEase];
  v.sentence = phrases.say(smooth                 ? "fit.verdict.fits"
                           : v.ease < 0           ? "fit.verdict.short"
                           : g.design.yes(Choice::Gathers) ? "fit.verdict.gathers"
                                                  : "fit.verdict.long",
                           {lengthParam("ease", std::abs(v.ease)), lengthParam("height", g.cap.height)}, unit);
  if (!smooth && !(v.ease > 0 && g.design.yes(Choice::Gathers))) v.fits = false;
  return v;
}

} // namespace scye
