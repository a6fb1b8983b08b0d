// The cap height against solvers that share nothing with ours: GSL's Brent on lengths by GSL's
// adaptive quadrature, Boost.Math's TOMS 748 on lengths by Gauss-Kronrod; the leaning cap against
// GSL's hybrid method in two unknowns. Cap and armhole are written out here once more, from their
// definitions.
#include "seam/match.h"

#include "draft/complete.h"
#include "support/random_designs.h"
#include "support/record.h"

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_multiroots.h>
#include <gsl/gsl_roots.h>
#include <gtest/gtest.h>

#include <functional>
#include <memory>

namespace scye {
namespace {

using Integrand = std::function<double(double)>;
using Quadrature = double (*)(const Integrand&);

double byGsl(const Integrand& f) {
  static const std::unique_ptr<gsl_integration_workspace, decltype(&gsl_integration_workspace_free)>
      workspace(gsl_integration_workspace_alloc(1000), gsl_integration_workspace_free);
  gsl_function speed{[](double t, void* g) { return (*static_cast<const Integrand*>(g))(t); },
                     const_cast<Integrand*>(&f)};
  double result = 0, error = 0;
  gsl_integration_qag(&speed, 0, 1, 0, 1e-13, 1000, GSL_INTEG_GAUSS31, workspace.get(), &result,
                      &error);
  return result;
}

double byBoost(const Integrand& f) {
  return boost::math::quadrature::gauss_kronrod<double, 31>::integrate(f, 0.0, 1.0, 12, 1e-12);
}

// Half a cap: flat by U, the S with arms a s and b s, flat by T / 2.
double halfCapLength(const CapShape& c, double lean, double height, Quadrature quadrature) {
  const double s = c.halfWidth - c.underarm - c.crownHalf + lean;
  const double a = c.lowerFullness, b = c.upperFullness;
  return c.underarm + c.crownHalf + quadrature([=](double t) {
           const double u = 1 - t;
           const double dx = 3 * s * (u * u * a + 2 * u * t * (1 - a - b) + t * t * b);
           return std::hypot(dx, 6 * height * u * t);
         });
}

// Half a piece's armhole: flat by U, the scoop, straight up, out to the shoulder tip.
double armholeLength(const Sizes& s, double share, Field crossWidth, Field underarm, Field scoop,
                     Quadrature quadrature) {
  const double bust = 0.5 * share * s.finished(Field::Bust);
  const double cross = 0.5 * s.finished(crossWidth), tip = 0.5 * s.finished(Field::CrossShoulder);
  const double depth = s.finished(Field::ArmholeDepth), top = s[Field::RiseShare] * depth;
  const double flat = std::min(s[underarm], bust - cross - 0.2), across = bust - flat - cross,
               k = s[scoop];
  const double curve = quadrature([=](double t) {
    const double u = 1 - t;
    const double dx = 3 * across * (u * u * k + 2 * u * t * (1 - k));
    const double dy = 3 * top * (2 * u * t * (1 - k) + t * t * k);
    return std::hypot(dx, dy);
  });
  const double bend = std::abs(tip - cross) > 1e-9 ? std::max(top, 0.5 * depth) : depth;
  return flat + curve + (bend - top) + std::hypot(tip - cross, depth - bend);
}

struct Armholes {
  double back, front;
};
Armholes armholesOf(const Sizes& s, Quadrature q) {
  const double share = s[Field::BackShare];
  return {
      armholeLength(s, share, Field::CrossBack, Field::UnderarmBack, Field::ScoopBack, q),
      armholeLength(s, 1 - share, Field::CrossFront, Field::UnderarmFront, Field::ScoopFront, q)};
}

// Where the armhole takes away under 1.5 cm the draft blocks and draws what it can.
bool armholesHaveCurves(const Sizes& s) {
  return std::min(backArmhole(s).away(), frontArmhole(s).away()) >= 1.5;
}

struct CapEquation {
  CapShape back, front;
  double target;
  Quadrature quadrature;
  [[nodiscard]] double excess(double height) const {
    return halfCapLength(back, 0, height, quadrature) +
           halfCapLength(front, 0, height, quadrature) - target;
  }
};

double heightByGslBrent(const CapEquation& equation) {
  static const std::unique_ptr<gsl_root_fsolver, decltype(&gsl_root_fsolver_free)> solver(
      gsl_root_fsolver_alloc(gsl_root_fsolver_brent), gsl_root_fsolver_free);
  gsl_function f{[](double h, void* e) { return static_cast<const CapEquation*>(e)->excess(h); },
                 const_cast<CapEquation*>(&equation)};
  gsl_root_fsolver_set(solver.get(), &f, 0, equation.target);
  for (int i = 0; i < 200; ++i) {
    gsl_root_fsolver_iterate(solver.get());
    if (gsl_root_test_interval(gsl_root_fsolver_x_lower(solver.get()),
                               gsl_root_fsolver_x_upper(solver.get()), 1e-11, 0) == GSL_SUCCESS)
      break;
  }
  return gsl_root_fsolver_root(solver.get());
}

double heightByToms748(const CapEquation& equation) {
  std::uintmax_t iterations = 200;
  const auto [low, high] = boost::math::tools::toms748_solve(
      [&](double h) { return equation.excess(h); }, 0.0, equation.target,
      [](double a, double b) { return b - a < 1e-11; }, iterations);
  return 0.5 * (low + high);
}

class QuietGsl {
public:
  QuietGsl() : before_(gsl_set_error_handler_off()) {}
  ~QuietGsl() { gsl_set_error_handler(before_); }
  QuietGsl(const QuietGsl&) = delete;
  QuietGsl& operator=(const QuietGsl&) = delete;

private:
  gsl_error_handler_t* before_;
};

TEST(MatchSolvers, capHeightAgreesWithGslAndBoost) {
  const auto seed = test::propertySeed(2101);
  test::RandomDesigns random(seed);
  const QuietGsl quiet;
  double worstGsl = 0, worstBoost = 0;
  int compared = 0;
  while (compared < 3000) {
    Design d = random.plausible();
    d.choose(Choice::WorkedOut, WorkedOut::CapHeight).choose(Choice::CapLean, CapLean::Upright);
    const Sizes s = complete(d);
    const CapMatch m = matchCap(s).match;
    if (!m.found || !armholesHaveCurves(s)) continue; // found: at least 1 cm high
    const auto equation = [&](Quadrature q) {
      const Armholes a = armholesOf(s, q);
      return CapEquation{m.back, m.front, a.back + a.front + s[Field::CapEase], q};
    };
    worstGsl = std::max(worstGsl, std::abs(heightByGslBrent(equation(byGsl)) - m.height));
    worstBoost = std::max(worstBoost, std::abs(heightByToms748(equation(byBoost)) - m.height));
    ++compared;
  }
  test::record("worstDifferenceToGsl", worstGsl);
  test::record("worstDifferenceToBoost", worstBoost);
  EXPECT_LT(worstGsl, 1e-8);
  EXPECT_LT(worstBoost, 1e-8);
}

struct LeaningEquations {
  CapShape back, front;
  double wantBack, wantFront;
};

// Cap height and crown shift by GSL's hybrid method, started away from the answer.
Vec2 leaningByGsl(const LeaningEquations& equations, const Vec2& start) {
  gsl_multiroot_function f{
      [](const gsl_vector* x, void* e, gsl_vector* out) -> int {
        const auto& q = *static_cast<const LeaningEquations*>(e);
        const double height = gsl_vector_get(x, 0), lean = gsl_vector_get(x, 1);
        gsl_vector_set(out, 0, halfCapLength(q.back, lean, height, byGsl) - q.wantBack);
        gsl_vector_set(out, 1, halfCapLength(q.front, -lean, height, byGsl) - q.wantFront);
        return GSL_SUCCESS;
      },
      2, const_cast<LeaningEquations*>(&equations)};
  const std::unique_ptr<gsl_multiroot_fsolver, decltype(&gsl_multiroot_fsolver_free)> solver(
      gsl_multiroot_fsolver_alloc(gsl_multiroot_fsolver_hybrids, 2), gsl_multiroot_fsolver_free);
  const std::unique_ptr<gsl_vector, decltype(&gsl_vector_free)> x(gsl_vector_alloc(2),
                                                                  gsl_vector_free);
  gsl_vector_set(x.get(), 0, start.x());
  gsl_vector_set(x.get(), 1, start.y());
  gsl_multiroot_fsolver_set(solver.get(), &f, x.get());
  for (int i = 0; i < 200; ++i) {
    if (gsl_multiroot_fsolver_iterate(solver.get()) != GSL_SUCCESS) break;
    if (gsl_multiroot_test_residual(gsl_multiroot_fsolver_f(solver.get()), 1e-11) == GSL_SUCCESS)
      break;
  }
  const gsl_vector* root = gsl_multiroot_fsolver_root(solver.get());
  return {gsl_vector_get(root, 0), gsl_vector_get(root, 1)};
}

TEST(MatchSolvers, leaningCapAgreesWithGsl) {
  const auto seed = test::propertySeed(2102);
  test::RandomDesigns random(seed);
  const QuietGsl quiet;
  double worst = 0;
  int compared = 0;
  while (compared < 500) {
    Design d = random.plausible();
    d.choose(Choice::WorkedOut, WorkedOut::CapHeight).choose(Choice::CapLean, CapLean::Leaning);
    const Sizes s = complete(d);
    const CapMatch m = matchCap(s).match;
    if (!m.found || std::abs(m.lean) < 0.05 || !armholesHaveCurves(s)) continue;
    const Armholes a = armholesOf(s, byGsl);
    const double share = a.back / (a.back + a.front), ease = s[Field::CapEase];
    LeaningEquations equations{m.back, m.front, a.back + share * ease,
                               a.front + (1 - share) * ease};
    equations.back.lean = equations.front.lean = 0;
    const Vec2 root = leaningByGsl(equations, Vec2(1.05 * m.height, 0));
    worst = std::max(worst, (root - Vec2(m.height, m.lean)).cwiseAbs().maxCoeff());
    ++compared;
  }
  test::record("worstDifference", worst);
  EXPECT_LT(worst, 1e-8);
}

} // namespace
} // namespace scye
