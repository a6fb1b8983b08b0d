// The form has the wearer's girths: the tape round the sampled form against what was measured.
#include "worn/body_form.h"

#include "draft/complete.h"
#include "support/csv_table.h"
#include "worn/worn_measures.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace scye {
namespace {

constexpr double kWithin = 0.5; // cm

void expectGirths(const BodyMeasures& m, const std::string& whose) {
  const BodyForm form(m);
  SCOPED_TRACE(whose);
  EXPECT_NEAR(form.trunkGirth(m.bustY), m.bust, kWithin);
  EXPECT_NEAR(form.trunkGirth(m.waistY), m.waist, kWithin);
  EXPECT_NEAR(form.trunkGirth(m.hipY), m.hip, kWithin);
  EXPECT_NEAR(form.neckGirth(), m.neckBase, kWithin);
  EXPECT_NEAR(form.armGirth(0.30), m.upperArm, kWithin);
  EXPECT_NEAR(form.armGirth(1), m.wrist, kWithin);
}

// The 1988 survey of U.S. Army personnel (tests/data/README.md): its smallest, middle and largest
// by chest girth.
class SurveyBodies : public testing::TestWithParam<bool> {};

TEST_P(SurveyBodies, HaveTheirGirths) {
  const bool woman = GetParam();
  const test::CsvTable table =
      test::CsvTable::data(woman ? "ansur1988-women.csv" : "ansur1988-men.csv");
  ASSERT_GT(table.rows(), 100u);
  std::vector<std::size_t> order(table.rows());
  for (std::size_t i = 0; i < order.size(); ++i)
    order[i] = i;
  const std::string bust = "bust_girth";
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return table.number(a, bust) < table.number(b, bust);
  });
  for (const std::size_t row : {order.front(), order[order.size() / 2], order.back()}) {
    Design design;
    design.choose(Choice::Figure, woman ? Figure::Woman : Figure::Man);
    const auto set = [&](Field field, const char* column) {
      const double cm = table.number(row, column) / 10;
      if (cm > 0) design.set(field, cm);
    };
    set(Field::Bust, "bust_girth"), set(Field::Waist, "waist_girth");
    set(Field::Hip, "hip_girth"), set(Field::NeckBase, "neck_base_girth");
    set(Field::UpperArm, "upper_arm_girth"), set(Field::Wrist, "wrist_girth");
    expectGirths(bodyMeasures(complete(design), woman ? Figure::Woman : Figure::Man),
                 "row " + std::to_string(row));
  }
}
INSTANTIATE_TEST_SUITE_P(All, SurveyBodies, testing::Bool(),
                         [](const auto& name) { return name.param ? "Women" : "Men"; });

// The published tables' children and babies, by bust.
TEST(BodyForm, ChildrenHaveTheirGirths) {
  for (const double bust : {53.5, 58.5, 63.5, 69.0, 76.0}) {
    Design design;
    design.choose(Choice::Figure, Figure::Child);
    design.set(Field::Bust, bust);
    expectGirths(bodyMeasures(complete(design), Figure::Child), "child " + std::to_string(bust));
  }
  for (const double bust : {35.5, 40.5, 43.0, 45.5}) {
    Design design;
    design.choose(Choice::Figure, Figure::Baby);
    design.set(Field::Bust, bust);
    expectGirths(bodyMeasures(complete(design), Figure::Baby), "baby " + std::to_string(bust));
  }
}

TEST(BodyForm, ArmsHangClearOfTheTrunkAndAreLiftedToLevel) {
  Design design;
  design.set(Field::Bust, 94);
  const BodyForm form(bodyMeasures(complete(design), Figure::Woman));
  EXPECT_GT(form.hanging(), 5);
  EXPECT_LT(form.hanging(), 30);
  const BodyForm lifted = form.posed(90);
  EXPECT_DOUBLE_EQ(lifted.arm(), 90);
  EXPECT_NEAR(lifted.leftArm().elbow.y(), lifted.leftArm().shoulder.y(), 0.5);
  EXPECT_DOUBLE_EQ(form.posed(0).arm(), form.hanging());
}

// Of a large body they hang far out, and there is still a way to lift them.
TEST(BodyForm, LargeArmsHangClearToo) {
  for (const double bust : {120.0, 140.0, 160.0}) {
    Design design;
    design.set(Field::Bust, bust);
    const BodyForm form(bodyMeasures(complete(design), Figure::Woman));
    const BodyForm::Arm& arm = form.leftArm();
    EXPECT_GT(form.trunk(arm.elbow), arm.elbowRadius) << bust;
    EXPECT_GT(form.trunk(arm.wrist), arm.wristRadius) << bust;
    EXPECT_GE(liftedArm(form), form.hanging() + 20) << bust;
    EXPECT_LE(liftedArm(form), 90) << bust;
  }
}

TEST(BodyForm, DistancesAreThoseOfASphereLikeSurfaceNearIt) {
  Design design;
  design.set(Field::Bust, 94);
  const BodyForm form(bodyMeasures(complete(design), Figure::Woman));
  const BodyMeasures& m = form.measures();
  // Stepping out along the normal from points of the surface.
  for (int i = 0; i < 12; ++i) {
    const double angle = 0.5 * i;
    Vec3 p(0.5 * std::cos(angle), m.waistY + 8, 0.5 * std::sin(angle));
    const Vec3 ray(std::cos(angle), 0, std::sin(angle));
    double low = 0, high = 60;
    for (int k = 0; k < 40; ++k) {
      const double r = 0.5 * (low + high);
      (form.trunk(p + r * ray) < 0 ? low : high) = r;
    }
    Vec3 normal;
    const Vec3 surface = p + low * ray;
    (void)form.trunk(surface, &normal);
    EXPECT_NEAR(form.trunk(surface + 1.0 * normal), 1.0, 0.1);
    EXPECT_NEAR(form.trunk(surface - 1.0 * normal), -1.0, 0.15);
  }
}

} // namespace
} // namespace scye
