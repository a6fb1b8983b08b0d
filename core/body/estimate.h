// Estimates of the measurements that were not taken from those that were: the conditional normal
// distribution of the survey's logarithms (see survey.h), women and men only. Lengths in cm.
//
// Exact for the model; on subjects left out of the fit the 90 % ranges hold 86-94 % whichever
// subset is given (tests/reference/body_estimates.cpp). A deviation counts what the survey's finite
// size leaves open, so it grows a little with strangeness; but a body unlike any soldier's still
// gets too narrow a range, see beyondSurvey().
//
// Cost: one Cholesky factor of the given measures' covariance, some microseconds.
#pragma once

#include "body/survey.h"
#include "model/design.h"

#include <Eigen/Cholesky>

#include <map>
#include <vector>

namespace scye {

// Measurements of a body, cm. Fields that the survey does not know, and values that are not
// positive, are passed over.
using Body = std::map<Field, double>;

// What the design says was measured on the body, as far as the survey knows it. What was measured
// on a garment holds ease and is left out.
[[nodiscard]] Body bodyMeasurements(const Design& design);

// Normal quantile of 0.95: 5 of 100 lie beyond it at either end.
inline constexpr double kNinetyReach = 1.6448536269514722;

struct Estimate {
  double value = 0;         // the median: as likely too small as too large
  double deviation = 0;     // standard deviation
  double low = 0, high = 0; // 90 of 100 bodies with the same given measurements lie between
};

// One for each field of the survey that is not given. Empty for children and babies.
[[nodiscard]] std::map<Field, Estimate> estimates(const Body& given, Figure figure);
[[nodiscard]] std::map<Field, Estimate> estimates(const Body& given, const Moments& moments);

// Whether the body, taken whole or in any one measure, is so unlike the survey's (fewer than 1 in
// 370 of them) that estimates from it are extrapolations.
[[nodiscard]] bool beyondSurvey(const Body& given, const Moments& moments);
[[nodiscard]] bool beyondSurvey(const Body& given, Figure figure);

// A measure as read, in the scale of the survey's moments.
struct KnownMeasure {
  Measure measure;
  double log; // ln(cm)
};
using KnownMeasures = std::vector<KnownMeasure>;
[[nodiscard]] KnownMeasures knownMeasures(const Body& given);

// The survey's distribution with some measures known, each at most once.
class Conditional {
public:
  Conditional(const Moments& moments, KnownMeasures readings);

  struct Log {
    double mean, deviation; // of ln(cm)
  };
  // Of a measure given the readings; a measure that was read is its reading, with deviation 0.
  [[nodiscard]] Log at(Measure m) const;
  // How many conditional standard deviations each reading lies from what the other readings lead
  // one to expect, in their order.
  [[nodiscard]] std::vector<double> deviations() const;
  // Squared Mahalanobis distance of the readings from the mean: chi-squared with their number of
  // degrees of freedom.
  [[nodiscard]] double distance() const { return excess_.dot(solved_); }
  [[nodiscard]] double logDensity() const;

private:
  using Matrix =
      Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, kMeasureCount, kMeasureCount>;
  using Vector = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, kMeasureCount, 1>;

  [[nodiscard]] Vector covarianceWith(Measure m) const;
  [[nodiscard]] double widening(int known, double distance) const;

  const Moments& moments_;
  KnownMeasures readings_;
  Eigen::LLT<Matrix> factor_; // of the readings' covariance
  Vector excess_, solved_;    // readings - mean, and the covariance's inverse times that
};

// The value that chi-squared with n degrees of freedom passes as seldom as a normal value passes z,
// z > 0; 0 for n < 1. To 1e-12, relative (Boost.Math). Cost: some 10 us.
[[nodiscard]] double chiSquaredAt(int n, double z);

} // namespace scye
