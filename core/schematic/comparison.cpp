#include "knit/on_stitches.h"
#include "schematic/comparison_text.h"
#include "schematic/dimension.h"
#include "schematic/knitted.h"
#include "schematic/schematic.h"
#include "seam/walk.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// One side: the two edges over each other, their pins, and below the strip along the seam. Three
// colours: the armhole's ink, the cap's, and what is too long or too short.
class SideDrawer {
public:
  // `g` as it is drawn; what of it is too long or too short to be sewn is seen in the draft.
  SideDrawer(const GarmentDraft& g, ArmholeHalf side, SideFit fit, const Phrases& phrases,
             const SchematicOptions& o)
      : g_(g), side_(side), walk_(g, side), phrases_(phrases), o_(o), h_(o.textHeight), fit_(fit),
        words_(group_, o.textHeight) {
    group_.id = side == ArmholeHalf::Back ? "back" : "front";
    group_.title = phrases.say("side." + group_.id);
  }

  Group draw() {
    edges();
    if (o_.knitted) knitted(*o_.knitted);
    ticks();
    misfit();
    if (o_.notches) numbers();
    names();
    strip(-2.1 * h_);
    return std::move(group_);
  }

private:
  void edges() {
    group_.strokes.push_back({walk_.armhole().path(), Role::Armhole, false});
    group_.strokes.push_back({walk_.cap().path(), Role::Cap, false});
    words_.avoid(walk_.armhole().path());
    words_.avoid(walk_.cap().path());
  }

  // The wearer's right side: back's right edge, front's left one; so the sleeve's left and right
  // edges.
  void knitted(const KnitGarment& k) {
    const bool back = side_ == ArmholeHalf::Back;
    const EdgeSide onBody = back ? EdgeSide::Right : EdgeSide::Left;
    const KnitPiece* front =
        k.piece(PieceId::RightFront) ? k.piece(PieceId::RightFront) : k.piece(PieceId::Front);
    if (const KnitPiece* body = back ? k.piece(PieceId::Back) : front;
        body && body->shoulderRow > body->underarmRow)
      chords(seamEdge(*body, onBody, body->shoulderRow + Rows(onBody == EdgeSide::Left ? 1 : 0)), k,
             0);
    const KnitPiece* sleeve = k.piece(PieceId::Sleeve);
    if (!sleeve || !k.capKnitted) return;
    // To the shoulder mark, as the drafted cap.
    const StitchSize& size = k.lattice.size;
    const double half =
        (0.5 * k.lattice.sleeveWidth.value() - k.lattice.selvedge.value()) * size.width;
    const KnittedEdge cap =
        seamEdge(*sleeve, back ? EdgeSide::Left : EdgeSide::Right, sleeve->crownRow);
    double taken = 0;
    for (const EdgeEvent& e : cap.events)
      taken += size.across(e.change);
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
    std::vector<Vec2> beside;           // left of the armhole, read upward
    for (const double off : {1.0, 2.4}) // in line with the numbers, or outside of them
      for (const double share : {0.75, 0.85, 0.68, 0.6})
        beside.push_back(walk_.armhole().at(share * length).point - Vec2(off * h_, 0));
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
    // Below the cap's rise there is room.
    std::vector<Vec2> below;
    for (const double x : {0.98, 0.9})
      for (const double y : {0.22, 0.12, 0.32})
        below.push_back({x * std::max(length, cap.x()), y * tip.y()});
    below.push_back({0.98 * length, tip.y() + 0.8 * h_});
    words_.label({{}, group_.title, Role::Caption, 1.3 * h_, Anchor::End, 0}, below);
  }

  // Of an edge, from a to b along it.
  [[nodiscard]] static Path stretch(const ArcWalk& edge, double a, double b) {
    std::vector<Vec2> points;
    constexpr int kSteps = 24;
    for (int i = 0; i <= kSteps; ++i)
      points.push_back(edge.at(a + (b - a) * i / kSteps).point);
    return Path::polyline(points);
  }
  // What one edge has that the other lacks, at the shoulder, where it would be left over.
  void misfit() {
    if (fit_ == SideFit::LetIn) return;
    const bool tooLong = fit_ == SideFit::TooLong;
    const ArcWalk& edge = tooLong ? walk_.cap() : walk_.armhole();
    const double over = std::min(std::abs(walk_.ease()), 0.8 * edge.length());
    const Path left = stretch(edge, edge.length() - over, edge.length());
    group_.strokes.push_back({left, Role::Short, false});
    words_.avoid(left);
    const Vec2 middle = edge.at(edge.length() - 0.5 * over).point, end = edge.path().end();
    std::vector<Vec2> places;
    for (const double y : {1.0, -1.6, 2.2, -2.8, 3.4, -4.0})
      places.push_back(tooLong ? Vec2(middle.x(), end.y() + y * h_)
                               : Vec2(end.x() + 4.2 * h_, end.y() + y * h_));
    words_.label({{},
                  phrases_.say(tooLong ? "fit.tooLong" : "fit.tooShort"),
                  Role::Short,
                  h_,
                  Anchor::Middle,
                  0},
                 places);
  }

