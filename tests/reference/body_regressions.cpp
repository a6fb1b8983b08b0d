// The straight lines by which a body is completed where no survey reaches, each worked out once
// more from the 1988 survey's file by least squares (Gordon et al. 1989; tests/data).
#include "body/likely_body.h"
#include "body_survey.h"

#include <gtest/gtest.h>

#include <Eigen/Dense>

#include <functional>

namespace scye::body_regressions {
namespace {

using trial::surveySubjects;

using Of = std::function<double(const Subject&)>;

Of measure(Measure m) {
  return [m](const Subject& s) { return s[std::size_t(m)]; };
}

// y = c0 + c1 x1 + ...
Eigen::VectorXd leastSquares(const std::vector<Subject>& subjects, const Of& y,
                             const std::vector<Of>& xs) {
  Eigen::MatrixXd a(subjects.size(), xs.size() + 1);
  Eigen::VectorXd b(subjects.size());
  for (Eigen::Index i = 0; i < a.rows(); ++i) {
    a(i, 0) = 1;
    for (std::size_t k = 0; k < xs.size(); ++k)
      a(i, Eigen::Index(k) + 1) = xs[k](subjects[std::size_t(i)]);
    b[i] = y(subjects[std::size_t(i)]);
  }
  return a.colPivHouseholderQr().solve(b);
}

double mean(const std::vector<Subject>& subjects, const Of& of) {
  double sum = 0;
  for (const Subject& s : subjects)
    sum += of(s);
  return sum / double(subjects.size());
}

// Without a population behind it: by the lines alone.
LikelyBody byLines(Figure figure, const Body& known) {
  return likelyBody(figure, FillFrom::Survey, known, 0, nullptr);
}

// At both ends of what the survey holds, cm. The lines are printed to three digits and more.
constexpr double kPrinted = 0.05;

TEST(BodyRegressions, elbowWristAndNeckAreTheSurveysLines) {
  for (const Figure figure : {Figure::Woman, Figure::Man}) {
    const std::vector<Subject> subjects = surveySubjects(figure);
    const bool man = figure == Figure::Man;
    SCOPED_TRACE(man ? "men" : "women");
    const auto elbow =
        leastSquares(subjects, measure(Measure::Elbow), {measure(Measure::UpperArm)});
    const auto wrist =
        leastSquares(subjects, measure(Measure::Wrist), {measure(Measure::UpperArm)});
    const auto neck = leastSquares(subjects, measure(Measure::NeckBase), {measure(Measure::Bust)});
    const auto waist =
        leastSquares(subjects, measure(Measure::BackWaistLength), {measure(Measure::Bust)});
    for (const double arm : {24.0, 36.0}) {
      const LikelyBody body = byLines(figure, {{Field::Bust, 92}, {Field::UpperArm, arm}});
      EXPECT_NEAR(body[Field::Elbow], elbow[0] + elbow[1] * arm, kPrinted) << arm;
      EXPECT_NEAR(body[Field::Wrist], wrist[0] + wrist[1] * arm, kPrinted) << arm;
    }
    for (const double bust : {78.0, 118.0}) {
      const LikelyBody body = byLines(figure, {{Field::Bust, bust}, {Field::UpperArm, 30}});
      EXPECT_NEAR(body[Field::NeckBase], neck[0] + neck[1] * bust, kPrinted) << bust;
      // Women's back waist length is a published one.
      if (man) {
        EXPECT_NEAR(body[Field::BackWaistLength], waist[0] + waist[1] * bust, kPrinted) << bust;
      }
    }
  }
}

// The girth round the armhole: for women without their shoulder, whose share is nothing (0.003).
TEST(BodyRegressions, theGirthRoundTheArmholeIsTheSurveysPlane) {
  for (const Figure figure : {Figure::Woman, Figure::Man}) {
    const bool man = figure == Figure::Man;
    SCOPED_TRACE(man ? "men" : "women");
    const auto plane = leastSquares(
        surveySubjects(figure), measure(Measure::ScyeGirth),
        {measure(Measure::Bust), measure(Measure::UpperArm), measure(Measure::CrossShoulder),
         [](const Subject& s) { return s[std::size_t(Measure::ArmholeDepth)]; }});
    for (const double bust : {85.0, 110.0})
      for (const double arm : {26.0, 34.0})
        for (const double depth : {17.0, 22.0}) {
          const double shoulder = man ? 41 : 37;
          const LikelyBody body = byLines(figure, {{Field::Bust, bust},
                                                   {Field::UpperArm, arm},
                                                   {Field::ArmholeDepth, depth},
                                                   {Field::CrossShoulder, shoulder}});
          const double expected =
              plane[0] + plane[1] * bust + plane[2] * arm + plane[3] * shoulder + plane[4] * depth;
          EXPECT_NEAR(body[Field::ScyeGirth], expected, 0.15) << bust << ' ' << arm << ' ' << depth;
        }
  }
}

TEST(BodyRegressions, theGirthFromTheTipIsTheWomensPlane) {
  const auto plane =
      leastSquares(surveySubjects(Figure::Woman), measure(Measure::ScyeGirth),
                   {measure(Measure::Bust), measure(Measure::UpperArm),
                    measure(Measure::CrossShoulder), measure(Measure::TipToUnderarm)});
  for (const double bust : {85.0, 110.0})
    for (const double tip : {9.0, 11.5}) {
      const LikelyBody body = byLines(Figure::Woman, {{Field::Bust, bust},
                                                      {Field::UpperArm, 30},
                                                      {Field::CrossShoulder, 37},
                                                      {Field::TipToUnderarm, tip}});
      EXPECT_NEAR(body[Field::ScyeGirth],
                  plane[0] + plane[1] * bust + plane[2] * 30 + plane[3] * 37 + plane[4] * tip, 0.1)
          << bust << ' ' << tip;
    }
}

// Shares: how steeply a shoulder falls, how much of the scye depth lies below its tip, how wide a
// neck is for its girth (the biacromial breadth less both shoulders' runs).
TEST(BodyRegressions, sharesAreTheSurveysMeans) {
  const std::vector<Subject> women = surveySubjects(Figure::Woman);
  const auto at = [](const Subject& s, Measure m) { return s[std::size_t(m)]; };
  const double fall =
      mean(women, measure(Measure::ShoulderFall)) / mean(women, measure(Measure::ShoulderLength));
  const double tip =
      mean(women, measure(Measure::TipToUnderarm)) / mean(women, measure(Measure::ArmholeDepth));
  const LikelyBody body = byLines(
      Figure::Woman, {{Field::Bust, 92}, {Field::ShoulderLength, 14}, {Field::ArmholeDepth, 19}});
  EXPECT_NEAR(body.shoulderFall / 14, fall, 0.001);
  EXPECT_NEAR(body[Field::TipToUnderarm] / 19, tip, 0.002);
  for (const Figure figure : {Figure::Woman, Figure::Man}) {
    const double share = mean(surveySubjects(figure), [&](const Subject& s) {
      const double breadth = at(s, Measure::CrossShoulder) - kStraightAcross;
      const double run = shoulderRun(at(s, Measure::ShoulderLength), at(s, Measure::ShoulderFall));
      return (breadth - 2 * run) / at(s, Measure::NeckBase);
    });
    EXPECT_NEAR(bodyNeckShare(figure), share, 0.005);
  }
}

} // namespace
} // namespace scye::body_regressions
