#include "body/estimate.h"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>
#include <numbers>

namespace scye {

Body bodyMeasurements(const Design& design) {
  Body out;
  for (int m = 0; m < kMeasureCount; ++m) {
    const auto field = fieldOf(Measure(m));
    if (!field || design.source(*field) != Source::Body) continue;
    if (const auto value = design.given(*field)) out[*field] = *value;
  }
  return out;
}

KnownMeasures knownMeasures(const Body& given) {
  KnownMeasures out;
  for (const auto& [field, cm] : given)
    if (const auto m = measureOf(field); m && cm > 0) out.push_back({*m, std::log(cm)});
  return out;
}

Conditional::Conditional(const Moments& moments, KnownMeasures readings)
    : moments_(moments), readings_(std::move(readings)) {
  const int n = int(readings_.size());
  Matrix covariance(n, n);
  excess_.resize(n);
  for (int i = 0; i < n; ++i) {
    const int a = int(readings_[i].measure);
    excess_[i] = readings_[i].log - moments.mean[a];
    for (int j = 0; j < n; ++j)
      covariance(i, j) = moments.covariance(a, int(readings_[j].measure));
  }
  factor_.compute(covariance);
  solved_ = factor_.solve(excess_);
}

Conditional::Vector Conditional::covarianceWith(Measure m) const {
  Vector out(readings_.size());
  for (int i = 0; i < out.size(); ++i)
    out[i] = moments_.covariance(int(m), int(readings_[i].measure));
  return out;
}

// The variance of a new subject about a regression fitted to N others, over the residual variance
// in their covariance (divisor N - 1): freedom lost to the regressors, and the fit's own error,
// which grows with the regressors' distance from the mean. Textbook prediction interval of multiple
// regression.
double Conditional::widening(int known, double distance) const {
  const double free = moments_.subjects - 1;
  return free / (free - known) * (1 + 1.0 / moments_.subjects + distance / free);
}

Conditional::Log Conditional::at(Measure m) const {
  const auto read = std::find_if(readings_.begin(), readings_.end(),
                                 [&](const KnownMeasure& r) { return r.measure == m; });
  if (read != readings_.end()) return {read->log, 0};
  const Vector shared = covarianceWith(m);
  const double variance = moments_.covariance(int(m), int(m)) - shared.dot(factor_.solve(shared));
  const double wide = variance * widening(int(readings_.size()), distance());
  return {moments_.mean[int(m)] + shared.dot(solved_), std::sqrt(std::max(0.0, wide))};
}

// With P the inverse covariance, the reading i differs from its conditional mean by (P e)_i / P_ii,
// its conditional variance is 1 / P_ii, and the others' squared distance is less by their quotient.
std::vector<double> Conditional::deviations() const {
  const int n = int(readings_.size());
  const Matrix inverse = factor_.solve(Matrix::Identity(n, n));
  const double all = distance();
  std::vector<double> out(n);
  for (int i = 0; i < n; ++i) {
    const double plain = solved_[i] / std::sqrt(inverse(i, i));
    out[i] = plain / std::sqrt(widening(n - 1, all - plain * plain));
  }
  return out;
}

double Conditional::logDensity() const {
  double sum = -0.5 * distance();
  for (int i = 0; i < excess_.size(); ++i)
    sum -= std::log(factor_.matrixLLT()(i, i)) + 0.5 * std::log(2 * std::numbers::pi);
  return sum;
}

std::map<Field, Estimate> estimates(const Body& given, const Moments& moments) {
  const Conditional population(moments, knownMeasures(given));
  std::map<Field, Estimate> out;
  for (int m = 0; m < kMeasureCount; ++m) {
    const auto field = fieldOf(Measure(m));
    if (!field) continue;
    const auto [mean, deviation] = population.at(Measure(m));
    if (deviation == 0) continue; // given
    const double value = std::exp(mean), reach = std::exp(kNinetyReach * deviation);
    out[*field] = {value, value * deviation, value / reach, value * reach};
  }
  return out;
}

std::map<Field, Estimate> estimates(const Body& given, Figure figure) {
  const Moments* moments = surveyMoments(figure);
  return moments ? estimates(given, *moments) : std::map<Field, Estimate>{};
}

bool beyondSurvey(const Body& given, const Moments& moments) {
  const KnownMeasures readings = knownMeasures(given);
  const auto far = [&](const KnownMeasure& r) {
    const int m = int(r.measure);
    return std::abs(r.log - moments.mean[m]) > 3 * std::sqrt(moments.covariance(m, m));
  };
  if (std::any_of(readings.begin(), readings.end(), far)) return true;
  return Conditional(moments, readings).distance() > chiSquaredAt(int(readings.size()), 2.78);
}

bool beyondSurvey(const Body& given, Figure figure) {
  const Moments* moments = surveyMoments(figure);
  return moments && beyondSurvey(given, *moments);
}

double chiSquaredAt(int n, double z) {
  if (n < 1) return 0;
  const double seldom = 0.5 * std::erfc(z / std::numbers::sqrt2);
  return boost::math::quantile(boost::math::complement(boost::math::chi_squared(n), seldom));
}

} // namespace scye
