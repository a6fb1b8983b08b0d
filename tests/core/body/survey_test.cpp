#include "body/survey.h"

#include <gtest/gtest.h>

#include <Eigen/Cholesky>

#include <cmath>
#include <fstream>
#include <sstream>

namespace scye {

static std::string surveyFile(const std::string& name) {
  std::ifstream file(SCYE_TEST_DATA "/ansur1988-" + name + ".csv", std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

TEST(Survey, TheShippedTableIsWhatTheSurveysFilesYield) {
  for (const auto& [figure, name] : {std::pair{Figure::Woman, "women"}, {Figure::Man, "men"}}) {
    const auto subjects = readSurvey(surveyFile(name));
    ASSERT_TRUE(subjects);
    const Moments fresh = momentsOf(*subjects);
    const Moments& shipped = *surveyMoments(figure);
    EXPECT_EQ(shipped.subjects, fresh.subjects);
    // The table is printed to twelve digits.
    EXPECT_TRUE(shipped.mean.isApprox(fresh.mean, 1e-11));
    EXPECT_TRUE(shipped.covariance.isApprox(fresh.covariance, 1e-10));
    for (int i = 0; i < kMeasureCount; ++i)
      for (int j = 0; j < kMeasureCount; ++j)
        EXPECT_NEAR(shipped.covariance(i, j), fresh.covariance(i, j), 1e-13) << i << " " << j;
  }
}

TEST(Survey, ItsFilesHoldTheSubjectsTheyAreSaidToHold) { // tests/data/README.md
  EXPECT_EQ(readSurvey(surveyFile("women"))->size(), 1104u);
  EXPECT_EQ(readSurvey(surveyFile("men"))->size(), 887u);
}

TEST(Survey, MeasuresAreMappedAsTheHeaderSays) {
  // The first woman of the file, worked by hand from its row.
  const Subject woman = readSurvey(surveyFile("women"))->front();
  const auto at = [&](Measure m) { return woman[std::size_t(m)]; };
  EXPECT_DOUBLE_EQ(at(Measure::Bust), 112.8);
  EXPECT_DOUBLE_EQ(at(Measure::CrossShoulder), 35.1 + 1);
  EXPECT_DOUBLE_EQ(at(Measure::CrossBack), 38.6);
  EXPECT_NEAR(at(Measure::ArmholeDepth), 19.1, 1e-12);
  EXPECT_NEAR(at(Measure::TipToUnderarm), 137.2 - 125.5, 1e-12);
  EXPECT_NEAR(at(Measure::ShoulderFall), 140.7 - 137.2, 1e-12);
  EXPECT_NEAR(at(Measure::SleeveToUnderarm), 57.1 - (137.2 - 125.5), 1e-12);
  EXPECT_DOUBLE_EQ(at(Measure::SleeveToShoulder), 57.1);
  EXPECT_DOUBLE_EQ(at(Measure::ScyeGirth), 43.4);
}

TEST(Survey, ItsCovariancesArePositiveDefinite) {
  for (Figure figure : {Figure::Woman, Figure::Man})
    EXPECT_EQ(Eigen::LLT<Eigen::MatrixXd>(surveyMoments(figure)->covariance).info(),
              Eigen::Success);
}

TEST(Survey, NobodyMeasuredChildren) {
  EXPECT_EQ(surveyMoments(Figure::Child), nullptr);
  EXPECT_EQ(surveyMoments(Figure::Baby), nullptr);
}

TEST(Survey, FieldsAndMeasuresAnswerEachOther) {
  int fields = 0;
  for (int m = 0; m < kMeasureCount; ++m)
    if (const auto f = fieldOf(Measure(m))) {
      ++fields;
      EXPECT_EQ(measureOf(*f), Measure(m));
    }
  EXPECT_EQ(fields, 16);
  EXPECT_FALSE(measureOf(Field::NeckWidth));
  EXPECT_FALSE(measureOf(Field::EaseBust));
}

TEST(Survey, ASpoiltFileIsRefused) {
  const std::string good = surveyFile("women");
  EXPECT_TRUE(readSurvey(good));
  EXPECT_FALSE(readSurvey(""));
  EXPECT_FALSE(readSurvey("subject,bust_girth\n1,900\n"));
  std::string cut = good;
  cut.resize(cut.size() / 2);
  EXPECT_FALSE(readSurvey(cut.substr(0, cut.rfind(','))));
  std::string letters = good;
  letters.replace(letters.find("1128"), 4, "x128");
  EXPECT_FALSE(readSurvey(letters));
}

TEST(Survey, MomentsOfTwoSubjectsAreTheTextbooks) {
  Subject one, two;
  one.fill(std::exp(3.0));
  two.fill(std::exp(3.5));
  const Moments m = momentsOf({one, two});
  EXPECT_NEAR(m.mean[0], 3.25, 1e-14);
  EXPECT_NEAR(m.covariance(0, 5), 0.125, 1e-14); // 2 * 0.25^2 / (2 - 1)
}

} // namespace scye