  void pair(double s) {
    const Vec2 a = walk_.armhole().at(s).point, c = walk_.cap().at(walk_.onCap(s)).point;
    if ((a - c).norm() <= 0.05) return;
    const Path line = Path::polyline({a, c});
    group_.strokes.push_back({line, Role::Pair, false});
    words_.avoid(line);
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
      pair(s);
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

  // Along the armhole, as long as it is: how much of the cap each bit of it takes in, captioned.
  // Where gathers or pleats begin stands a line.
  void strip(double top) {
    const double high = 2.5 * h_, zero = top - high, length = walk_.armhole().length();
    words_.label({{}, sideCaption(walk_, side_, o_, phrases_), Role::Note, h_, Anchor::Start, 0},
                 {{0, top + 0.5 * h_}});
    std::vector<Vec2> line{{0, zero}};
    constexpr int kSteps = 96;
    const double bit = length / kSteps;
    for (int i = 0; i < kSteps; ++i) {
      const double s = i * bit;
      const double more = std::abs((walk_.onCap(s + bit) - walk_.onCap(s)) / bit - 1);
      // A few hundredths are seen as well as gathers of twice the length.
      line.push_back({s + 0.5 * bit, zero + high * more / (more + 0.12)});
    }
    line.push_back({length, line.back().y()});
    line.push_back({length, zero});
    line.push_back({0, zero});
    group_.strokes.push_back(
        {Path::polyline(line), fit_ == SideFit::LetIn ? Role::Ease : Role::Short, true});
    group_.strokes.push_back(
        {Path::polyline({{0, top}, {0, zero}, {length, zero}, {length, top}}), Role::Pair, false});
    group_.strokes.push_back({Path::polyline({{0, zero}, {length, zero}}), Role::Armhole, false});
    const double y = zero - 1.2 * h_;
    for (const auto& [kind, s] : walk_.notches())
      group_.strokes.push_back(
          {Path::polyline({{s, zero - 0.3 * h_}, {s, zero + 0.5 * h_}}), Role::Notch, false});
    const std::string start = phrases_.say("fit.strip.underarm"),
                      end = phrases_.say("fit.strip.shoulder");
    label({0, y}, start, Anchor::Start);
    const bool beside = textWidth(start, h_) + textWidth(end, h_) < length;
    label({length, beside ? y : y - 1.2 * h_}, end, Anchor::End);
    if (o_.notches) stripNumbers(zero - 1.1 * h_);
    if (walk_.letIn().gathers()) gathers(zero, high);
  }
  void stripNumbers(double y) {
    const double small = 0.8 * h_;
    int number = 0;
    for (const auto& [kind, s] : walk_.notches())
      if (++number; kind != NotchKind::Shoulder)
        words_.labelIfFree({{}, std::to_string(number), Role::Notch, small, Anchor::Middle, 0},
                           {{s, y}});
  }
  void gathers(double zero, double high) {
    const LetIn& let = walk_.letIn();
    const double from = let.gathersFrom;
    group_.strokes.push_back(
        {Path::polyline({{from, zero}, {from, zero + high}}), Role::Guide, false});
    const bool pleats = g_.sizes.style.pleated();
    words_.label({{},
                  phrases_.say(pleats ? "fit.strip.pleats" : "fit.strip.gathers",
                               {lengthParam("drawn", let.drawn)}, o_.unit),
                  Role::Note,
                  h_,
                  Anchor::End,
                  0},
                 {{from - 0.4 * h_, zero + 0.55 * high},
                  {from - 0.4 * h_, zero + 0.25 * high},
                  {walk_.armhole().length(), zero - 2.5 * h_}});
  }

  void label(const Vec2& at, std::string text, Anchor anchor) {
    words_.label({{}, std::move(text), Role::Note, h_, anchor, 0}, {at});
  }

  const GarmentDraft& g_;
  ArmholeHalf side_;
  SeamWalk walk_;
  const Phrases& phrases_;
  const SchematicOptions& o_;
  double h_;
  SideFit fit_;
  Group group_;
  Dimensions words_;
};

} // namespace

void layOut(Picture& picture, bool column) {
  Vec2 at = Vec2::Zero();
  for (Group& group : picture.groups) {
    const Box box = group.box();
    if (!column) at.x() -= box.low.x();
    moveGroup(group, at);
    if (column)
      at.y() -= box.size().y() + picture.textHeight;
    else
      at.x() += box.high.x() + 2 * picture.textHeight;
  }
}

Picture fitComparison(const GarmentDraft& g, const Phrases& phrases, const SchematicOptions& o) {
  Picture picture;
  picture.title = phrases.say("fit.title");
  picture.textHeight = o.textHeight;
  const GarmentDraft drawn = o.curves ? onStitches(g, *o.curves) : g;
  for (const ArmholeHalf side : {ArmholeHalf::Back, ArmholeHalf::Front})
    picture.groups.push_back(
        SideDrawer(drawn, side, sideFit(g, SeamWalk(g, side)), phrases, o).draw());
  layOut(picture, o.perRow == 1);
  return picture;
}

} // namespace scye
