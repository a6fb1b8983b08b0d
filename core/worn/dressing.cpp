#include "worn/dressing.h"

#include <numbers>

namespace scye {
namespace {

constexpr double kHalfTurn = std::numbers::pi;

// Half width of a sleeve or bodice piece at a height: where its outer edge is.
double halfWidthAt(const Line& edge, double y) {
  for (std::size_t i = 1; i < edge.size(); ++i)
    if (edge[i].y() >= y && edge[i].y() > edge[i - 1].y()) {
      const double t =
          std::clamp((y - edge[i - 1].y()) / (edge[i].y() - edge[i - 1].y()), 0.0, 1.0);
      return edge[i - 1].x() + t * (edge[i].x() - edge[i - 1].x());
    }
  return edge.back().x();
}

class Layout {
public:
  Layout(const SewnGarment& g, const BodyForm& body)
      : g_(g), body_(body), m_(body.measures()), air_(g.gap + 0.4 * m_.scale()),
        raise_(m_.neckPointY + g.gap - g.pattern.neckPointY) {}

  // Round the trunk below the underarm, a dome up to the shoulder seam above it.
  [[nodiscard]] Vec3 onTrunk(const Vec2& at, bool back) const {
    const BodicePattern& p = back ? g_.pattern.back : g_.pattern.front;
    const double under = p.armhole.front().y(), wide = p.armhole.front().x();
    // Of a front that is longer over the bust the upper part lies higher by its wedge.
    const double wedge = at.y() > p.wedge.low ? p.wedge.depth : 0;
    const double y =
        at.y() - wedge * smoothStep(p.wedge.low, p.wedge.low + 2 * p.wedge.depth + 1e-9, at.y());
    const double worldY = y + raise_;
    const auto s = body_.sectionAt(std::max(worldY, body_.bottom()));
    const double side = at.y() < under ? halfWidthAt(p.side, y) : wide;
    const double turn = std::clamp(at.x() / std::max(side, 1e-6), -1.0, 1.0) * kHalfTurn / 2;
    // Cloth that is wider than the form stands off from it evenly.
    const double loose = std::max(0.0, 4 * side - 2 * kHalfTurn * std::sqrt(s.half * s.front));
    const double off = air_ + 0.5 * loose / (2 * kHalfTurn);
    const double depth = back ? -(s.back + off) : s.front + off;
    Vec3 round(std::sin(turn) * (s.half + off), worldY, std::cos(turn) * depth);
    if (at.y() <= under) return round;
    const Vec2 tip = p.shoulder.front(), neck = p.shoulder.back();
    const double slope = (neck.y() - tip.y()) / std::min(neck.x() - tip.x(), -1e-6);
    const double top = std::max(tip.y() + slope * (at.x() - tip.x()), under + 1);
    const double q = std::clamp((at.y() - under) / (top - under), 0.0, 1.0);
    const double middle = -1.3 * m_.scale();
    const double dome = std::sqrt(1 - q * q);
    const double z = middle + (std::cos(turn * (1 - 0.6 * q)) * depth - middle) * dome;
    return {(1 - q) * round.x() + q * at.x(), worldY, z};
  }

  // Round the arm, the cap's top at the shoulder tip.
  [[nodiscard]] Vec3 onArm(const Vec2& at) const {
    const SleevePattern& s = g_.pattern.sleeve;
    const BodyForm::Arm& arm = body_.leftArm();
    const double under = s.frontSeam.back().y();
    double top = under;
    for (const Vec2& p : s.cap)
      top = std::max(top, p.y());
    const double half = std::max(halfWidthAt(s.frontSeam, std::min(at.y(), under)), 1e-6);
    const double angle = std::clamp(at.x() / half, -1.0, 1.0) * kHalfTurn;
    const double radius = std::max(arm.upperRadius + air_, half / kHalfTurn);
    const Vec3 tip(m_.halfShoulder, m_.tipY + g_.gap, arm.shoulder.z());
    // Along the bones: the forearm leans forward, and a sleeve laid straight would be put on beside
    // it.
    const Vec3 along = arm.upper(), fore = unit(arm.wrist - arm.elbow);
    const double far = top - at.y(), bent = std::max(0.0, far - (arm.elbow - tip).dot(along));
    const Vec3 axis = bent > 0 ? fore : along;
    const Vec3 forward = unit(Vec3::UnitZ() - axis.z() * axis), up = forward.cross(axis);
    return tip + (far - bent) * along + bent * fore - radius * Vec3(-along.y(), along.x(), 0) +
           radius * (std::cos(angle) * up + std::sin(angle) * forward);
  }

