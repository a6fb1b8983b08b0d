#include "schematic/guide_figure.h"

#include <algorithm>

namespace scye {
namespace {

// x in half widths of the head, y from the chin (0) to the crown (1).
using Shares = std::vector<Vec2>;

struct Hair {
  Shares outside,
      inside;    // from the middle of the crown to the ear, and back to the middle of the brow
  Shares behind; // seen from behind: from the middle of the crown to the nape
};

const Hair kWomansHair{{{0, 1.05}, {0.58, 0.985}, {0.96, 0.80}, {1.07, 0.60}, {1.0, 0.42}},
                       {{1.0, 0.42}, {0.92, 0.58}, {0.72, 0.74}, {0.38, 0.85}, {0, 0.90}},
                       {{0, 1.05},
                        {0.58, 0.985},
                        {0.96, 0.80},
                        {1.07, 0.58},
                        {0.98, 0.34},
                        {0.72, 0.13},
                        {0.34, 0.05},
                        {0, 0.035}}};
const Hair kMansHair{{{0, 1.06}, {0.58, 1.0}, {0.98, 0.82}, {1.07, 0.64}, {1.0, 0.46}},
                     {{1.0, 0.46}, {0.92, 0.60}, {0.82, 0.74}, {0.45, 0.82}, {0, 0.80}},
                     {{0, 1.06},
                      {0.58, 1.0},
                      {0.98, 0.82},
                      {1.07, 0.60},
                      {0.96, 0.34},
                      {0.74, 0.19},
                      {0.36, 0.13},
                      {0, 0.12}}};
const Hair kChildsHair{
    {{0, 1.06}, {0.62, 0.995}, {1.04, 0.79}, {1.17, 0.54}, {1.15, 0.34}, {1.0, 0.20}},
    {{1.0, 0.20}, {0.86, 0.34}, {0.88, 0.52}, {0.78, 0.67}, {0.42, 0.725}, {0, 0.73}},
    {{0, 1.06},
     {0.62, 0.995},
     {1.04, 0.79},
     {1.17, 0.54},
     {1.15, 0.33},
     {0.95, 0.19},
     {0.5, 0.145},
     {0, 0.14}}};
const Hair kBabysHair{{{0, 1.02}, {0.58, 0.945}, {0.92, 0.76}, {1.0, 0.56}},
                      {{1.0, 0.56}, {0.88, 0.74}, {0.5, 0.85}, {0, 0.83}},
                      {{0, 1.02},
                       {0.58, 0.945},
                       {0.92, 0.76},
                       {1.0, 0.56},
                       {0.93, 0.34},
                       {0.66, 0.17},
                       {0.32, 0.10},
                       {0, 0.09}}};

const Hair& hairOf(Figure figure) {
  switch (figure) {
  case Figure::Woman:
    return kWomansHair;
  case Figure::Man:
    return kMansHair;
  case Figure::Child:
    return kChildsHair;
  case Figure::Baby:
    break;
  }
  return kBabysHair;
}

class Head {
public:
  Head(const Proportions& p, const FigurePlaces& f) : p_(p), f_(f) {}

  [[nodiscard]] std::vector<Vec2> placed(const Shares& shares) const {
    std::vector<Vec2> points;
    for (const Vec2& s : shares)
      points.emplace_back(s.x() * p_.headHalf, p_.chin + s.y() * (p_.crown - p_.chin));
    return points;
  }
  void both(const Path& path, Role role) {
    strokes.push_back({path, role, false});
    strokes.push_back({path.mirroredX(), role, false});
  }
  void fill(Path half) {
    half.append(half.mirroredX().reversed());
    strokes.push_back({half.lineTo(half.start()), Role::Ghost, true});
  }
  void ears() {
    both(smooth(placed({{0.99, 0.52}, {1.10, 0.54}, {1.13, 0.45}, {1.06, 0.33}, {0.96, 0.29}})),
         Role::Outline);
  }
  // What of the head lies below the ear.
  void jaw(double from) {
    const double y = p_.chin + from * (p_.crown - p_.chin);
    std::vector<Vec2> points{{outermostAt(f_.head, y).value_or(p_.headHalf), y}};
    for (const Vec2& v : f_.head.flattened(4))
      if (v.y() < y - 0.02 * (p_.crown - p_.chin)) points.push_back(v);
    both(smoothHalf(points), Role::Outline);
  }
  void face() {
    both(smooth(placed({{0.20, 0.49}, {0.36, 0.515}, {0.54, 0.485}})), Role::Pair);
    both(smooth(placed({{0.18, 0.575}, {0.38, 0.61}, {0.60, 0.57}})), Role::Pair);
    strokes.push_back(
        {smooth(placed({{-0.10, 0.305}, {0.0, 0.285}, {0.10, 0.305}})), Role::Pair, false});
    strokes.push_back(
        {smooth(placed({{-0.26, 0.185}, {0.0, 0.165}, {0.26, 0.185}})), Role::Pair, false});
  }
  void bun(double height) {
    const double r = 0.42 * p_.headHalf;
    const Vec2 centre(0, p_.chin + height * (p_.crown - p_.chin));
    strokes.push_back({disc(centre, r), Role::Ghost, true});
    strokes.push_back({disc(centre, r), Role::Outline, false});
  }

  std::vector<Stroke> strokes;

private:
  const Proportions& p_;
  const FigurePlaces& f_;
};

} // namespace

std::vector<Stroke> headStrokes(Figure figure, GuideView view, const Proportions& p,
                                const FigurePlaces& f) {
  const Hair& hair = hairOf(figure);
  Head head(p, f);
  const bool front = view == GuideView::Front, longHair = figure == Figure::Child;
  if (front && figure == Figure::Woman) head.bun(1.1);
  if (front) head.jaw(std::max(0.5, hair.outside.back().y()));
  const Path outside = smoothHalf(head.placed(front ? hair.outside : hair.behind));
  if (front) {
    Path whole = outside;
    head.fill(whole.append(smoothHalf(head.placed(hair.inside))));
    head.both(smoothHalf(head.placed(hair.inside)), Role::Outline);
    head.face();
  } else {
    head.fill(outside);
  }
  head.both(outside, Role::Outline);
  if (!longHair) head.ears();
  if (!front && figure == Figure::Woman) head.bun(0.72);
  return std::move(head.strokes);
}

} // namespace scye
