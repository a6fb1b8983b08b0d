#include "curve/quadrature.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace scye {
namespace {

// A rule of n points is exact for polynomials up to degree 2n - 1 (DLMF 3.5(v)).
TEST(Quadrature, sixteenPointsIntegratePolynomialsUpToDegree31) {
  for (int degree = 0; degree <= 31; ++degree) {
    const double exact = 1.0 / (degree + 1);
    const double ours = gaussOnce([&](double x) { return std::pow(x, degree); }, 0, 1);
    EXPECT_NEAR(ours, exact, 4e-16) << degree;
  }
  const auto tooHigh = [](double x) { return std::pow(2 * x - 1, 32); };
  EXPECT_GT(std::abs(gaussOnce(tooHigh, 0, 1) - 1.0 / 33), 1e-12);
}

TEST(Quadrature, weightsAreSymmetricAndAddUpToTwo) {
  const GaussRule& rule = gauss16();
  double sum = 0;
  for (int i = 0; i < GaussRule::kPoints; ++i) {
    sum += rule.weight[i];
    EXPECT_NEAR(rule.node[i], -rule.node[GaussRule::kPoints - 1 - i], 1e-15);
    EXPECT_NEAR(rule.weight[i], rule.weight[GaussRule::kPoints - 1 - i], 1e-15);
  }
  EXPECT_NEAR(sum, 2, 1e-15);
}

TEST(Quadrature, halvesWhereTheFunctionIsSharp) {
  EXPECT_NEAR(integrate([](double x) { return std::exp(-x); }, 0, 30, 1e-13), 1 - std::exp(-30),
              1e-13);
  // A kink inside: |x - 1/3| over 0..1 is (1/9 + 4/9) / 2.
  EXPECT_NEAR(integrate([](double x) { return std::abs(x - 1.0 / 3); }, 0, 1, 1e-12), 5.0 / 18,
              1e-12);
  // A peak of width 1/100: the arc tangent.
  EXPECT_NEAR(integrate([](double x) { return 1 / (1e-4 + x * x); }, -1, 1, 1e-13),
              200 * std::atan(100), 1e-10);
}

} // namespace
} // namespace scye