  [[nodiscard]] double raise() const { return raise_; }

private:
  const SewnGarment& g_;
  const BodyForm& body_;
  const BodyMeasures& m_;
  double air_, raise_;
};

// Strips are laid on from the edge they are joined to.
void layStrips(const SewnGarment& g, const BodyForm& body, Points& x, std::vector<int>& count) {
  const double u = body.measures().scale();
  const auto place = [&](int point, const Vec3& p) {
    if (count[std::size_t(point)]) return;
    x.row(point) = p.transpose();
    count[std::size_t(point)] = 1;
  };
  // Row by row: a strip's vertices are numbered along its chain, row after row.
  for (const Seam& seam : g.seams) {
    if (seam.kind != SeamKind::PickUp) continue;
    const std::size_t n = seam.pairs.size();
    const int first = seam.pairs.front().second;
    const PanelId id = g.vertices[std::size_t(first)].panel;
    for (int row = 1;; ++row) {
      const std::size_t from = std::size_t(first) + std::size_t(row) * n;
      if (from >= g.vertices.size() || g.vertices[from].panel != id) break;
      const double high = std::abs(g.vertices[from].at.y());
      for (std::size_t i = 0; i < n; ++i) {
        const Vec3 root = x.row(g.vertices[std::size_t(first) + i].point).transpose();
        Vec3 way;
        if (id == PanelId::Cuff)
          way = body.leftArm().upper();
        else if (root.y() < body.measures().armpitY && id == PanelId::FrontBand)
          way = Vec3(-1, 0, 0.1);
        else
          way = Vec3(-0.7 * root.x() / (std::abs(root.x()) + u), 0.7,
                     -0.4 * root.z() / (std::abs(root.z()) + u));
        const ClothVertex& v = g.vertices[from + i];
        if (g.onMirror[std::size_t(v.point)]) way.x() = 0;
        place(v.point, root + high * unit(way));
      }
    }
  }
}

} // namespace

Points laidOut(const SewnGarment& g, const BodyForm& body) {
  const Layout lay(g, body);
  Points x = Points::Zero(g.points, 3);
  std::vector<int> count(std::size_t(g.points), 0);
  for (const ClothVertex& v : g.vertices) {
    if (int(v.panel) > int(PanelId::Sleeve)) continue;
    const Vec3 p =
        v.panel == PanelId::Sleeve ? lay.onArm(v.at) : lay.onTrunk(v.at, v.panel == PanelId::Back);
    x.row(v.point) += p.transpose();
    ++count[std::size_t(v.point)];
  }
  for (int i = 0; i < g.points; ++i)
    if (count[std::size_t(i)]) x.row(i) /= count[std::size_t(i)];
  layStrips(g, body, x, count);
  for (int i = 0; i < g.points; ++i)
    if (g.onMirror[std::size_t(i)]) x(i, 0) = 0;
  return x;
}

void carry(const SewnGarment& g, DrapeState& state, const BodyForm& from, const BodyForm& to) {
  const SleevePattern& s = g.pattern.sleeve;
  const double under = s.frontSeam.back().y();
  double top = under;
  for (const Vec2& p : s.cap)
    top = std::max(top, p.y());
  const BodyForm::Arm &a = from.leftArm(), &b = to.leftArm();
  // From a limb's own frame to where it is now: along it, and two ways across.
  const auto frame = [](const Vec3& along) {
    Eigen::Matrix3d f;
    f.col(0) = along.normalized();
    f.col(1) = Vec3::UnitZ().cross(f.col(0)).normalized();
    f.col(2) = Vec3(f.col(0)).cross(Vec3(f.col(1)));
    return f;
  };
  const Eigen::Matrix3d upper =
      frame(b.elbow - b.shoulder) * frame(a.elbow - a.shoulder).transpose();
  const Eigen::Matrix3d lower = frame(b.wrist - b.elbow) * frame(a.wrist - a.elbow).transpose();
  const double armLength = (a.elbow - a.shoulder).norm();
  const auto turned = [&](const Vec3& p) {
    const double along = (p - a.shoulder).dot(a.upper()) / armLength;
    const double fore = smoothStep(0.8, 1.2, along);
    const Vec3 withUpper = b.shoulder + upper * (p - a.shoulder);
    const Vec3 withLower = b.elbow + lower * (p - a.elbow);
    return Vec3((1 - fore) * withUpper + fore * withLower);
  };
  std::vector<char> done(std::size_t(g.points), 0);
  for (const ClothVertex& v : g.vertices) {
    if (v.panel != PanelId::Sleeve && v.panel != PanelId::Cuff) continue;
    const std::size_t i = std::size_t(v.point);
    if (done[i] || g.layer[i] != Layer::Sleeve) continue;
    done[i] = 1;
    const double y = v.panel == PanelId::Cuff ? 0 : v.at.y();
    const double share = smoothStep(top, under - 0.25 * (top - under), y);
    const Vec3 p = state.x.row(v.point).transpose();
    state.x.row(v.point) = (p + share * (turned(p) - p)).transpose();
    state.before.row(v.point) = state.x.row(v.point);
    Vec3& anchor = state.contacts[i].anchor;
    anchor += share * (turned(anchor) - anchor);
  }
}

DrapeState settled(Drape& drape, DrapeState state, const BodyForm& body, const Settling& settling,
                   const Watch& watch) {
  DrapeSettings settings;
  int calm = 0;
  for (int i = 0; i < settling.steps && calm < settling.calm; ++i) {
    // What has not come to rest by then swings between two ways of lying: it is not driven on.
    settings.accelerated = i < 3 * settling.steps / 4;
    state = drape.step(state, body, settings);
    calm = state.rms < settling.rms && state.most < settling.most ? calm + 1 : 0;
    if (watch && watch(state, body)) break;
  }
  return state;
}

DrapeState putOn(Drape& drape, const BodyForm& body, const Watch& watch) {
  const BodyForm form = body.posed(kDressingArm);
  DrapeState state = drape.at(laidOut(drape.garment(), form));
  DrapeSettings sewing;
  sewing.gravity = 0;
  sewing.accelerated = sewing.firm = false;
  sewing.mostMove = 0.6 * drape.garment().pattern.size;
  constexpr int kSewing = 40;
  for (int i = 0; i < kSewing; ++i) {
    state = drape.step(state, form, sewing);
    if (watch && watch(state, form)) return state;
  }
  state.before = state.x;
  for (Contact& c : state.contacts)
    c.on = false; // nothing sticks yet
  return settled(drape, std::move(state), form, {}, watch);
}

DrapeState withArm(Drape& drape, DrapeState state, BodyForm& body, double degrees,
                   const Settling& settling, const Watch& watch) {
  const BodyForm start = body;
  const double to = start.posed(degrees).arm(), way = to - start.arm();
  constexpr double kDegrees = 3; // a step
  const int n = int(std::ceil(std::abs(way) / kDegrees));
  for (int i = 1; i <= n; ++i) {
    const BodyForm next = start.posed(start.arm() + way * i / n);
    carry(drape.garment(), state, body, next);
    body = next;
    state = drape.step(state, body, {});
    if (watch && watch(state, body)) return state;
  }
  return settled(drape, std::move(state), body, settling, watch);
}

Worn canonicalDrape(std::shared_ptr<const SewnGarment> garment, const BodyForm& body,
                    double degrees, const Watch& watch) {
  Drape drape(garment);
  BodyForm form = body.posed(kDressingArm);
  DrapeState state = putOn(drape, form, watch);
  state = withArm(drape, std::move(state), form, degrees, {}, watch);
  return {std::move(garment), form, std::move(state)};
}

BodyForm formOf(const Derived& derived) {
  const GarmentDraft& draft = derived.draft;
  return BodyForm(bodyMeasures(draft.sizes, draft.sizes.style.figure));
}

std::optional<Worn> wornBy(const Derived& derived, double degrees) {
  const auto pattern = wornPattern(derived);
  if (!pattern) return std::nullopt;
  return canonicalDrape(std::make_shared<const SewnGarment>(sewn(*pattern)), formOf(derived),
                        degrees);
}

} // namespace scye
