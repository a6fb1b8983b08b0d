#include "worn/body_form.h"

#include "worn/trunk_field.h"

#include <numbers>

namespace scye {
namespace {

constexpr double kRadians = std::numbers::pi / 180;

struct Limb {
  double distance = 1e9;
  Vec3 normal = Vec3::UnitX();
};

// A rod whose radius changes evenly; the nearest of several is kept, rounded off by `blend`.
void addRod(Limb& limb, const Vec3& p, const Vec3& a, const Vec3& b, double ra, double rb,
            double blend) {
  const Vec3 d = b - a;
  const double t = std::clamp((p - a).dot(d) / d.squaredNorm(), 0.0, 1.0);
  const Vec3 from = p - a - t * d;
  const double away = from.norm(), distance = away - ra - (rb - ra) * t;
  const Vec3 normal = away > 1e-9 ? Vec3(from / away) : Vec3(Vec3::UnitX());
  const double h = std::max(blend - std::abs(distance - limb.distance), 0.0) / blend;
  const double share = distance < limb.distance ? 1 - 0.5 * h : 0.5 * h;
  limb.normal = unit(share * normal + (1 - share) * limb.normal, normal);
  limb.distance = std::min(distance, limb.distance) - h * h * blend / 4;
}

constexpr double kSeamFree = 0.45; // cm to either side of the middle between trunk and arm

constexpr double kMiddleShare = 0.30, kElbowShare = 0.54; // of the way from shoulder to wrist

} // namespace

BodyForm::BodyForm(const BodyMeasures& measures)
    : m_(measures), trunk_(std::make_shared<const TrunkField>(measures)) {
  // The arms hang where they clear the trunk, so that cloth has room between, and part from it at
  // the armpit: below it cloth would be held in a cleft. Those of the largest bodies stand far out.
  constexpr double kLeast = 12, kMost = 60, kStep = 1;
  for (hanging_ = kLeast; hanging_ < kMost; hanging_ += kStep) {
    pose(hanging_);
    if (armsClear()) break;
  }
  pose(hanging_);
}

bool BodyForm::armsClear() const {
  const double room = 0.9 * m_.scale(), parted = 0.5 * m_.scale();
  const double under = m_.armpitY - 1.5 * m_.scale();
  constexpr double kClear = 0.36, kStep = 0.04; // of the way from shoulder to wrist
  const auto between = [](const auto& a, const auto& b, double share) {
    return std::decay_t<decltype(a)>(a + share * (b - a));
  };
  for (double t = kStep; t <= 1; t += kStep) {
    const double upper = t / kElbowShare, fore = (t - kElbowShare) / (1 - kElbowShare);
    const Vec3 p = t < kElbowShare ? between(left_.shoulder, left_.elbow, upper)
                                   : between(left_.elbow, left_.wrist, fore);
    const double radius = t < kElbowShare ? left_.upperRadius : left_.elbowRadius;
    // Of an arm that leans out the side towards the trunk lies lower than its middle.
    const bool below = p.y() - radius * std::sin(arm_ * kRadians) <= under;
    const double least = t >= kClear ? room : below ? parted : -1e9;
    if (trunk(p) - radius < least) return false;
  }
  return true;
}

BodyForm BodyForm::posed(double degrees) const {
  BodyForm other = *this;
  other.pose(std::clamp(degrees, hanging_, 90.0));
  return other;
}

void BodyForm::pose(double degrees) {
  arm_ = degrees;
  const double u = m_.scale(), turn = 2 * std::numbers::pi;
  left_.upperRadius = m_.upperArm / turn, left_.elbowRadius = m_.elbow / turn;
  left_.wristRadius = m_.wrist / turn, left_.handRadius = m_.hand / turn;
  left_.shoulderRadius = std::min(1.02 * left_.upperRadius, 0.33 * m_.halfShoulder);
  const double r = left_.shoulderRadius, x = m_.halfShoulder - 0.42 * r;
  const double top = m_.tipY + m_.slope * (m_.halfShoulder - x);
  // The joint itself rises and comes in as the arm is lifted beyond 30 degrees.
  const double lifted = std::max(0.0, degrees - 30) / 60 * 2.0 * u;
  left_.shoulder = Vec3(x - 0.25 * lifted, top - 1.05 * r + lifted, -1.4 * u);
  const double a = degrees * kRadians;
  const Vec3 down = Vec3(std::sin(a), -std::cos(a), 0.03).normalized();
  const double bend = 0.20 - 0.10 * smoothStep(20, 80, degrees);
  const Vec3 forward = Vec3(down + Vec3(-0.02, 0, bend)).normalized();
  const double length = m_.armLength - r;
  left_.middle = left_.shoulder + kMiddleShare * length * down;
  left_.elbow = left_.shoulder + kElbowShare * length * down;
  left_.wrist = left_.elbow + (1 - kElbowShare) * length * forward;
  const double hand = 0.92 * m_.hand;
  left_.knuckles = left_.wrist + 0.45 * hand * forward;
  left_.fingers = left_.wrist + 0.82 * hand * forward + Vec3(0, 0, 0.03 * hand);
  left_.thumb = left_.wrist + 0.46 * hand * forward + 0.24 * hand * Vec3(-0.2, 0, 1);
}

double BodyForm::leftArmDistance(const Vec3& p, Vec3& normal, bool hand) const {
  const Arm& a = left_;
  Limb limb;
  addRod(limb, p, a.shoulder, a.middle, a.shoulderRadius, a.upperRadius, 1e-3);
  addRod(limb, p, a.middle, a.elbow, a.upperRadius, a.elbowRadius, 1e-3);
  addRod(limb, p, a.elbow, a.wrist, a.elbowRadius, a.wristRadius, 1e-3);
  if (hand) {
    // A hand is flat: rods beside one another from wrist to fingers, and a thumb before them.
    const double r = 0.36 * a.handRadius, blend = 0.8 * a.handRadius;
    const Vec3 beside(0, 0, a.handRadius), palm = a.wrist + 0.45 * (a.knuckles - a.wrist);
    for (const double side : {-1.0, -0.33, 0.33, 1.0}) {
      const Vec3 tip = a.fingers - 0.16 * side * side * (a.fingers - a.knuckles);
      addRod(limb, p, palm + 0.38 * side * beside, a.knuckles + 0.52 * side * beside, r, r, blend);
      addRod(limb, p, a.knuckles + 0.52 * side * beside, tip + 0.40 * side * beside, r, 0.6 * r,
             0.5 * blend);
    }
    addRod(limb, p, palm + 0.3 * beside, a.thumb, 0.8 * r, 0.55 * r, 0.6 * blend);
  } else {
    addRod(limb, p, a.wrist, a.fingers, a.wristRadius, 0.9 * a.wristRadius, 1e-3);
  }
  normal = limb.normal;
  return limb.distance;
}

double BodyForm::arms(const Vec3& p, Vec3* normal) const {
  const double side = p.x() < 0 ? -1 : 1;
  Vec3 n;
  const double d = leftArmDistance({side * p.x(), p.y(), p.z()}, n, true);
  if (normal) *normal = Vec3(side * n.x(), n.y(), n.z());
  return d;
}

double BodyForm::bareArms(const Vec3& p, Vec3& normal) const {
  const double side = p.x() < 0 ? -1 : 1;
  const double d = leftArmDistance({side * p.x(), p.y(), p.z()}, normal, false);
  normal.x() *= side;
  return d;
}

double BodyForm::trunk(const Vec3& p, Vec3* normal) const {
  return trunk_->sampled(p, normal);
}

namespace {

// How much two surfaces face one another: 0 side by side, 1 face to face.
double facing(const Vec3& a, const Vec3& b) {
  return smoothStep(0.0, -0.6, a.dot(b));
}

// Out of trunk and arm together: where they run into one another there is no corner to fall into.
struct Out {
  double room = 0; // to the nearer of them
  Vec3 way = Vec3::UnitY();
  double face = 0;
  // Face to face the way out of the one is into the other: in the middle, where this is least,
  // there is none but along them.
  double share = 1;
};
Out outOf(double t, const Vec3& nt, double a, const Vec3& na, double scale) {
  const double face = facing(nt, na);
  const double width = std::max(2.5 * (1 - face), 0.3) * scale;
  const double h = std::max(width - std::abs(t - a), 0.0) / width;
  const double share = t < a ? 1 - 0.5 * h : 0.5 * h;
  const Vec3 way = share * nt + (1 - share) * na;
  return {std::min(t, a) - h * h * width / 4, unit(way, nt), face,
          1 - face * (1 - std::min(1.0, way.norm()))};
}

} // namespace

double BodyForm::distance(const Vec3& p) const {
  Vec3 normal;
  return std::min(trunk(p), bareArms(p, normal));
}

Touch BodyForm::solid(const Vec3& p) const {
  Vec3 nt, na;
  const double t = trunk(p, &nt), a = bareArms(p, na);
  const Out out = outOf(t, nt, a, na, m_.scale());
  return {(t < 0 && a < 0 ? out.share : 1) * std::min(t, a), out.way};
}

Touch BodyForm::touch(const Vec3& p, Layer layer, double gap) const {
  Vec3 nt, na;
  const double t = trunk(p, &nt), a = bareArms(p, na);
  const Out body = outOf(t, nt, a, na, m_.scale());
  // Face to face they share what room there is between two layers of cloth.
  const double keep = std::min(gap, std::max(0.0, gap + body.face * (0.25 * (t + a) - gap)));
  Touch out{body.room - keep, body.way, body.face > 0};
  if (out.room < 0) out.room *= body.share;
  // The higher above the armpit, the more they must face one another: there cloth goes across
  // between back and arm.
  const double u = m_.scale(), below = m_.armpitY - p.y();
  const double most = 0.6 * smoothStep(-2 * u, 1 * u, below);
  const double apart = smoothStep(most, most - 0.5, nt.dot(na));
  if (apart <= 0) return out;
  const bool byArm = layer == Layer::Seam && a < t; // a seam is held from both sides
  const bool bodice = layer == Layer::Bodice || byArm;
  const double own = bodice ? t : a, other = bodice ? a : t;
  // Far from both, as under a lifted arm, nothing keeps them apart; nor where they lie side by
  // side. Well below the armpit, beside a hanging arm, a wide sleeve meets a wide bodice further
  // out.
  const double reach =
      (6 + 8 * smoothStep(hanging_ + 25, hanging_ + 5, arm_) * smoothStep(4 * u, 10 * u, below)) *
      u;
  const double open = std::max(0.0, t + a - reach);
  const double free = layer == Layer::Seam ? kSeamFree * m_.scale() : 0;
  const double toMiddle = 0.5 * (other - own) + (1 - apart) / apart + open + free;
  if (toMiddle < out.room) out = {toMiddle, unit(bodice ? na - nt : nt - na, out.normal), true};
  return out;
}

double BodyForm::trunkGirth(double y) const {
  return sectionGirth([&](const Vec3& p) { return trunk(p); }, Vec3(0, y, 0), Vec3::UnitY(),
                      m_.bust + m_.hip);
}

double BodyForm::neckGirth() const {
  return sectionGirth([&](const Vec3& p) { return trunk(p); }, trunk_->neckMiddle(),
                      trunk_->neckAxis, m_.neckBase);
}

double BodyForm::armGirth(double share) const {
  const bool upper = share < kElbowShare;
  const Vec3 axis = upper ? left_.elbow - left_.shoulder : left_.wrist - left_.elbow;
  const Vec3 middle = upper ? Vec3(left_.shoulder + share / kElbowShare * axis)
                            : Vec3(left_.elbow + (share - kElbowShare) / (1 - kElbowShare) * axis);
  const auto bare = [&](const Vec3& p) {
    Vec3 normal;
    return bareArms(p, normal);
  };
  return sectionGirth(bare, middle, axis, m_.upperArm);
}

double BodyForm::bottom() const {
  return trunk_->bottom;
}
double BodyForm::top() const {
  return trunk_->neckBase.y() + trunk_->top;
}

BodyForm::Section BodyForm::sectionAt(double y) const {
  const TrunkSection s = trunk_->section(y);
  return {s.half, s.front + s.middle, s.back - s.middle};
}

} // namespace scye
