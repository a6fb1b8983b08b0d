#include "schematic/guide_garment.h"

#include <cmath>
#include <numbers>

namespace scye {
namespace {

struct Size {
  double half, waistHalf, hemHalf;  // half the widths of the body
  double length, depth;             // hem to underarm, armhole depth
  double tip, drop;                 // half cross-shoulder, shoulder drop
  double neck, frontDrop, backDrop; // half neck width, finished
  double sleeve, upperArm, cuff;    // to the underarm; widths laid flat
  double rib;                       // depth of hem and cuffs; the neckband takes less
};

Size sizeOf(Figure figure) {
  switch (figure) {
  case Figure::Woman:
    return {25, 22.5, 24.2, 38, 20, 18.5, 3, 8, 8.5, 2, 44, 16.5, 9.5, 6};
  case Figure::Man:
    return {28, 26.8, 26.5, 42, 24, 21.5, 3.2, 8.2, 8.5, 2, 49, 19.5, 10.5, 6.5};
  case Figure::Child:
    return {19, 18.2, 18, 27, 16, 14, 2.5, 6.6, 6, 1.6, 31, 13.5, 8, 4.5};
  case Figure::Baby:
    break;
  }
  return {14, 13.8, 13.4, 17, 11.5, 11, 1.6, 5.8, 4.2, 1.2, 17, 10, 6.8, 3};
}

constexpr double kSleeveFall = 50; // degrees below level, as a sleeve is laid

Path neckline(const GarmentPlaces& g, GuideView view, double band) {
  const Vec2& deep = view == GuideView::Front ? g.frontNeck : g.backNeck;
  const double drop = g.neckPoint.y() - deep.y(), out = g.neckPoint.x();
  // Inside the band, or `band` out from it, along the shoulder and down.
  const Vec2 along = (g.tip - g.neckPoint).normalized();
  const Vec2 end = g.neckPoint + band * along, low = deep - Vec2(0, band);
  return Path(low).cubicTo(low + Vec2(0.62 * (out + band), 0),
                           end + Vec2(-0.12 * out, -0.62 * (drop + band)), end);
}

std::vector<Path> ribs(const Path& edge, const Path& inner, int count) {
  std::vector<Path> lines;
  for (int i = 1; i <= count; ++i) {
    const double t = (i - 0.5) / count;
    lines.push_back(
        Path::polyline({edge.segments().front().at(t), inner.segments().front().at(t)}));
  }
  return lines;
}

} // namespace

GarmentPlaces garmentPlaces(Figure figure) {
  const Size s = sizeOf(figure);
  GarmentPlaces g;
  g.underarm = {s.half, s.length}, g.tip = {s.tip, s.length + s.depth};
  g.neckPoint = {s.neck, g.tip.y() + s.drop};
  g.frontNeck = {0, g.neckPoint.y() - s.frontDrop}, g.backNeck = {0, g.neckPoint.y() - s.backDrop};
  g.band = s.rib / 2.4;
  g.waist = 0.56 * s.length, g.hip = 0.22 * s.length;
  g.side = smooth({{s.hemHalf - 0.4, 0},
                   {s.hemHalf, s.rib},
                   {s.waistHalf, g.waist},
                   {s.half - 0.3, s.length - 0.12 * s.length},
                   g.underarm});
  const double scoop = s.half - s.tip;
  g.armhole = Path(g.underarm)
                  .cubicTo(g.underarm + Vec2(-0.7 * scoop, 0.02 * s.depth),
                           {s.tip - 0.10 * s.tip, s.length + 0.32 * s.depth}, g.tip);
  g.crease = {outermostAt(g.armhole, s.length + 0.5 * s.depth).value_or(s.tip),
              s.length + 0.5 * s.depth};
  g.shoulder = Path::polyline({g.neckPoint, g.tip});
  const double fall = kSleeveFall * std::numbers::pi / 180;
  const Vec2 down(std::cos(fall), -std::sin(fall)), out(std::sin(fall), std::cos(fall));
  const Vec2 cuff = g.underarm + s.sleeve * down, wide = g.underarm + s.upperArm * out;
  const Vec2 taper = 0.5 * (s.upperArm - s.cuff) * out; // the seam and the fold lose alike
  const Vec2 seamEnd = cuff + 0.4 * taper, foldEnd = seamEnd + s.cuff * out;
  g.seam =
      Path(g.underarm)
          .cubicTo(g.underarm + 0.3 * s.sleeve * down, seamEnd - 0.4 * s.sleeve * down, seamEnd);
  const double cap = 0.34 * (wide - g.tip).norm();
  g.fold = Path(g.tip)
               .cubicTo(g.tip + cap * Vec2(std::cos(0.35 * fall), -std::sin(0.35 * fall)),
                        wide - cap * down, wide)
               .cubicTo(wide + 0.3 * s.sleeve * down, foldEnd - 0.4 * s.sleeve * down, foldEnd);
  return g;
}

std::vector<Stroke> garmentStrokes(Figure figure, GuideView view) {
  const Size s = sizeOf(figure);
  const GarmentPlaces g = garmentPlaces(figure);
  const Path neck = neckline(g, view, 0), neckSeam = neckline(g, view, g.band);
  std::vector<Stroke> out;
  const auto both = [&](const Path& path, Role role, bool filled = false) {
    out.push_back({path, role, filled});
    out.push_back({path.mirroredX(), role, filled});
  };
  Path body(neck.start());
  body.append(neck).append(g.shoulder).append(g.armhole.reversed()).append(g.side.reversed());
  body.lineTo({0, 0}).append(body.mirroredX().reversed());
  out.push_back({body.lineTo(body.start()), Role::Fabric, true});
  Path sleeve(g.tip);
  sleeve.append(g.fold).append(g.seam.reversed()).append(g.armhole);
  both(sleeve, Role::Fabric, true);

  // The far neck edge shows through the neck's opening.
  if (view == GuideView::Front) both(neckline(g, GuideView::Back, 0), Role::Pair);
  const Vec2 along = (g.seam.end() - g.underarm).normalized();
  const Path cuff = Path::polyline({g.seam.end(), g.fold.end()}),
             cuffTop = cuff.moved(-s.rib * along);
  const Path hem = Path::polyline({{0, 0}, g.side.start()});
  const Path hemTop =
      Path::polyline({{0, s.rib}, {outermostAt(g.side, s.rib).value_or(s.hemHalf), s.rib}});
  for (const Path& rib : ribs(hem, hemTop, 12))
    both(rib, Role::Pair);
  for (const Path& rib : ribs(cuff, cuffTop, 6))
    both(rib, Role::Pair);
  for (const Path& rib : ribs(neck, neckSeam, view == GuideView::Front ? 9 : 7))
    both(rib, Role::Pair);
  both(hemTop, Role::Pair);
  both(cuffTop, Role::Pair);
  both(neckSeam, Role::Pair);
  both(g.armhole, Role::Outline);
  Path edge(neck.start());
  edge.append(neck)
      .append(g.shoulder)
      .append(g.fold)
      .append(cuff.reversed())
      .append(g.seam.reversed())
      .append(g.side.reversed())
      .append(hem.reversed());
  both(edge, Role::Outline);
  return out;
}

} // namespace scye
