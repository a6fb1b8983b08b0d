// The drafted armhole's edge, no ease anywhere, against the scye girth that was measured on the
// same body: 1988 anthropometric survey of U.S. Army personnel (tests/data/README.md), women and
// men. The body's girth runs close round the arm; the drafted edge lies outside of it.
#include "seam/garment_draft.h"
#include "support/csv_table.h"
#include "support/record.h"

#include <gtest/gtest.h>

#include <cmath>

namespace scye {
namespace {

// Biacromial breadth stands for cross-shoulder, all widths alike.
Design bodyWithoutEase(const test::CsvTable& survey, std::size_t row, Figure figure) {
  const auto cm = [&](std::string_view column) { return 0.1 * survey.number(row, column); };
  Design d;
  d.choose(Choice::Figure, figure);
  for (int f = 0; f < kFieldCount; ++f)
    if (info(Field(f)).group == FieldGroup::Ease) d.set(Field(f), 0);
  constexpr double kBackDrop = 2, kShoulderDrop = 2.5;
  d.set(Field::BackNeckDrop, kBackDrop).set(Field::ShoulderDrop, kShoulderDrop);
  return d.set(Field::Bust, cm("bust_girth"))
      .set(Field::CrossShoulder, cm("biacromial_breadth"))
      .set(Field::CrossBack, cm("biacromial_breadth"))
      .set(Field::ArmholeDepth, cm("scye_depth"))
      .set(Field::UpperArm, cm("upper_arm_girth"));
}

struct EdgeAgainstGirth {
  int bodies = 0;
  double correlation = 0, meanRatio = 0, sdRatio = 0;
};

EdgeAgainstGirth compareWithGirths(const std::string& file, Figure figure) {
  const test::CsvTable survey = test::CsvTable::data(file);
  const double n = double(survey.rows());
  double x = 0, y = 0, xx = 0, yy = 0, xy = 0, r = 0, rr = 0;
  for (std::size_t row = 0; row < survey.rows(); ++row) {
    const double edge = draftGarment(bodyWithoutEase(survey, row, figure)).cap.armhole();
    const double girth = 0.1 * survey.number(row, "scye_girth"), ratio = edge / girth;
    x += edge, y += girth, xx += edge * edge, yy += girth * girth, xy += edge * girth;
    r += ratio, rr += ratio * ratio;
  }
  EdgeAgainstGirth out;
  out.bodies = int(survey.rows());
  out.correlation = (xy - x * y / n) / std::sqrt((xx - x * x / n) * (yy - y * y / n));
  out.meanRatio = r / n;
  out.sdRatio = std::sqrt(rr / n - out.meanRatio * out.meanRatio);
  test::record("correlation", out.correlation);
  test::record("meanRatio", out.meanRatio);
  test::record("sdRatio", out.sdRatio);
  return out;
}

TEST(ScyeGirth, womensDraftedArmholesFollowTheirBodies) {
  const EdgeAgainstGirth women = compareWithGirths("ansur1988-women.csv", Figure::Woman);
  EXPECT_EQ(women.bodies, 1104);
  EXPECT_GT(women.correlation, 0.65); // measured 0.696
  EXPECT_GT(women.meanRatio, 1.08);   // measured 1.133
  EXPECT_LT(women.meanRatio, 1.18);
}

TEST(ScyeGirth, mensDraftedArmholesFollowTheirBodies) {
  const EdgeAgainstGirth men = compareWithGirths("ansur1988-men.csv", Figure::Man);
  EXPECT_EQ(men.bodies, 887);
  EXPECT_GT(men.correlation, 0.65); // measured 0.713
  EXPECT_GT(men.meanRatio, 1.03);   // measured 1.076
  EXPECT_LT(men.meanRatio, 1.13);
}

} // namespace
} // namespace scye
