// The form has the wearer's girths: the tape round the sampled form against what was measured.
#include "worn/body_form.h"

#include "draft/complete.h"
#include "support/csv_table.h"
#include "worn/worn_measures.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

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

// Cloth must not be pushed much further out a hair's breadth on: it would never rest.
// Between trunk and arm, where they face one another and where they run into one another.
TEST(BodyForm, HowDeepSomethingIsHasNoJumps) {
  std::mt19937 random(15);
  std::normal_distribution<double> any(0, 1);
  for (const double bust : {56.0, 94.0, 150.0}) {
    Design design;
    design.choose(Choice::Figure, bust < 60 ? Figure::Child : Figure::Woman);
    design.set(Field::Bust, bust);
    const BodyForm form(bodyMeasures(complete(design), bust < 60 ? Figure::Child : Figure::Woman));
    const BodyMeasures& m = form.measures();
    for (const double arm : {0.0, 45.0, 90.0}) {
      const BodyForm posed = form.posed(arm);
      const double half = posed.sectionAt(m.armpitY).half;
      for (int k = 0; k < 20000; ++k) {
        const Vec3 p =
            Vec3(half, m.armpitY, 0) + 5 * m.scale() * Vec3(any(random), any(random), any(random));
        const Vec3 q = p + 1e-4 * unit(Vec3(any(random), any(random), any(random)));
        if (posed.distance(p) < -0.5) continue; // the middle of a limb has no way out
        for (const Layer layer : {Layer::Bodice, Layer::Sleeve, Layer::Seam}) {
          const Touch a = posed.touch(p, layer, 0.35), b = posed.touch(q, layer, 0.35);
          const double jump = std::abs(std::min(0.0, a.room) - std::min(0.0, b.room));
          ASSERT_LT(jump, 0.005) << "bust " << bust << ", arm " << arm << ", layer " << int(layer)
                                 << " at " << p.transpose();
        }
      }
    }
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
