#include "worn/drape.h"

#include <cmath>

namespace scye {
namespace {

constexpr double kThread = 2.4e6; // dyn to draw a sewn seam out to twice its length
constexpr double kGathered = 0.3; // of it: of a seam pushed together
constexpr double kMirror = 1e9;   // holds the middle on its plane, and pins
const double kBias = std::sqrt(0.5);

struct FibreStiffness {
  double course, wale, bias; // dyn/cm
};

// How the cloth of a triangle is drawn out along its courses and its wales.
std::pair<Vec3, Vec3> drawnOut(const ClothTriangle& t, const Points& x) {
  Vec3 u = Vec3::Zero(), v = Vec3::Zero();
  for (std::size_t a = 0; a < 3; ++a) {
    const Vec3 p = x.row(t.point[a]).transpose();
    u += t.gradient[a].x() * p, v += t.gradient[a].y() * p;
  }
  return {u, v};
}

FibreStiffness fibreStiffness(const SewnGarment& g, Fabric fabric) {
  const FabricFactors f = fabricFactors(fabric);
  return {f.course * g.stiffness.course, f.wale * g.stiffness.wale, f.bias * g.stiffness.bias};
}

// Loops that have been drawn straight resist more: beyond this length many times as much (from
// memory of fabric tests).
constexpr double kStraight = 1.22, kMore = 10; // the latter besides what they resist already
// And there is an end to it, whichever way the cloth is drawn.
constexpr double kEnd = 1.36, kMuch = 90;

// What is pulled to its length; pushed together it resists less.
Vec3 relaxed(const Vec3& drawn, double compression) {
  const double length = std::max(drawn.norm(), 1e-9);
  return length >= 1 ? Vec3(drawn / length) : Vec3(drawn * (1 + compression * (1 / length - 1)));
}

Vec3 relaxedFibre(const Vec3& fibre, double compression) {
  const double over = fibre.norm() - kStraight;
  const Vec3 out = relaxed(fibre, compression);
  return over > 0 ? Vec3(out * (1 - kMore * over)) : out;
}

// Which way a triangle is drawn out most, and how far.
struct Drawn {
  double length = 1;
  Vec2 way = Vec2::UnitX(); // on the cloth, along courses and wales
};
Drawn mostDrawn(const Vec3& u, const Vec3& v) {
  const double a = u.squaredNorm(), b = v.squaredNorm(), c = u.dot(v);
  const double half = 0.5 * (a - b), r = std::hypot(half, c);
  const Vec2 way = half > 0 ? Vec2(half + r, c) : Vec2(c, r - half);
  return {std::sqrt(0.5 * (a + b) + r), way / std::max(way.norm(), 1e-12)};
}

// The same whichever way the cloth is drawn, and no more than the matrix has.
double endStiffness(const FibreStiffness& d) {
  return kMuch * (std::min(d.course, d.wale) + d.bias);
}

// What a triangle adds to the matrix: its fibres' stiffness between two of its corners.
double between(const ClothTriangle& t, const FibreStiffness& d, std::size_t a, std::size_t b) {
  return t.area * ((d.course + d.bias) * t.gradient[a].x() * t.gradient[b].x() +
                   (d.wale + d.bias) * t.gradient[a].y() * t.gradient[b].y());
}

// The most of the way so far that a step goes ahead: more while the cloth hardly moves. Cloth that
// moves, between body and arm, would be thrown up by it and stay where friction holds it, the finer
// the mesh the more.
constexpr double kAheadAtRest = 0.95, kAheadMoving = 0.8;
constexpr double kMoving = 0.0075; // cm a step, of an adult's garment whose mesh is of 1 cm

constexpr char kLoose = 1, kPressed = 2; // points that are pushed out after the solution

// How near a triangle is to where it resists more, or beyond: there a matrix with its usual
// stiffness alone would overshoot, and the steps would grow without bound.
constexpr char kTaut = 1, kAtItsEnd = 2;
char tautness(const ClothTriangle& t, const Points& x) {
  constexpr double kNear = 0.05;
  const auto [u, v] = drawnOut(t, x);
  const double most = mostDrawn(u, v).length;
  return most > kEnd - kNear ? kAtItsEnd : most > kStraight - kNear ? kTaut : 0;
}
// What the factor holds such a triangle stiffer by, besides its usual stiffness.
double stiffer(char taut) {
  return (taut ? kMore : 0) + (taut == kAtItsEnd ? kMuch : 0);
}

// How firmly a point is held: where tight cloth has pressed far into its gap, more firmly, until it
// has come out again. Between two that face one another it gives way as far as into the body.
constexpr char kHeld = 1, kHeldFirmly = 2;
char held(char before, const Obstacle& body, const Vec3& p, Layer layer, double gap) {
  const Touch touch = body.touch(p, layer, gap);
  if (touch.room >= 0) return 0;
  const double room = touch.between ? body.solid(p).room - 0.5 * gap : touch.room;
  return room < (before == kHeldFirmly ? -0.05 : -0.5) * gap ? kHeldFirmly : kHeld;
}
// Of the usual strength of a contact.
double firmness(char held) {
  constexpr double kFirm = 10;
  return held == kHeldFirmly ? kFirm : held == kHeld ? 1 : 0;
}

double stored(double length, double compression) {
  const double over = length - 1;
  return 0.5 * (over < 0 ? compression : 1) * over * over;
}

double storedInFibre(double length, double compression) {
  const double over = std::max(0.0, length - kStraight);
  return stored(length, compression) + 0.5 * kMore * over * over;
}

} // namespace

FabricFactors fabricFactors(Fabric fabric) {
  switch (fabric) {
  case Fabric::Rib: // opens easily across its ribs
    return {0.5, 0.9, 0.8};
  case Fabric::Facing: // double
    return {2, 2, 2};
  case Fabric::Band:
    return {1.5, 0.8, 1};
  case Fabric::Plain:
    break;
  }
  return {};
}

Drape::Drape(std::shared_ptr<const SewnGarment> garment) : g_(std::move(garment)) {
  assemble();
}

void Drape::assemble() {
  const SewnGarment& g = *g_;
  std::vector<Eigen::Triplet<double>> both, yz, x;
  for (const ClothTriangle& t : g.triangles) {
    const FibreStiffness d = fibreStiffness(g, t.fabric);
    for (std::size_t a = 0; a < 3; ++a)
      for (std::size_t b = 0; b < 3; ++b)
        both.emplace_back(t.point[a], t.point[b], between(t, d, a, b));
  }
  for (const Thread& t : g.threads) {
    const double k = kThread / t.length;
    both.emplace_back(t.from, t.from, k), both.emplace_back(t.to, t.to, k);
    both.emplace_back(t.from, t.to, -k), both.emplace_back(t.to, t.from, -k);
  }
  for (const Hinge& h : g.hinges)
    for (std::size_t a = 0; a < 4; ++a)
      for (std::size_t b = 0; b < 4; ++b)
        (h.acrossMirror ? yz : both)
            .emplace_back(h.point[a], h.point[b], h.stiffness * h.weight[a] * h.weight[b]);
  for (const Closure& c : g.closures)
    for (std::size_t a = 0; a < 3; ++a)
      for (std::size_t b = 0; b < 3; ++b)
        x.emplace_back(c.point[a], c.point[b], c.strength * c.weight[a] * c.weight[b]);
  for (int i = 0; i < g.points; ++i) {
    both.emplace_back(i, i, 0.0); // a diagonal of its own for each point
    if (g.onMirror[std::size_t(i)]) x.emplace_back(i, i, kMirror);
  }
  for (const auto& pin : g.pins)
    both.emplace_back(pin.first, pin.first, kMirror);
  const auto made = [&](std::vector<Eigen::Triplet<double>> entries,
                        const std::vector<Eigen::Triplet<double>>& more) {
    entries.insert(entries.end(), more.begin(), more.end());
    Sparse m(g.points, g.points);
    m.setFromTriplets(entries.begin(), entries.end());
    return m;
  };
  across_ = made(both, x);
  other_ = made(both, yz);
  factorX_.analyzePattern(across_);
  factorYZ_.analyzePattern(other_);
}

void Drape::factorise(const DrapeState& state, const DrapeSettings& settings) {
  Sparse x = across_, yz = other_;
  const double perMass = 1 / (settings.timeStep * settings.timeStep);
  for (int i = 0; i < g_->points; ++i) {
    const std::size_t s = std::size_t(i);
    const double more =
        g_->mass[s] * perMass + firmness(state.held[s]) * settings.touchStrength * g_->area[s];
    x.coeffRef(i, i) += more;
    yz.coeffRef(i, i) += more;
  }
  for (std::size_t k = 0; k < g_->triangles.size(); ++k) {
    if (!state.taut[k]) continue;
    const ClothTriangle& t = g_->triangles[k];
    const FibreStiffness d = fibreStiffness(*g_, t.fabric);
    for (std::size_t a = 0; a < 3; ++a)
      for (std::size_t b = 0; b < 3; ++b) {
        const double more = stiffer(state.taut[k]) * between(t, d, a, b);
        x.coeffRef(t.point[a], t.point[b]) += more;
        yz.coeffRef(t.point[a], t.point[b]) += more;
      }
  }
  factorX_.factorize(x);
  factorYZ_.factorize(yz);
  factoredHeld_ = state.held;
  factoredTaut_ = state.taut;
  factoredStep_ = settings.timeStep;
  ++factorisations_;
}

void Drape::project(const Points& x, const std::vector<char>& taut, Points& pull) const {
  const SewnGarment& g = *g_;
  const double soft = g.stiffness.compression;
  for (std::size_t k = 0; k < g.triangles.size(); ++k) {
    const ClothTriangle& t = g.triangles[k];
    const FibreStiffness d = fibreStiffness(g, t.fabric);
    const auto [u, v] = drawnOut(t, x);
    // Of what the factor does not hold stiffer nothing more counts yet.
    const auto rest = [&](const Vec3& fibre) {
      return taut[k] ? relaxedFibre(fibre, soft) : relaxed(fibre, soft);
    };
    const Vec3 plus = rest(kBias * (u + v)), minus = rest(kBias * (u - v));
    Vec3 alongU = d.course * rest(u) + kBias * d.bias * (plus + minus);
    Vec3 alongV = d.wale * rest(v) + kBias * d.bias * (plus - minus);
    if (taut[k]) {
      const double more = stiffer(taut[k]);
      alongU += more * (d.course + d.bias) * u, alongV += more * (d.wale + d.bias) * v;
    }
    if (taut[k] == kAtItsEnd) {
      const Drawn most = mostDrawn(u, v);
      const double over = endStiffness(d) * std::max(0.0, 1 - kEnd / most.length);
      const Vec3 back = over * (most.way.x() * u + most.way.y() * v);
      alongU -= most.way.x() * back, alongV -= most.way.y() * back;
    }
    for (std::size_t a = 0; a < 3; ++a)
      pull.row(t.point[a]) +=
          t.area * (t.gradient[a].x() * alongU + t.gradient[a].y() * alongV).transpose();
  }
  for (const Thread& t : g.threads) {
    const Vec3 d = (x.row(t.to) - x.row(t.from)).transpose();
    const Vec3 held = kThread * relaxed(d / t.length, kGathered);
    pull.row(t.to) += held.transpose(), pull.row(t.from) -= held.transpose();
  }
}

// A contact pulls its point to the gap's distance and, as far as friction goes, to where it sticks.
// Its strength goes with the cloth it holds, so that the form is as firm to a finer mesh.
// One that the factor does not hold is only pushed out, after the solution; so is what tight cloth
// would press right through its own gap.
void Drape::touch(DrapeState& state, const Points& x, const Obstacle& body,
                  const DrapeSettings& settings, Points& pull, std::vector<char>& loose) const {
  for (int i = 0; i < g_->points; ++i) {
    const std::size_t s = std::size_t(i);
    const double k = firmness(state.held[s]) * settings.touchStrength * g_->area[s];
    const Vec3 p = x.row(i).transpose();
    const Touch t = body.touch(p, g_->layer[s], g_->gap);
    Contact& c = state.contacts[s];
    if (t.room >= 0) {
      c.on = false;
      if (state.held[s]) pull.row(i) += k * p.transpose();
      continue;
    }
    if (!c.on) c = {true, p};
    const Vec3 from = p - c.anchor;
    Vec3 slid = from - from.dot(t.normal) * t.normal;
    const double most = settings.friction * -t.room, far = slid.norm();
    if (far > most) {
      slid *= most / far;
      c.anchor = p - slid;
    }
    if (state.held[s]) {
      pull.row(i) += k * (p - t.room * t.normal - slid).transpose();
      const double deep = -0.7 * g_->gap;
      const bool inside = t.room < deep || (t.between && body.solid(p).room < 0.3 * deep);
      if (settings.firm && inside) loose[s] = kPressed;
    } else {
      loose[s] = kLoose;
    }
  }
}

DrapeState Drape::step(const DrapeState& before, const Obstacle& body,
                       const DrapeSettings& settings) {
  const SewnGarment& g = *g_;
  DrapeState state = before;
  // What touches now and what is drawn out; the factor follows when enough has changed, and every
  // few steps.
  int otherwise = 0, tauter = 0;
  std::vector<char> touching(std::size_t(g.points), 0), taut(g.triangles.size(), 0);
  for (int i = 0; i < g.points; ++i) {
    const std::size_t s = std::size_t(i);
    touching[s] = held(state.held[s], body, state.x.row(i).transpose(), g.layer[s], g.gap);
    otherwise += touching[s] != state.held[s];
  }
  for (std::size_t k = 0; k < taut.size(); ++k) {
    taut[k] = tautness(g.triangles[k], state.x);
    tauter += taut[k] > state.taut[k];
  }
  constexpr int kEvery = 8;
  if (otherwise > g.points / 40 || tauter > int(taut.size()) / 50 || state.steps % kEvery == 0)
    state.held = touching, state.taut = taut;
  if (factoredHeld_ != state.held || factoredTaut_ != state.taut ||
      factoredStep_ != settings.timeStep)
    factorise(state, settings);

  // Ahead along the way so far, and from there to the next guess.
  const double next = 0.5 * (1 + std::sqrt(1 + 4 * state.momentum * state.momentum));
  const double most =
      before.rms > kMoving * g.spacing * g.spacing / g.pattern.size ? kAheadMoving : kAheadAtRest;
  const double ahead = settings.accelerated ? std::min((state.momentum - 1) / next, most) : 0;
  const Points from = before.x + ahead * (before.x - before.before);
  Points pull(g.points, 3);
  const double perMass = 1 / (settings.timeStep * settings.timeStep);
  for (int i = 0; i < g.points; ++i) {
    const double m = g.mass[std::size_t(i)];
    pull.row(i) = m * perMass * from.row(i);
    pull(i, 1) -= m * settings.gravity;
  }
  std::vector<char> loose(std::size_t(g.points), 0);
  project(from, state.taut, pull);
  touch(state, from, body, settings, pull, loose);
  for (int i = 0; i < g.points; ++i)
    if (g.onMirror[std::size_t(i)]) pull(i, 0) = 0;
  for (const auto& [point, at] : g.pins)
    pull.row(point) += kMirror * at.transpose();
  Points x(g.points, 3);
  x.col(0) = factorX_.solve(pull.col(0));
  x.rightCols<2>() = factorYZ_.solve(pull.rightCols<2>());
  const bool astray = ((from - x).array() * (x - before.x).array()).sum() > 0;
  state.momentum = astray ? 1 : next;
  for (int i = 0; i < g.points; ++i) {
    const Eigen::RowVector3d move = x.row(i) - before.x.row(i);
    const double far = move.norm();
    if (far > settings.mostMove) x.row(i) = before.x.row(i) + settings.mostMove / far * move;
    const char how = loose[std::size_t(i)];
    if (!how) continue;
    const Vec3 p = x.row(i).transpose();
    const Touch t = how == kLoose ? body.touch(p, g.layer[std::size_t(i)], g.gap) : body.solid(p);
    if (t.room < 0) x.row(i) -= t.room * t.normal.transpose();
  }
  const Points moved = x - before.x;
  state.rms = std::sqrt(moved.squaredNorm() / std::max(1, g.points));
  state.most = std::sqrt(moved.rowwise().squaredNorm().maxCoeff());
  state.before = before.x;
  state.x = std::move(x);
  ++state.steps;
  return state;
}

double Drape::energy(const Points& x, double gravity) const {
  const SewnGarment& g = *g_;
  const double soft = g.stiffness.compression;
  double e = 0;
  for (const ClothTriangle& t : g.triangles) {
    const FibreStiffness d = fibreStiffness(g, t.fabric);
    const auto [u, v] = drawnOut(t, x);
    e += t.area *
         (d.course * storedInFibre(u.norm(), soft) + d.wale * storedInFibre(v.norm(), soft) +
          d.bias * (storedInFibre(kBias * (u + v).norm(), soft) +
                    storedInFibre(kBias * (u - v).norm(), soft)));
    const double over = std::max(0.0, mostDrawn(u, v).length - kEnd);
    e += 0.5 * t.area * endStiffness(d) * over * over;
  }
  for (const Thread& t : g.threads) {
    const double length = (x.row(t.to) - x.row(t.from)).norm() / t.length;
    e += kThread * t.length * stored(length, kGathered);
  }
  for (const Hinge& h : g.hinges) {
    Eigen::RowVector3d bent = Eigen::RowVector3d::Zero();
    for (std::size_t a = 0; a < 4; ++a)
      bent += h.weight[a] * x.row(h.point[a]);
    if (h.acrossMirror) bent.x() = 0;
    e += 0.5 * h.stiffness * bent.squaredNorm();
  }
  for (const Closure& c : g.closures) {
    double off = 0;
    for (std::size_t a = 0; a < 3; ++a)
      off += c.weight[a] * x(c.point[a], 0);
    e += 0.5 * c.strength * off * off;
  }
  for (int i = 0; i < g.points; ++i)
    e += gravity * g.mass[std::size_t(i)] * x(i, 1);
  return e;
}

DrapeState Drape::at(Points x) const {
  DrapeState s;
  s.x = std::move(x);
  s.before = s.x;
  s.contacts.resize(std::size_t(g_->points));
  s.held.assign(std::size_t(g_->points), 0);
  s.taut.assign(g_->triangles.size(), 0);
  return s;
}

} // namespace scye
