#include "schematic/guide_figure.h"

#include <cmath>
#include <numbers>

namespace scye {
namespace {

Path joined(std::initializer_list<Path> parts) {
  Path all(parts.begin()->start());
  for (const Path& part : parts)
    all.append(part);
  return all;
}

Path closed(Path path) {
  path.lineTo(path.start());
  return path;
}

Vec2 toward(const Vec2& from, double length, double tilt) {
  const double angle = tilt * std::numbers::pi / 180;
  return from + length * Vec2(std::sin(angle), -std::cos(angle));
}

// Hand and fingers as one, the thumb apart: shares of its length and of its half width.
const std::vector<Vec2> kHandOutside{{0.16, 0.80},  {0.34, 0.98}, {0.52, 0.96},   {0.78, 0.72},
                                     {0.94, 0.38},  {0.99, 0.0},  {0.955, -0.36}, {0.84, -0.62},
                                     {0.66, -0.78}, {0.47, -0.86}};
const std::vector<Vec2> kThumb{{0.47, -0.86}, {0.54, -1.06}, {0.58, -1.26}, {0.56, -1.42},
                               {0.48, -1.42}, {0.36, -1.26}, {0.22, -1.02}, {0.10, -0.82}};

std::vector<Vec2> placed(const std::vector<Vec2>& shares, const Frame& hand, double half) {
  std::vector<Vec2> points;
  for (const Vec2& s : shares)
    points.push_back(hand.at(s.x(), s.y() * half));
  return points;
}

// One line without a corner: 2 spans down the neck, 3 along the shoulder, 7 down the arm, the rest
// the hand.
Path neckToFingers(const Proportions& p, const FigurePlaces& f) {
  double jaw = 0.5 * (p.chin + p.crown);
  while (jaw > p.chin && outermostAt(f.head, jaw).value_or(0) > p.neckHalf)
    jaw -= 0.1;
  const Vec2 fall = p.tip - p.neckPoint;
  std::vector<Vec2> points{{p.neckHalf, jaw},
                           {0.985 * p.neckHalf, 0.5 * (jaw + p.neckPoint.y()) + 0.1 * p.neckHalf},
                           p.neckPoint,
                           p.neckPoint + 0.34 * fall + Vec2(0, -0.045 * fall.norm()),
                           p.neckPoint + 0.7 * fall + Vec2(0, -0.005 * fall.norm()),
                           p.tip,
                           p.tip + p.armHalf * Vec2(0.55, -0.46),
                           f.upperArm.at(0.2, p.armHalf),
                           f.upperArm.at(0.6, 0.94 * p.armHalf),
                           f.upperArm.at(0.98, 1.02 * p.elbowHalf),
                           f.foreArm.at(0.28, p.foreArmHalf),
                           f.foreArm.at(0.68, 0.8 * p.foreArmHalf),
                           f.foreArm.at(1, p.wristHalf)};
  for (const Vec2& v : placed(kHandOutside, f.hand, p.handHalf))
    points.push_back(v);
  return smooth(points);
}

} // namespace

FigurePlaces figurePlaces(const Proportions& p) {
  FigurePlaces f;
  f.nape = {0, p.nape}, f.neckPoint = p.neckPoint, f.tip = p.tip,
  f.armpit = {p.armpit.half, p.armpit.y};
  f.crease = {1.01 * p.armpit.half, 0.5 * (p.tip.y() + p.armpit.y)};
  // The joint lies a little below the tip and inside it, by half the arm's width.
  const Vec2 joint = p.tip + Vec2(0.25 * p.armHalf - 0.35 * p.armHalf, -0.5 * p.armHalf);
  const Vec2 elbow = toward(joint, p.upperArm - 0.5 * p.armHalf, p.tilt);
  const Vec2 wrist = toward(elbow, p.foreArm, p.foreTilt);
  f.upperArm = {joint, elbow};
  f.foreArm = {elbow, wrist};
  f.hand = {wrist, toward(wrist, p.hand, 0.6 * p.foreTilt)};

  f.side = smooth({f.armpit,
                   {p.bust.half, p.bust.y},
                   {p.underBust.half, p.underBust.y},
                   {p.waist.half, p.waist.y},
                   {0.42 * p.waist.half + 0.58 * p.hip.half, 0.5 * (p.waist.y + p.hip.y) + 0.5},
                   {p.hip.half, p.hip.y},
                   {0.35 * p.hip.half + 0.65 * p.cut.half + 0.35, 0.42 * p.hip.y + 0.58 * p.cut.y},
                   {p.cut.half, p.cut.y}});
  const double tall = p.crown - p.chin, w = p.headHalf;
  const auto head = [&](double x, double y) { return Vec2(x * w, p.chin + y * tall); };
  f.head = smoothHalf({head(0, 1), head(0.57, 0.93), head(0.91, 0.76), head(1, 0.56),
                       head(0.92, 0.32), head(0.62, 0.1), head(0.27, 0.012), head(0, 0)});
  std::vector<Vec2> inside = placed(kThumb, f.hand, p.handHalf);
  const std::size_t wristAt = inside.size();
  for (const Vec2& v :
       {f.foreArm.at(1, -p.wristHalf), f.foreArm.at(0.65, -0.84 * p.foreArmHalf),
        f.foreArm.at(0.25, -p.foreArmHalf), f.upperArm.at(0.97, -0.98 * p.elbowHalf),
        f.upperArm.at(0.55, -0.95 * p.armHalf), f.armpit})
    inside.push_back(v);
  f.inside = smooth(inside);
  f.armInside = part(f.inside, wristAt, inside.size() - 1).reversed();
  f.outside = neckToFingers(p, f);
  f.shoulder = part(f.outside, 2, 5), f.armOutside = part(f.outside, 5, 12);
  return f;
}

namespace {

// What bounds the body on the side x > 0.
std::vector<Path> skinLines(const Proportions& p, const FigurePlaces& f, GuideView view) {
  const Vec2 inseam(0.05 * p.cut.half, p.cut.y);
  std::vector<Path> lines{
      f.outside, f.inside, f.side,
      smooth({{0, p.crotch}, {0.3 * inseam.x(), 0.6 * p.crotch + 0.4 * p.cut.y}, inseam}),
      // The fold between body and arm runs up from the armpit.
      smooth({f.armpit, 0.6 * f.armpit + 0.4 * f.crease + Vec2(-0.15, 0), f.crease})};
  if (view == GuideView::Back) { // seen up to the hair
    const Vec2& top = f.outside.start();
    lines.push_back(Path::polyline({top, {top.x(), p.chin + 0.25 * (p.crown - p.chin)}}));
  }
  return lines;
}

// What tells front from back: the bust's lower line, or the shoulder blades and the spine.
std::vector<Path> innerLines(Figure figure, GuideView view, const Proportions& p) {
  const double y = p.bust.y, x = p.bust.half, deep = p.bust.y - p.underBust.y;
  if (view == GuideView::Back)
    return {
        smooth(
            {{0.30 * x, y + 0.9 * deep}, {0.40 * x, y + 0.25 * deep}, {0.62 * x, y + 0.1 * deep}}),
        Path::polyline({{0, p.underBust.y}, {0, 0.7 * p.waist.y + 0.3 * p.hip.y}})};
  if (figure == Figure::Woman)
    return {smooth({{0.14 * x, y - 0.35 * deep},
                    {0.34 * x, y - 0.78 * deep},
                    {0.62 * x, y - 0.7 * deep},
                    {0.84 * x, y - 0.1 * deep}})};
  if (figure == Figure::Man)
    return {smooth(
        {{0.10 * x, y - 0.55 * deep}, {0.42 * x, y - 0.62 * deep}, {0.78 * x, y - 0.05 * deep}})};
  return {};
}

std::vector<Path> fingerLines(const Proportions& p, const FigurePlaces& f) {
  std::vector<Path> lines;
  for (const double aside : {0.45, 0.02, -0.40})
    lines.push_back(Path::polyline(
        placed({{0.58, 1.05 * aside + 0.04}, {0.90 - 0.10 * std::abs(aside), 0.75 * aside}}, f.hand,
               p.handHalf)));
  return lines;
}

// A vest and shorts in one, so that the figure is dressed as one should to be measured.
struct Suit {
  Path neck, arm; // on the side x > 0: from the middle to the strap, from the strap to the armpit
  Path leg;
};

Suit suit(const Proportions& p, const FigurePlaces& f, GuideView view) {
  const std::vector<Vec2> shoulder = f.shoulder.flattened(16);
  const auto along = [&](double share) {
    return shoulder[std::size_t(share * double(shoulder.size() - 1))];
  };
  const Vec2 inner = along(0.4), outer = along(0.68);
  const double drop = (view == GuideView::Front ? 0.85 : 0.5) * (p.tip.y() - p.armpit.y);
  const double hem = p.cut.y + 0.15 * (p.crotch - p.cut.y);
  Suit s;
  s.neck = smoothHalf({{0, inner.y() - drop},
                       {0.55 * inner.x(), inner.y() - 0.86 * drop},
                       {0.9 * inner.x(), inner.y() - 0.45 * drop},
                       inner});
  s.arm = smooth({outer,
                  {outer.x() - 0.02 * p.tip.x(), 0.6 * outer.y() + 0.4 * p.armpit.y},
                  {0.93 * p.armpit.half, 0.2 * outer.y() + 0.8 * p.armpit.y},
                  f.side.segments().front().at(0.3)});
  const double out = outermostAt(f.side, hem).value_or(p.cut.half);
  s.leg = smooth({{0.05 * p.cut.half, hem}, {0.5 * out, hem - 0.05 * out}, {out, hem}});
  return s;
}

} // namespace

std::vector<Stroke> figureStrokes(Figure figure, GuideView view) {
  const Proportions& p = proportions(figure);
  const FigurePlaces f = figurePlaces(p);
  const Suit s = suit(p, f, view);
  const auto shoulderBetween = Path::polyline({s.neck.end(), s.arm.start()});
  const Path half = joined({s.neck, shoulderBetween, s.arm, f.side, s.leg.reversed(),
                            Path::polyline({s.leg.start(), {0, p.crotch}})});
  std::vector<Stroke> out{
      {closed(joined({half, half.mirroredX().reversed()})), Role::Fabric, true}};
  const auto both = [&](const Path& path, Role role) {
    out.push_back({path, role, false});
    out.push_back({path.mirroredX(), role, false});
  };
  for (const Path& line : {s.neck, s.arm, s.leg})
    both(line, Role::Pair);
  for (const Path& line : innerLines(figure, view, p))
    both(line, Role::Pair);
  for (const Path& line : fingerLines(p, f))
    both(line, Role::Pair);
  for (const Path& line : skinLines(p, f, view))
    both(line, Role::Outline);
  const std::vector<Stroke> head = headStrokes(figure, view, p, f);
  out.insert(out.end(), head.begin(), head.end());
  return out;
}

} // namespace scye
