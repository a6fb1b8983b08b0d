#include "schematic/guide_tape.h"

#include "schematic/guide_garment.h"

#include <algorithm>

namespace scye {
namespace {

Tape length(Path way, std::vector<TapeMark> marks, std::vector<Path> levels = {}) {
  Tape tape;
  tape.way = std::move(way), tape.marks = std::move(marks), tape.levels = std::move(levels);
  return tape;
}

Path straight(const Vec2& a, const Vec2& b) {
  return Path::polyline({a, b});
}

Tape girth(const Vec2& left, const Vec2& right, std::vector<TapeMark> marks, double front = 0.11,
           double back = 0.09) {
  const double width = (right - left).norm();
  const Band band = bandRound(left, right, front * width, back * width);
  Tape tape;
  tape.way = band.front, tape.behind = {band.back}, tape.marks = std::move(marks),
  tape.girth = true;
  return tape;
}

Tape fromBehind(Tape tape) {
  tape.view = GuideView::Back;
  return tape;
}

// The same on the other side.
Tape mirrored(Tape tape) {
  tape.way = tape.way.mirroredX();
  for (std::vector<Path>* paths : {&tape.behind, &tape.levels})
    for (Path& p : *paths)
      p = p.mirroredX();
  for (TapeMark& m : tape.marks)
    m.at.x() = -m.at.x();
  return tape;
}

// How far aside of the axis the paths lie at a share of its length: least and most.
std::pair<double, double> across(const Frame& axis, double share,
                                 std::initializer_list<const Path*> paths) {
  double least = 1e300, most = -1e300;
  for (const Path* path : paths) {
    const std::vector<Vec2> points = path->flattened(24);
    for (std::size_t i = 1; i < points.size(); ++i) {
      const double whole = (axis.to - axis.from).norm();
      const double a = (points[i - 1] - axis.from).dot(axis.along()) / whole - share;
      const double b = (points[i] - axis.from).dot(axis.along()) / whole - share;
      if (a * b > 0 || a == b) continue;
      const Vec2 at = points[i - 1] + a / (a - b) * (points[i] - points[i - 1]);
      const double aside = (at - axis.from).dot(axis.across());
      least = std::min(least, aside), most = std::max(most, aside);
    }
  }
  return {least, most};
}

class OnBody {
public:
  explicit OnBody(Figure figure) : p_(proportions(figure)), f_(figurePlaces(p_)) {}

