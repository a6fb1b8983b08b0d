// Lengths of curves against closed forms and against GSL's adaptive quadrature.
// Figures marked "50 digits" were computed apart from the program to 50 digits. Ellipse: perimeter
// 4 a E(k), DLMF 19.30 (from memory).
#include "curve/path.h"
#include "curve/quadrature.h"
#include "support/random_designs.h"
#include "support/record.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_sf_ellint.h>
#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <numbers>

namespace scye {
namespace {

using std::numbers::pi;

struct EllipsePerimeter {
  double a, b, length; // 50 digits
};
constexpr EllipsePerimeter kEllipses[] = {{1, 0.5, 4.84422411027383810},
                                          {5, 2, 23.0131125956648428},
                                          {10, 3, 43.8591006956890692},
                                          {18.5, 7, 84.2385459978853961}};

// An ellipse of n cubic arcs, each the affine image of the usual arc of a circle.
Path ellipseOfCubics(double a, double b, int n) {
  const double step = 2 * pi / n, arm = 4.0 / 3 * std::tan(step / 4);
  const auto at = [&](double t) { return Vec2(a * std::cos(t), b * std::sin(t)); };
  const auto along = [&](double t) { return Vec2(-a * std::sin(t), b * std::cos(t)); };
  Path path(at(0));
  for (int i = 0; i < n; ++i) {
    const double t = i * step, u = (i + 1) * step;
    path.cubicTo(at(t) + arm * along(t), at(u) - arm * along(u), at(u));
  }
  return path;
}

TEST(ArcLength, parabolaIsExact) {
  // y = x^2 over 0..1; 50 digits.
  const Cubic parabola{{Vec2(0, 0), Vec2(1.0 / 3, 0), Vec2(2.0 / 3, 1.0 / 3), Vec2(1, 1)}};
  EXPECT_NEAR(length(parabola), 1.47894285754459743, 4e-15);
  const double closed = std::sqrt(5) / 2 + std::asinh(2) / 4;
  EXPECT_NEAR(length(parabola), closed, 4e-15);
}

TEST(ArcLength, quarterCircleAsOneCubic) {
  const double k = 4.0 / 3 * (std::sqrt(2) - 1);
  const Cubic quarter{{Vec2(1, 0), Vec2(1, k), Vec2(k, 1), Vec2(0, 1)}};
  EXPECT_NEAR(length(quarter), 1.57101669807385565, 4e-15); // 40 digits; not pi / 2
}

TEST(ArcLength, circleOfManyCubics) {
  EXPECT_NEAR(ellipseOfCubics(10, 10, 128).length(), 20 * pi, 1e-11);
}

TEST(ArcLength, ellipseOfManyCubics) {
  for (const auto& e : kEllipses)
    EXPECT_NEAR(ellipseOfCubics(e.a, e.b, 256).length(), e.length, 1e-11 * e.length);
}

// What the quadrature itself can do on the ellipse's own speed.
TEST(ArcLength, ellipseByItsSpeed) {
  for (const auto& e : kEllipses) {
    const auto speed = [&](double t) { return std::hypot(e.a * std::sin(t), e.b * std::cos(t)); };
    EXPECT_NEAR(integrate(speed, 0, 2 * pi, 1e-13), e.length, 1e-14 * e.length);
    const double k = std::sqrt(1 - e.b * e.b / (e.a * e.a));
    EXPECT_NEAR(4 * e.a * gsl_sf_ellint_Ecomp(k, GSL_PREC_DOUBLE), e.length, 1e-14 * e.length);
  }
}

TEST(ArcLength, sineByItsSpeed) {
  const auto speed = [](double x) { return std::hypot(1, std::cos(x)); };
  EXPECT_NEAR(integrate(speed, 0, pi, 1e-13), 3.82019778902771202, 1e-14); // 50 digits
}

// A cap that is a raised cosine, as of a tube cut by a plane and unrolled: an ellipse's perimeter
// with half-axes W / 2 pi and sqrt((W / 2 pi)^2 + (h / 2)^2).
TEST(ArcLength, raisedCosineCap) {
  struct Cap {
    double width, height, length; // 50 digits
  };
  for (const Cap& c : {Cap{30, 12, 39.6197468007936}, Cap{34, 13, 44.0976434083059},
                       Cap{36, 15, 48.3655800737034}}) {
    const double wave = 2 * pi / c.width;
    const auto speed = [&](double x) {
      return std::hypot(1, 0.5 * c.height * wave * std::sin(wave * x));
    };
    EXPECT_NEAR(integrate(speed, -c.width / 2, c.width / 2, 1e-13), c.length, 5e-13);
  }
}

double gslLength(const Cubic& c) {
  static const std::unique_ptr<gsl_integration_workspace, decltype(&gsl_integration_workspace_free)>
      workspace(gsl_integration_workspace_alloc(2000), gsl_integration_workspace_free);
  gsl_function speed{[](double t, void* curve) {
                       const auto& p = static_cast<const Cubic*>(curve)->p;
                       const double s = 1 - t; // written out apart from Cubic::derivative
                       const Vec2 v = 3 * s * s * p[1] - 3 * s * s * p[0] + 6 * s * t * p[2] -
                                      6 * s * t * p[1] + 3 * t * t * p[3] - 3 * t * t * p[2];
                       return std::sqrt(v.squaredNorm());
                     },
                     const_cast<Cubic*>(&c)};
  double result = 0, error = 0;
  gsl_integration_qag(&speed, 0, 1, 0, 1e-13, 2000, GSL_INTEG_GAUSS61, workspace.get(), &result,
                      &error);
  return result;
}

TEST(ArcLength, randomCubicsAgreeWithGsl) {
  const auto seed = test::propertySeed(2001);
  test::RandomDesigns random(seed);
  gsl_error_handler_t* handler =
      gsl_set_error_handler_off(); // "roundoff" at the last digit is no failure
  double worst = 0;
  for (int i = 0; i < 20000; ++i) {
    Cubic c;
    for (Vec2& p : c.p)
      p = Vec2(random.uniform(-30, 30), random.uniform(-30, 30));
    const double theirs = gslLength(c);
    worst = std::max(worst, std::abs(length(c) - theirs) / theirs);
  }
  gsl_set_error_handler(handler);
  test::record("worstRelativeDifference", worst);
  EXPECT_LT(worst, 1e-11);
}

} // namespace
} // namespace scye
