#include "curve/roots.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace scye {
namespace {

std::pair<double, double> parabola(double x) {
  return {x * x - 2, 2 * x};
}

TEST(BracketedNewton, findsASimpleRootQuickly) {
  const RootSummary r = bracketedNewton(parabola, 0, 3, {.xTolerance = 1e-14});
  EXPECT_TRUE(r.ok());
  EXPECT_NEAR(r.x, std::sqrt(2.0), 1e-15);
  EXPECT_LE(r.iterations, 8);
  EXPECT_LE(r.low, r.x);
  EXPECT_GE(r.high, r.x);
}

TEST(BracketedNewton, claimsNoRootWithoutAChangeOfSign) {
  const RootSummary r = bracketedNewton(parabola, 2, 3);
  EXPECT_EQ(r.status, RootStatus::NoSignChange);
  EXPECT_FALSE(r.ok());
}

TEST(BracketedNewton, takesAnEndThatIsTheRoot) {
  const auto line = [](double x) { return std::pair(x - 1, 1.0); };
  EXPECT_EQ(bracketedNewton(line, 1, 4).x, 1);
  EXPECT_EQ(bracketedNewton(line, -4, 1).x, 1);
  EXPECT_TRUE(bracketedNewton(line, 1, 4).ok());
}

// Newton's own iteration on the arc tangent leaves for infinity from |x| > 1.4.
TEST(BracketedNewton, neverLeavesItsBracket) {
  const auto f = [](double x) { return std::pair(std::atan(x - 2), 1 / (1 + (x - 2) * (x - 2))); };
  const RootSummary r = bracketedNewton(f, -100, 60);
  EXPECT_TRUE(r.ok());
  EXPECT_NEAR(r.x, 2, 1e-10);
}

TEST(BracketedNewton, halvesWhereTheSlopeIsFlatOrMissing) {
  const auto flat = [](double x) { return std::pair(std::pow(x - 1, 9), 9 * std::pow(x - 1, 8)); };
  EXPECT_NEAR(bracketedNewton(flat, 0, 5, {.xTolerance = 1e-6}).x, 1, 1e-3);
  const auto noSlope = [](double x) {
    return std::pair(x - 0.7, std::numeric_limits<double>::quiet_NaN());
  };
  EXPECT_NEAR(bracketedNewton(noSlope, 0, 5).x, 0.7, 1e-10);
}

TEST(BracketedNewton, saysWhenItRanOutOfSteps) {
  const RootSummary r = bracketedNewton(parabola, 0, 1e9, {.xTolerance = 0, .maxIterations = 3});
  EXPECT_EQ(r.status, RootStatus::Exhausted);
  EXPECT_LT(r.low, std::sqrt(2.0));
  EXPECT_GT(r.high, std::sqrt(2.0));
}

TEST(BracketedNewton, refusesWhatIsNotFinite) {
  const auto f = [](double x) { return std::pair(x == 0 ? std::nan("") : x - 1, 1.0); };
  EXPECT_EQ(bracketedNewton(f, 0, 3).status, RootStatus::NoSignChange);
}

TEST(BracketedSecant, findsRisingAndFallingRoots) {
  const auto rising = [](double x) { return x * x * x - 5; };
  const auto falling = [](double x) { return 5 - x * x * x; };
  for (const RootSummary& r : {bracketedSecant(rising, 0, 10), bracketedSecant(falling, 0, 10)}) {
    EXPECT_TRUE(r.ok());
    EXPECT_NEAR(r.x, std::cbrt(5.0), 1e-10);
    EXPECT_LE(r.iterations, 14);
  }
  EXPECT_FALSE(bracketedSecant(rising, 2, 10).ok());
}

TEST(BracketedSecant, isNotFooledByAStep) {
  const auto step = [](double x) { return x < 3 ? -1.0 : 1000.0; };
  const RootSummary r = bracketedSecant(step, 0, 10, {.xTolerance = 1e-9});
  EXPECT_TRUE(r.ok());
  EXPECT_NEAR(r.x, 3, 1e-8);
}

} // namespace
} // namespace scye
