// Both edges of one side straightened, the cap's above the armhole's, with the pins between them.
#include "knit/on_stitches.h"
#include "schematic/comparison_text.h"
#include "schematic/dimension.h"
#include "schematic/schematic.h"
#include "seam/walk.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

class StraightDrawer {
public:
  StraightDrawer(const GarmentDraft& g, ArmholeHalf side, SideFit fit, const Phrases& phrases,
                 const SchematicOptions& o)
      : side_(side), walk_(g, side), phrases_(phrases), o_(o), h_(o.textHeight),
        high_(4.2 * o.textHeight), fit_(fit), words_(group_, o.textHeight) {
    group_.id = side == ArmholeHalf::Back ? "back" : "front";
    group_.title = phrases.say("side." + group_.id);
  }

  Group draw() {
    const double armhole = walk_.armhole().length(), cap = walk_.cap().length();
    between();
    line(0, armhole, Role::Armhole);
    line(high_, cap, Role::Cap);
    word({0, high_ + 3.4 * h_}, group_.title, Role::Caption, 1.2 * h_);
    word({0, high_ + 2.0 * h_}, sideCaption(walk_, side_, o_, phrases_), Role::Note, h_);
    word({0, high_ - 1.1 * h_}, phrases_.say("fit.line.cap"), Role::Cap, h_);
    word({0, 0.4 * h_}, phrases_.say("fit.line.armhole"), Role::Armhole, h_);
    return std::move(group_);
  }

private:
  void line(double y, double length, Role role) {
    group_.strokes.push_back({Path::polyline({{0, y}, {length, y}}), role, false});
  }
  void word(const Vec2& at, std::string text, Role role, double height) {
    words_.label({{}, std::move(text), role, height, Anchor::Start, 0}, {at});
  }

  // From pin to pin: what the cap has more is a wedge, with its figure above.
  void between() {
    double s = 0, c = 0;
    int number = 0;
    const Role role = fit_ == SideFit::LetIn ? Role::Ease : Role::Short;
    for (const Notch& notch : walk_.notches()) {
      const double to = walk_.onCap(notch.s), more = (to - c) - (notch.s - s);
      if (std::abs(more) >= 0.05) {
        const std::vector<Vec2> wedge{{s, 0}, {notch.s, 0}, {to, high_}, {c, high_}, {s, 0}};
        group_.strokes.push_back({Path::polyline(wedge), role, true});
        words_.labelIfFree({{}, figureOf(more), Role::Note, h_, Anchor::Middle, 0},
                           {{0.5 * (c + to), high_ + 0.45 * h_}});
      }
      group_.strokes.push_back({Path::polyline({{notch.s, 0}, {to, high_}}), Role::Notch, false});
      if (++number; notch.kind != NotchKind::Shoulder)
        words_.labelIfFree({{}, std::to_string(number), Role::Notch, 0.85 * h_, Anchor::Middle, 0},
                           {{notch.s, -1.1 * h_}});
      s = notch.s, c = to;
    }
  }
  [[nodiscard]] std::string figureOf(double cm) const {
    const std::string text = o_.unit == LengthUnit::Inch ? phrases_.length(std::abs(cm), o_.unit)
                                                         : phrases_.number(std::abs(cm), 1);
    return (cm < 0 ? "\u2212" : "+") + text;
  }

  ArmholeHalf side_;
  SeamWalk walk_;
  const Phrases& phrases_;
  const SchematicOptions& o_;
  double h_, high_;
  SideFit fit_;
  Group group_;
  Dimensions words_;
};

} // namespace

Picture straightComparison(const GarmentDraft& g, const Phrases& phrases,
                           const SchematicOptions& o) {
  Picture picture;
  picture.title = phrases.say("fit.title");
  picture.textHeight = o.textHeight;
  const GarmentDraft drawn = o.curves ? onStitches(g, *o.curves) : g;
  for (const ArmholeHalf side : {ArmholeHalf::Back, ArmholeHalf::Front})
    picture.groups.push_back(
        StraightDrawer(drawn, side, sideFit(g, SeamWalk(g, side)), phrases, o).draw());
  layOut(picture, o.perRow == 1);
  return picture;
}

} // namespace scye