  [[nodiscard]] Tape tape(Field f) const {
    switch (f) {
    case Field::Bust:
      return round(p_.bust, "fullest");
    case Field::Waist:
      return round(p_.waist, "waist");
    case Field::Hip:
      return round(p_.hip, "fullest");
    case Field::CrossShoulder: // straight across, as along a ruler
      return fromBehind(length(straight(left(p_.tip), p_.tip),
                               {{left(p_.tip), "shoulderTip"}, {p_.tip, "shoulderTip"}}));
    case Field::CrossFront:
      return betweenFolds();
    case Field::CrossBack:
      return fromBehind(betweenFolds());
    case Field::ArmholeDepth: {
      const Vec2 foot(0, p_.armpit.y);
      return fromBehind(length(straight(f_.nape, foot), {{f_.nape, "nape"}, {foot, "underarm"}},
                               {levelAcross()}));
    }
    case Field::TipToUnderarm: {
      const Vec2 foot(p_.tip.x(), p_.armpit.y);
      return length(straight(p_.tip, foot), {{p_.tip, "shoulderTip"}, {foot, "underarm"}},
                    {underarmLine()});
    }
    case Field::ScyeGirth:
      return roundArmhole();
    case Field::BackWaistLength: {
      const Vec2 waist(0, p_.waist.y);
      return fromBehind(
          length(straight(f_.nape, waist), {{f_.nape, "nape"}, {waist, "waist"}},
                 {straight({-p_.waist.half, p_.waist.y}, {p_.waist.half, p_.waist.y})}));
    }
    case Field::FrontWaistLength:
      return overTheBust();
    case Field::HemToUnderarm:
      return fromBehind(fromHem());
    case Field::NeckWidth:
    case Field::ShoulderLength:
    case Field::ShoulderDrop:
    case Field::NeckBase:
    case Field::HeadGirth:
      return atNeck(f);
    default:
      return onArm(f);
    }
  }

private:
  [[nodiscard]] static Vec2 left(const Vec2& v) { return {-v.x(), v.y()}; }
  [[nodiscard]] Tape round(const HalfWidth& g, std::string_view word) const {
    const double half = outermostAt(f_.side, g.y).value_or(g.half);
    Tape tape = girth({-half, g.y}, {half, g.y}, {});
    tape.marks = {{tape.way.segments()[1].at(0.35), word}};
    return tape;
  }
  [[nodiscard]] Tape betweenFolds() const {
    return length(straight(left(f_.crease), f_.crease),
                  {{left(f_.crease), "fold"}, {f_.crease, "fold"}});
  }
  [[nodiscard]] Path underarmLine() const {
    const double out = p_.tip.x() + 1.6 * p_.armHalf;
    return straight({p_.armpit.half - 1.2 * p_.armHalf, p_.armpit.y}, {out, p_.armpit.y});
  }
  // A ruler or card held level across the back, from under one arm to under the other.
  [[nodiscard]] Path levelAcross() const {
    const double out = p_.tip.x() + 1.2 * p_.armHalf;
    return straight({-out, p_.armpit.y}, {out, p_.armpit.y});
  }
  // Over the shoulder tip and down in front of the arm; the rest is out of sight behind it.
  [[nodiscard]] Tape roundArmhole() const {
    const Vec2 &top = p_.tip, low = f_.armpit;
    const Vec2 down = low - top, in(-0.42 * p_.armHalf, 0), out(0.25 * p_.armHalf, 0);
    Tape tape;
    tape.way = Path(top).cubicTo(top + 0.35 * down + in, top + 0.75 * down + in, low);
    tape.behind = {Path(top).cubicTo(top + 0.3 * down + out, top + 0.7 * down + out, low)};
    tape.marks = {{top, "shoulderTip"}, {low, "armpit"}};
    tape.girth = true;
    return tape;
  }
  [[nodiscard]] Tape overTheBust() const {
    // From the bust point, over the middle of one side, the tape hangs straight down.
    const double x = std::max(0.52 * p_.bust.half, 1.05 * p_.neckPoint.x());
    const Vec2 point(x, p_.bust.y), waist(x, p_.waist.y);
    Path way = smooth({p_.neckPoint,
                       Vec2(0.5 * (p_.neckPoint.x() + x) + 0.04 * p_.bust.half,
                            0.5 * (p_.neckPoint.y() + p_.bust.y)),
                       point});
    way.lineTo(waist);
    return length(std::move(way),
                  {{p_.neckPoint, "neckPoint"}, {point, "fullest"}, {waist, "waist"}},
                  {straight({-p_.waist.half, p_.waist.y}, {p_.waist.half, p_.waist.y})});
  }
  [[nodiscard]] Tape fromHem() const {
    // A tape that hangs plumb from the underarm line, just outside the body's side.
    const double x = std::max(p_.armpit.half, p_.hip.half) + 0.15 * p_.armHalf,
                 hem = p_.hip.y + 0.12 * (p_.waist.y - p_.hip.y);
    return length(straight({x, hem}, {x, p_.armpit.y}),
                  {{{x, p_.armpit.y}, "underarm"}, {{x, hem}, "hem"}},
                  {underarmLine(), straight({-p_.hip.half, hem}, {x + p_.armHalf, hem})});
  }
  [[nodiscard]] Tape atNeck(Field f) const {
    const Vec2 &n = p_.neckPoint, &t = p_.tip;
    if (f == Field::NeckWidth) {
      const Vec2 edge = f_.shoulder.segments().front().at(0.55);
      return fromBehind(
          length(straight(left(edge), edge), {{left(edge), "neckEdge"}, {edge, "neckEdge"}}));
    }
    if (f == Field::ShoulderLength)
      return length(f_.shoulder, {{n, "neckPoint"}, {t, "shoulderTip"}});
    if (f == Field::ShoulderDrop)
      return mirrored(length(straight({t.x(), n.y()}, t), {{n, "neckPoint"}, {t, "shoulderTip"}},
                             {straight(n, {t.x() + 0.8 * p_.armHalf, n.y()})}));
    if (f == Field::NeckBase) {
      Tape tape = girth(left(n), n, {}, 0.3, 0.12);
      tape.marks = {{n, "neckPoint"}, {tape.way.segments().front().end(), "neckPit"}};
      return tape;
    }
    const double y = p_.chin + 0.72 * (p_.crown - p_.chin),
                 half = p_.hair * outermostAt(f_.head, y).value_or(p_.headHalf);
    Tape tape = girth({-half, y}, {half, y}, {});
    tape.marks = {{tape.way.segments()[1].at(0.5), "brow"}};
    return tape;
  }
  [[nodiscard]] Tape roundArm(const Frame& axis, double share, const Path& more,
                              std::string_view word) const {
    const auto [in, out] = across(axis, share, {&f_.armOutside, &f_.armInside, &more});
    return girth(axis.at(share, in), axis.at(share, out), {{axis.at(share, out), word}}, 0.16,
                 0.13);
  }
  [[nodiscard]] Tape onArm(Field f) const {
    const Vec2 wrist = f_.foreArm.at(1, p_.wristHalf);
    switch (f) {
    case Field::UpperArm:
      return mirrored(roundArm(f_.upperArm, 0.33, {}, "underarm"));
    case Field::Elbow:
      return fromBehind(roundArm(f_.foreArm, 0.01, {}, "elbow"));
    case Field::Wrist:
      return mirrored(roundArm(f_.foreArm, 0.985, {}, "wrist"));
    case Field::HandGirth:
      return mirrored(
          roundArm(f_.hand, 0.49, part(f_.outside, 12, f_.outside.segments().size()), "knuckles"));
    case Field::SleeveToUnderarm:
      return length(f_.armInside.reversed(),
                    {{f_.armpit, "armpit"}, {f_.foreArm.at(1, -p_.wristHalf), "wrist"}});
    default:
      break; // from the shoulder, seen from behind, over the elbow
    }
    return fromBehind(mirrored(length(
        f_.armOutside,
        {{p_.tip, "shoulderTip"}, {f_.foreArm.at(0, p_.elbowHalf), "elbow"}, {wrist, "wrist"}})));
  }

