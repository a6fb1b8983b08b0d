#include "schematic/dimension.h"
#include "schematic/knitted.h"
#include "schematic/schematic.h"
#include "seam/walk.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// One side: the two edges over each other, ticks between the points that are sewn together, and
// below the strip along the seam.
class SideDrawer {
public:
  SideDrawer(const GarmentDraft& g, BodySide side, const Phrases& phrases,
             const SchematicOptions& o)
      : g_(g), side_(side), walk_(g, side), phrases_(phrases), o_(o), h_(o.textHeight),
        words_(group_, o.textHeight) {
    group_.id = side == BodySide::Back ? "back" : "front";
    group_.title = phrases.say("side." + group_.id);
  }

  Group draw(double strip) {
    edges();
    if (o_.knitted) knitted(*o_.knitted);
    ticks();
    this->strip(strip);
    names();
    if (o_.notches) numbers();
    return std::move(group_);
  }

private:
  void edges() {
    const double step = 1.5; // cm between ticks that only show the pairing
    for (double s = step; s < walk_.armhole().length(); s += step)
      pair(s, Role::Pair);
    group_.strokes.push_back({walk_.armhole().path(), Role::Armhole, false});
    group_.strokes.push_back({walk_.cap().path(), Role::Cap, false});
    words_.avoid(walk_.armhole().path());
    words_.avoid(walk_.cap().path());
  }

  // The wearer's right side: back's right edge, front's left one; so the sleeve's left and right
  // edges.
  void knitted(const KnitGarment& k) {
    const bool back = side_ == BodySide::Back;
    const EdgeSide onBody = back ? EdgeSide::Right : EdgeSide::Left;
    const KnitPiece* front =
        k.piece(PieceId::RightFront) ? k.piece(PieceId::RightFront) : k.piece(PieceId::Front);
    if (const KnitPiece* body = back ? k.piece(PieceId::Back) : front;
        body && body->shoulderRow > body->underarmRow)
      chords(seamEdge(*body, onBody, body->shoulderRow + (onBody == EdgeSide::Left ? 1 : 0)), k, 0);
    const KnitPiece* sleeve = k.piece(PieceId::Sleeve);
    if (!sleeve || !k.capKnitted) return;
    // To the shoulder mark, as the drafted cap.
    const double half = (0.5 * k.lattice.sleeveWidth - k.lattice.selvedge) * k.lattice.size.width;
    const KnittedEdge cap =
        seamEdge(*sleeve, back ? EdgeSide::Left : EdgeSide::Right, sleeve->crownRow);
    double taken = 0;
    for (const EdgeEvent& e : cap.events)
      taken += e.change.value() * k.lattice.size.width;
    const double mark =
        walk_.cap().path().end().x() - (back ? g_.cap.back : g_.cap.front).halfWidth;
    chords(cap, k, half + mark - taken);
  }
  void chords(const KnittedEdge& edge, const KnitGarment& k, double flatTop) {
    group_.strokes.push_back({knittedChords(edge, k.lattice.size, flatTop), Role::Knitted, false});
  }

  // Which line is which, beside its end; then what side of the body this is.
  void names() {
    const double length = walk_.armhole().length();
    std::vector<Vec2> beside; // left of the armhole, read upward
    for (const double share : {0.75, 0.85, 0.6})
      beside.push_back(walk_.armhole().at(share * length).point - Vec2(1.0 * h_, 0));
    const Vec2 tip = walk_.armhole().path().end(), cap = walk_.cap().path().end();
    words_.label({{}, phrases_.say("fit.line.armhole"), Role::Armhole, h_, Anchor::Middle, 90},
                 beside);
    const auto atCap = [&](const char* key, Role role, const std::vector<double>& lines) {
      std::vector<Vec2> places;
      for (const double y : lines)
        places.push_back(cap + Vec2(0.6 * h_, (y - 0.36) * h_));
      words_.label({{}, phrases_.say(key), role, h_, Anchor::Start, 0}, places);
    };
    atCap("fit.line.cap", Role::Cap, {0, 1.4});
    if (o_.knitted) atCap("fit.line.knitted", Role::Knitted, {-1.4, 1.4, 2.8});
    const double top = std::max(tip.y(), cap.y());
    std::vector<Vec2> above;
    for (const double up : {0.8, 2.2, 3.6, 5.0})
      above.push_back({0.5 * std::max(tip.x(), cap.x()), top + up * h_});
    words_.label({{}, group_.title, Role::Caption, 1.2 * h_, Anchor::Middle, 0}, above);
  }

  void pair(double s, Role role) {
    const Vec2 a = walk_.armhole().at(s).point, c = walk_.cap().at(walk_.onCap(s)).point;
    if ((a - c).norm() <= 0.05) return;
    const Path line = Path::polyline({a, c});
    group_.strokes.push_back({line, role, false});
    if (role == Role::Notch) words_.avoid(line);
  }

  void ticks() {
    for (const auto& [kind, s] : walk_.notches()) {
      for (const auto& place : {walk_.armhole().at(s), walk_.cap().at(walk_.onCap(s))}) {
        const Vec2 across(-place.tangent.y(), place.tangent.x());
        const Vec2 half = 0.45 * h_ * across;
        const Path tick = Path::polyline({Vec2(place.point - half), Vec2(place.point + half)});
        group_.strokes.push_back({tick, Role::Notch, false});
        words_.avoid(tick);
      }
      pair(s, Role::Notch);
    }
  }

