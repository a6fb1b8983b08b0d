// The cloth by itself, against closed forms and laws of mechanics.
#include "worn/drape.h"

#include <gtest/gtest.h>

#include <numbers>
#include <random>

namespace scye {
namespace {

class Nowhere : public Obstacle {
public:
  Touch touch(const Vec3&, Layer, double) const override { return {1e3, Vec3::UnitY()}; }
};

class Ball : public Obstacle {
public:
  Ball(Vec3 middle, double radius) : middle_(std::move(middle)), radius_(radius) {}
  Touch touch(const Vec3& p, Layer, double gap) const override {
    return {(p - middle_).norm() - radius_ - gap, unit(p - middle_)};
  }

private:
  Vec3 middle_;
  double radius_;
};

class Slope : public Obstacle {
public:
  explicit Slope(double degrees)
      : normal_(std::sin(degrees * std::numbers::pi / 180),
                std::cos(degrees * std::numbers::pi / 180), 0) {}
  Touch touch(const Vec3& p, Layer, double gap) const override {
    return {p.dot(normal_) - gap, normal_};
  }
  Vec3 down() const { return Vec3(normal_.y(), -normal_.x(), 0); }
  const Vec3& normal() const { return normal_; }

private:
  Vec3 normal_;
};

PieceMesh rectangle(double width, double height, double spacing) {
  const auto side = [&](const Vec2& a, const Vec2& b) {
    return evenly({a, b}, std::max(1, int(std::lround((b - a).norm() / spacing))));
  };
  const Vec2 a(0, 0), b(width, 0), c(width, height), d(0, height);
  return meshed({side(a, b), side(b, c), side(c, d), side(d, a)}, spacing);
}

// Flat points as (x, y) put to origin + x u + y v.
Points placed(const PieceMesh& mesh, const Vec3& origin, const Vec3& u, const Vec3& v) {
  Points x(Eigen::Index(mesh.at.size()), 3);
  for (std::size_t i = 0; i < mesh.at.size(); ++i)
    x.row(Eigen::Index(i)) = (origin + mesh.at[i].x() * u + mesh.at[i].y() * v).transpose();
  return x;
}

// Hung by its upper edge a strip is lengthened by its own weight: rho g l^2 / (2 E), where E is the
// stiffness along the wales with the courses free to draw in (linear elasticity of four fibres).
TEST(Drape, AHangingStripIsAsLongAsItShouldBe) {
  const double width = 12, length = 60, density = 0.012;
  const PieceMesh mesh = rectangle(width, length, 1.5);
  SewnGarment cloth = flatCloth(mesh, density);
  for (int i = 0; i < cloth.points; ++i)
    if (mesh.at[std::size_t(i)].y() > length - 1e-9)
      cloth.pins.emplace_back(i, Vec3(mesh.at[std::size_t(i)].x(), length, 0));
  Drape drape(std::make_shared<const SewnGarment>(cloth));
  DrapeState state = drape.at(placed(mesh, Vec3::Zero(), Vec3::UnitX(), Vec3::UnitY()));
  for (int i = 0; i < 900; ++i)
    state = drape.step(state, Nowhere(), {});
  EXPECT_LT(state.rms, 1e-5);
  double low = 0;
  int count = 0;
  for (int i = 0; i < cloth.points; ++i)
    if (mesh.at[std::size_t(i)].y() < 1e-9) low += state.x(i, 1), ++count;
  const ClothStiffness& k = cloth.stiffness;
  const double drawIn = -k.bias / (2 * k.compression * k.course + k.bias);
  const double modulus = k.wale + 0.5 * k.bias * (1 + drawIn);
  const double wanted = density * 981 * length * length / (2 * modulus);
  EXPECT_NEAR(-low / count, wanted, 0.01 * wanted);
}

// Held far beyond its length, where its fibres resist twice as much as the factor has it to
// begin with, cloth comes to rest: drawn out evenly along its wales.
TEST(Drape, ClothDrawnFarOutComesToRest) {
  const double length = 20, drawn = 3;
  const PieceMesh mesh = rectangle(10, length, 1.5);
  SewnGarment cloth = flatCloth(mesh, 0.035);
  Points x = placed(mesh, Vec3::Zero(), Vec3::UnitX(), drawn * Vec3::UnitY());
  std::mt19937 random(11);
  std::uniform_real_distribution<double> off(-0.5, 0.5);
  for (int i = 0; i < cloth.points; ++i) {
    const double y = mesh.at[std::size_t(i)].y();
    if (y < 1e-9 || y > length - 1e-9)
      cloth.pins.emplace_back(i, x.row(i).transpose());
    else
      x.row(i) += Eigen::RowVector3d(off(random), 3 * off(random), off(random));
  }
  Drape drape(std::make_shared<const SewnGarment>(cloth));
  DrapeState state = drape.at(x);
  for (int i = 0; i < 400; ++i)
    state = drape.step(state, Nowhere(), {});
  ASSERT_TRUE(state.x.allFinite());
  EXPECT_LT(state.most, 1e-3);
  for (int i = 0; i < cloth.points; ++i) {
    const Vec2 at = mesh.at[std::size_t(i)];
    if (std::abs(at.x() - 5) < 2) {
      EXPECT_NEAR(state.x(i, 1), drawn * at.y(), 1.0);
    }
  }
}

TEST(Drape, EnergyNeverGrowsWithoutInertiaAndContact) {
  const PieceMesh mesh = rectangle(20, 20, 1.5);
  SewnGarment cloth = flatCloth(mesh, 0.035);
  for (int i = 0; i < cloth.points; ++i)
    if (mesh.at[std::size_t(i)].y() > 20 - 1e-9)
      cloth.pins.emplace_back(i, Vec3(mesh.at[std::size_t(i)].x(), 20, 0));
  Drape drape(std::make_shared<const SewnGarment>(cloth));
  Points x = placed(mesh, Vec3::Zero(), Vec3::UnitX(), Vec3::UnitY());
  std::mt19937 random(7);
  std::uniform_real_distribution<double> off(-0.5, 0.5);
  for (Eigen::Index i = 0; i < x.rows(); ++i)
    if (x(i, 1) < 20 - 1e-9) x.row(i) += Eigen::RowVector3d(off(random), off(random), off(random));
  DrapeState state = drape.at(x);
  DrapeSettings settings;
  settings.accelerated = false;
  settings.timeStep = 1e6; // no mass in the way
  double before = drape.energy(state.x);
  for (int i = 0; i < 200; ++i) {
    state = drape.step(state, Nowhere(), settings);
    const double now = drape.energy(state.x);
    EXPECT_LE(now, before + 1e-9 * std::abs(before)) << "step " << i;
    before = now;
  }
}

Points drapedOnBall(const Vec3& middle, double turned, double& most) {
  const PieceMesh mesh = rectangle(30, 30, 2);
  Drape drape(std::make_shared<const SewnGarment>(flatCloth(mesh, 0.035)));
  const Vec3 u(std::cos(turned), 0, std::sin(turned)), v(std::sin(turned), 0, -std::cos(turned));
  DrapeState state = drape.at(placed(mesh, middle + Vec3(0, 8.4, 0) - 15 * u - 15 * v, u, v));
  most = 1;
  for (int i = 0; i < 800 && most > 1e-4; ++i) {
    state = drape.step(state, Ball(middle, 8), {});
    most = state.most;
  }
  return state.x;
}

TEST(Drape, IsTheSameWhereverItLies) {
  double most = 0;
  const Points here = drapedOnBall(Vec3::Zero(), 0, most);
  const double turned = 0.7;
  const Vec3 moved(120, -35, 64);
  EXPECT_LT(most, 1e-4) << "not at rest";
  const Points there = drapedOnBall(moved, turned, most);
  EXPECT_LT(most, 1e-4) << "not at rest";
  Eigen::Matrix3d turn = Eigen::Matrix3d::Identity();
  turn << std::cos(turned), 0, -std::sin(turned), 0, 1, 0, std::sin(turned), 0, std::cos(turned);
  double worst = 0;
  for (Eigen::Index i = 0; i < here.rows(); ++i)
    worst =
        std::max(worst, (turn * here.row(i).transpose() + moved - there.row(i).transpose()).norm());
  EXPECT_LT(worst, 0.1);
}

TEST(Drape, MirrorSymmetricClothDrapesSymmetric) {
  // Half a rectangle and its mirror image, joined, on a ball.
  const PieceMesh half = rectangle(15, 30, 2);
  PieceMesh whole = half;
  std::vector<int> other(half.at.size());
  for (std::size_t i = 0; i < half.at.size(); ++i) {
    const Vec2 p = half.at[i];
    other[i] = p.x() < 1e-9 ? int(i) : int(whole.at.size());
    if (other[i] != int(i)) whole.at.emplace_back(-p.x(), p.y());
  }
  for (const auto& t : half.triangles)
    whole.triangles.push_back(
        {other[std::size_t(t[0])], other[std::size_t(t[2])], other[std::size_t(t[1])]});
  Drape drape(std::make_shared<const SewnGarment>(flatCloth(whole, 0.035)));
  DrapeState state = drape.at(placed(whole, Vec3(0, 8.4, 15), Vec3::UnitX(), -Vec3::UnitZ()));
  for (int i = 0; i < 250; ++i)
    state = drape.step(state, Ball(Vec3::Zero(), 8), {});
  double worst = 0;
  for (std::size_t i = 0; i < other.size(); ++i) {
    const Eigen::RowVector3d p = state.x.row(Eigen::Index(i)), q = state.x.row(other[i]);
    worst = std::max(worst, (p - Eigen::RowVector3d(-q.x(), q.y(), q.z())).norm());
  }
  EXPECT_LT(worst, 0.1);
}

// On a slope less steep than the friction allows a block stays; on a steeper one it slides.
TEST(Drape, ABlockOnASlopeSlidesAtTheFrictionItShould) {
  for (const double friction : {0.3, 0.5, 0.8}) {
    const double limit = std::atan(friction) * 180 / std::numbers::pi;
    for (const double beyond : {-2.0, 2.0}) {
      const Slope slope(limit + beyond);
      const PieceMesh mesh = rectangle(4, 4, 1);
      ClothStiffness stiff;
      stiff.course = stiff.wale = stiff.bias = 1e6;
      SewnGarment cloth = flatCloth(mesh, 0.5, stiff);
      Drape drape(std::make_shared<const SewnGarment>(cloth));
      const Vec3 start = 0.98 * cloth.gap * slope.normal();
      DrapeState state = drape.at(placed(mesh, start, slope.down(), -Vec3::UnitZ()));
      DrapeSettings settings;
      settings.friction = friction;
      settings.accelerated = false;
      // Without inertia what slides creeps steadily on; what is held comes to rest.
      const auto slidIn = [&](int steps) {
        const Points first = state.x;
        for (int i = 0; i < steps; ++i)
          state = drape.step(state, slope, settings);
        return ((state.x - first) * slope.down()).mean();
      };
      (void)slidIn(200);
      const double late = slidIn(100), later = slidIn(100);
      if (beyond < 0) {
        EXPECT_LT(std::abs(later), 1e-3) << friction;
      } else {
        EXPECT_GT(later, 1e-2) << friction;
        EXPECT_NEAR(later, late, 0.1 * late) << friction;
      }
    }
  }
}

TEST(Drape, TheSameStepTwiceIsTheSame) {
  double most = 0;
  EXPECT_TRUE(drapedOnBall(Vec3(1, 2, 3), 0.3, most) == drapedOnBall(Vec3(1, 2, 3), 0.3, most));
}

} // namespace
} // namespace scye