  const Proportions& p_;
  FigurePlaces f_;
};

class OnGarment {
public:
  explicit OnGarment(Figure figure) : g_(garmentPlaces(figure)) {}

  [[nodiscard]] Tape tape(Field f) const {
    switch (f) {
    case Field::Bust:
      return acrossBody(g_.underarm.y() - 0.06 * g_.underarm.y(), "sideSeam");
    case Field::Waist:
      return acrossBody(g_.waist, "narrowest");
    case Field::Hip:
      return acrossBody(g_.hip, "sideSeam");
    case Field::CrossShoulder:
      return fromBehind(between(g_.tip, "shoulderTip"));
    case Field::CrossFront:
      return between(g_.crease, "sleeveSeam");
    case Field::CrossBack:
      return fromBehind(between(g_.crease, "sleeveSeam"));
    case Field::ArmholeDepth: {
      const Vec2 foot(g_.tip.x(), g_.underarm.y());
      return length(straight(g_.tip, foot), {{g_.tip, "shoulderTip"}, {foot, "underarm"}},
                    {underarmLine()});
    }
    case Field::BackWaistLength: {
      const Vec2 nape = g_.backNeck - Vec2(0, g_.band), waist(0, g_.waist);
      const double half = outermostAt(g_.side, g_.waist).value_or(0);
      return fromBehind(length(straight(nape, waist), {{nape, "neckSeam"}, {waist, "narrowest"}},
                               {straight({-half, g_.waist}, {half, g_.waist})}));
    }
    case Field::FrontWaistLength: {
      const Vec2 neck = neckSeam(), waist(neck.x(), g_.waist);
      const double half = outermostAt(g_.side, g_.waist).value_or(0);
      return length(straight(neck, waist), {{neck, "neckSeam"}, {waist, "narrowest"}},
                    {straight({-half, g_.waist}, {half, g_.waist})});
    }
    case Field::HemToUnderarm: {
      const double x = 0.82 * g_.underarm.x();
      return fromBehind(length(straight({x, 0}, {x, g_.underarm.y()}),
                               {{{x, 0}, "castOn"}, {{x, g_.underarm.y()}, "underarm"}},
                               {underarmLine()}));
    }
    case Field::SleeveToUnderarm:
      return length(g_.seam.reversed(), {{g_.seam.end(), "cuff"}, {g_.underarm, "underarm"}});
    case Field::SleeveToShoulder:
      return fromBehind(
          mirrored(length(g_.fold.reversed(), {{g_.fold.end(), "cuff"}, {g_.tip, "shoulderTip"}})));
    case Field::NeckWidth:
      return between(g_.neckPoint, "neckEdge");
    case Field::ShoulderLength:
      return length(straight(neckSeam(), g_.tip),
                    {{neckSeam(), "neckSeam"}, {g_.tip, "shoulderTip"}});
    case Field::ShoulderDrop:
      return mirrored(length(straight({g_.tip.x(), neckSeam().y()}, g_.tip),
                             {{neckSeam(), "neckSeam"}, {g_.tip, "shoulderTip"}},
                             {straight(left(neckSeam()), {1.15 * g_.tip.x(), neckSeam().y()})}));
    default:
      return acrossSleeve(f);
    }
  }

private:
  [[nodiscard]] static Vec2 left(const Vec2& v) { return {-v.x(), v.y()}; }
  [[nodiscard]] Vec2 neckSeam() const {
    return g_.neckPoint + g_.band * (g_.tip - g_.neckPoint).normalized();
  }
  [[nodiscard]] Path underarmLine() const { return straight(left(g_.underarm), g_.underarm); }
  [[nodiscard]] Tape acrossBody(double y, std::string_view word) const {
    const double half = outermostAt(g_.side, y).value_or(0);
    return length(straight({-half, y}, {half, y}), {{{-half, y}, word}, {{half, y}, word}});
  }
  [[nodiscard]] Tape between(const Vec2& right, std::string_view word) const {
    return length(straight(left(right), right), {{left(right), word}, {right, word}});
  }
  [[nodiscard]] Tape acrossSleeve(Field f) const {
    const Frame seam{g_.underarm, g_.seam.end()};
    // Upper arm from the underarm itself; the wrist on the cuff's rib.
    const double share = f == Field::UpperArm ? 0.004 : f == Field::Elbow ? 0.5 : 0.94;
    const auto [in, out] = across(seam, share, {&g_.seam, &g_.fold});
    const std::string_view word = f == Field::UpperArm ? "underarm"
                                  : f == Field::Elbow  ? "halfway"
                                                       : "cuff";
    return mirrored(
        length(straight(seam.at(share, in), seam.at(share, out)), {{seam.at(share, in), word}}));
  }

  GarmentPlaces g_;
};

} // namespace

Tape tapeOn(Source where, Figure figure, Field f) {
  Tape tape = where == Source::Body ? OnBody(figure).tape(f) : OnGarment(figure).tape(f);
  tape.field = f;
  return tape;
}

} // namespace scye