  // Beside the armhole's ticks, on the side where the cap does not lie; the shoulder needs none.
  void numbers() {
    const double small = 0.8 * h_;
    int number = 0;
    for (const auto& [kind, s] : walk_.notches()) {
      ++number;
      if (kind == NotchKind::Shoulder) continue;
      const auto at = walk_.armhole().at(s);
      const Vec2 left(-at.tangent.y(), at.tangent.x());
      const Vec2 toCap = walk_.cap().at(walk_.onCap(s)).point - at.point;
      const double away = toCap.dot(left) > 0.1 ? -1 : 1;
      std::vector<Vec2> places;
      for (const double side : {away, -away})
        for (const double far : {1.1, 1.5, 2.0})
          for (const double along : {0.0, 0.6, -0.6})
            places.push_back(at.point + side * far * h_ * left + along * h_ * at.tangent -
                             Vec2(0, 0.36 * small));
      words_.labelIfFree({{}, std::to_string(number), Role::Notch, small, Anchor::Middle, 0},
                         places);
    }
  }

  // How much longer the cap has become, over the way along the armhole; 1 cm of ease is drawn 1.5
  // cm high, much of it lower. Where gathers or pleats begin stands a line.
  void strip(double top) {
    constexpr double kHighest = 4.5;
    const double scale = std::min(1.5, kHighest / std::max(walk_.ease(), 0.5));
    const double length = walk_.armhole().length(),
                 zero = top - scale * std::max(walk_.ease(), 0.5);
    std::vector<Vec2> line{{0, zero}};
    constexpr int kSteps = 48;
    for (int i = 0; i <= kSteps; ++i) {
      const double s = length * i / kSteps;
      line.push_back({s, zero + scale * (walk_.onCap(s) - s)});
    }
    line.push_back({length, zero});
    line.push_back({0, zero});
    group_.strokes.push_back(
        {Path::polyline(line), walk_.ease() >= 0 ? Role::Ease : Role::Short, true});
    group_.strokes.push_back({Path::polyline({{0, zero}, {length, zero}}), Role::Guide, false});
    for (const auto& [kind, s] : walk_.notches())
      group_.strokes.push_back(
          {Path::polyline({{s, zero - 0.4 * h_}, {s, zero}}), Role::Notch, false});
    if (o_.notches) stripNumbers(zero - 1.4 * h_);
    const double y = zero - (o_.notches ? 2.8 : 1.6) * h_;
    const std::string start = phrases_.say("fit.strip.underarm"),
                      end = phrases_.say("fit.strip.shoulder");
    label({0, y}, start, Anchor::Start);
    const bool beside = textWidth(start, h_) + textWidth(end, h_) < length;
    label({length, beside ? y : y - 1.2 * h_}, end, Anchor::End);
    label({length, zero + scale * std::max(walk_.ease(), 0.0) + 0.4 * h_},
          phrases_.say("fit.strip.ease", {lengthParam("ease", walk_.ease())}, o_.unit),
          Anchor::End);
    if (walk_.letIn().gathers()) gathers(zero, scale);
  }
  void stripNumbers(double y) {
    const double small = 0.8 * h_;
    int number = 0;
    for (const auto& [kind, s] : walk_.notches())
      if (++number; kind != NotchKind::Shoulder)
        words_.labelIfFree({{}, std::to_string(number), Role::Notch, small, Anchor::Middle, 0},
                           {{s, y}});
  }
  void gathers(double zero, double scale) {
    const LetIn& let = walk_.letIn();
    const double from = let.gathersFrom;
    group_.strokes.push_back(
        {Path::polyline({{from, zero}, {from, zero + scale * walk_.ease()}}), Role::Guide, false});
    const bool pleats = g_.design.as<CapTop>(Choice::CapTop) == CapTop::Pleated;
    std::vector<Vec2> places; // before the line, above the strip, or over the words below it
    for (const double up : {0.5, 1.7})
      places.push_back({from - 0.4 * h_, zero + scale * let.smooth + up * h_});
    places.push_back({walk_.armhole().length(), zero + scale * walk_.ease() + 1.8 * h_});
    words_.label({{},
                  phrases_.say(pleats ? "fit.strip.pleats" : "fit.strip.gathers",
                               {lengthParam("drawn", let.drawn)}, o_.unit),
                  Role::Note,
                  h_,
                  Anchor::End,
                  0},
                 places);
  }

  void label(const Vec2& at, std::string text, Anchor anchor) {
    words_.label({{}, std::move(text), Role::Note, h_, anchor, 0}, {at});
  }

  const GarmentDraft& g_;
  BodySide side_;
  SeamWalk walk_;
  const Phrases& phrases_;
  const SchematicOptions& o_;
  double h_;
  Group group_;
  Dimensions words_;
};

} // namespace

Picture fitComparison(const GarmentDraft& g, const Phrases& phrases, const SchematicOptions& o) {
  Picture picture;
  picture.title = phrases.say("fit.title");
  picture.textHeight = o.textHeight;
  Vec2 at = Vec2::Zero();
  for (const BodySide side : {BodySide::Back, BodySide::Front}) {
    Group group = SideDrawer(g, side, phrases, o).draw(-1.5 * o.textHeight);
    const Box box = group.box();
    if (o.perRow != 1) at.x() -= box.low.x();
    moveGroup(group, at);
    if (o.perRow == 1)
      at.y() -= box.size().y() + 2 * o.textHeight;
    else
      at.x() += box.high.x() + 2.5 * o.textHeight;
    picture.groups.push_back(std::move(group));
  }
  return picture;
}

} // namespace scye
