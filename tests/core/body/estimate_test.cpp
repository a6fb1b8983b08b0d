#include "body/estimate.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace scye {

TEST(Estimate, GivenValuesStayAsGivenAndTheOthersAreFilled) {
  const auto found = estimates({{Field::Bust, 92}, {Field::UpperArm, 29}}, Figure::Woman);
  EXPECT_FALSE(found.contains(Field::Bust));
  EXPECT_FALSE(found.contains(Field::UpperArm));
  EXPECT_EQ(found.size(), 14u);
  for (const auto& [field, e] : found) {
    EXPECT_LT(e.low, e.value) << info(field).key;
    EXPECT_GT(e.high, e.value) << info(field).key;
    EXPECT_FALSE(check(field, e.low) || check(field, e.high)) << info(field).key;
  }
}

TEST(Estimate, KnowingNothingGivesTheAverageBody) {
  // Mean of the survey's women: wrist 15.1, biacromial breadth 36.3 cm (Gordon et al. 1989).
  const auto found = estimates({}, Figure::Woman);
  EXPECT_EQ(found.size(), 16u);
  EXPECT_NEAR(found.at(Field::Wrist).value, 15.1, 0.05);
  EXPECT_NEAR(found.at(Field::CrossShoulder).value, 36.3 + kStraightAcross, 0.1);
}

TEST(Estimate, EachMeasurementMoreNarrowsTheOthers) {
  Body given;
  double before = estimates(given, Figure::Woman).at(Field::UpperArm).deviation;
  for (const auto& [field, cm] : Body{{Field::Bust, 90}, {Field::Elbow, 24}, {Field::Wrist, 15}}) {
    given[field] = cm;
    const double now = estimates(given, Figure::Woman).at(Field::UpperArm).deviation;
    EXPECT_LT(now, before);
    before = now;
  }
}

// Closed form of the conditional normal in two variables.
TEST(Estimate, OneGivenMeasureIsARegressionLineInLogarithms) {
  const Moments& m = *surveyMoments(Figure::Man);
  const int x = int(Measure::Bust), y = int(Measure::Waist);
  const double slope = m.covariance(x, y) / m.covariance(x, x), away = std::log(110) - m.mean[x];
  const double n = m.subjects;
  const double residual = m.covariance(y, y) - slope * m.covariance(x, y);
  const double leverage = 1 / n + away * away / m.covariance(x, x) / (n - 1);
  const double spread = residual * (n - 1) / (n - 2) * (1 + leverage);
  const Estimate e = estimates({{Field::Bust, 110}}, m).at(Field::Waist);
  EXPECT_NEAR(e.value, std::exp(m.mean[y] + slope * away), 1e-10);
  EXPECT_NEAR(e.deviation, e.value * std::sqrt(spread), 1e-10);
}

TEST(Estimate, DeviationsAreThoseOfEachMeasureFromItsEstimateByTheOthers) {
  const Moments& m = *surveyMoments(Figure::Woman);
  const Body body{
      {Field::Bust, 95}, {Field::Waist, 70}, {Field::Wrist, 16}, {Field::CrossShoulder, 35}};
  const KnownMeasures readings = knownMeasures(body);
  const auto deviations = Conditional(m, readings).deviations();
  for (std::size_t i = 0; i < readings.size(); ++i) {
    KnownMeasures others = readings;
    others.erase(others.begin() + std::ptrdiff_t(i));
    const auto expected = Conditional(m, others).at(readings[i].measure);
    EXPECT_NEAR(deviations[i], (readings[i].log - expected.mean) / expected.deviation, 1e-9);
  }
}

TEST(Estimate, DensityMultipliesAlongAChain) {
  const Moments& m = *surveyMoments(Figure::Woman);
  const KnownMeasures two = knownMeasures({{Field::Bust, 95}, {Field::Waist, 70}});
  const KnownMeasures first(two.begin(), two.begin() + 1);
  const auto log = [](double x, double mean, double variance) {
    return -0.5 * (x - mean) * (x - mean) / variance -
           0.5 * std::log(2 * std::numbers::pi * variance);
  };
  const double vx = m.covariance(0, 0), slope = m.covariance(0, 1) / vx;
  const double one = log(two[0].log, m.mean[0], vx);
  EXPECT_NEAR(Conditional(m, first).logDensity(), one, 1e-10);
  EXPECT_NEAR(Conditional(m, two).logDensity(),
              one + log(two[1].log, m.mean[1] + slope * (two[0].log - m.mean[0]),
                        m.covariance(1, 1) - slope * m.covariance(0, 1)),
              1e-9);
}

TEST(Estimate, ChildrenAreNotEstimatedFromSoldiers) {
  EXPECT_TRUE(estimates({{Field::Bust, 66}}, Figure::Child).empty());
  EXPECT_TRUE(estimates({{Field::Bust, 46}}, Figure::Baby).empty());
  EXPECT_FALSE(beyondSurvey({{Field::Bust, 46}}, Figure::Baby));
}

TEST(Estimate, WhatTheSurveyDoesNotKnowIsPassedOver) {
  const auto plain = estimates({{Field::Bust, 92}}, Figure::Woman);
  const auto more = estimates(
      {{Field::Bust, 92}, {Field::HeadGirth, 56}, {Field::Wrist, 0}, {Field::EaseBust, 5}},
      Figure::Woman);
  EXPECT_EQ(plain.at(Field::Wrist).value, more.at(Field::Wrist).value);
}

TEST(Estimate, OnlyWhatWasTakenOnTheBodyCounts) {
  Design design;
  design.set(Field::Bust, 92).set(Field::UpperArm, 17, Source::Garment).set(Field::HeadGirth, 56);
  EXPECT_EQ(bodyMeasurements(design), (Body{{Field::Bust, 92}}));
}

TEST(Estimate, ABodyBeyondTheSurveyIsToldApart) {
  EXPECT_FALSE(beyondSurvey({{Field::Bust, 92}}, Figure::Woman));
  EXPECT_TRUE(beyondSurvey({{Field::Bust, 140}}, Figure::Woman)); // the largest measured was 116
  // Neither is rare by itself, both together are.
  const Body thin{{Field::Waist, 85}, {Field::Hip, 87}};
  EXPECT_FALSE(beyondSurvey({{Field::Waist, 85}}, Figure::Woman));
  EXPECT_FALSE(beyondSurvey({{Field::Hip, 87}}, Figure::Woman));
  EXPECT_TRUE(beyondSurvey(thin, Figure::Woman));
}

} // namespace scye
