#include "core/shaping/oracle.h"
#include "shaping/armhole_shaping.h"
#include "shaping/cost.h"

#include <gtest/gtest.h>

#include <random>

namespace scye {
namespace {

struct Half {
  double span, rise, depth, scoop;
};

ArmholeRequest armholeOf(const Half& half, const StitchSize& size, int underarm) {
  const double foot = half.span + 17;
  ArmholeRequest request{
      .curve = Path(Vec2(foot, 0)), .size = size, .underarm = Stitches(underarm)};
  const double top = half.rise * half.depth;
  request.curve.cubicTo({foot - half.scoop * half.span, 0}, {17, top * (1 - half.scoop)}, {17, top})
      .lineTo({17, half.depth});
  request.taken = Stitches(int(std::lround(half.span / size.width)));
  request.rows = Rows(2 * int(std::lround(half.depth / size.height / 2)));
  return request;
}

ArmholeRequest randomArmhole(std::mt19937& rng, double stitchesIn10) {
  std::uniform_real_distribution<double> unit(0, 1);
  const Half half{2 + 3 * unit(rng), 0.35 + 0.3 * unit(rng), 16 + 6 * unit(rng),
                  0.4 + 0.3 * unit(rng)};
  return armholeOf(half, {10 / stitchesIn10, 10 / (1.37 * stitchesIn10)}, 4);
}

TEST(ArmholeShaping, isAcceptableAndMeasuredRight) {
  std::mt19937 rng(31);
  for (int i = 0; i < 400; ++i) {
    const double gauge = std::uniform_real_distribution<double>(12, 40)(rng);
    const ArmholeRequest request = randomArmhole(rng, gauge);
    const ArmholeShaping out = shapeArmhole(request);
    ASSERT_NE(out.status, ShapingStatus::TooFewRows);
    const double w = request.size.width, h = request.size.height;
    EXPECT_EQ(out.schedule.taken(), request.taken);
    EXPECT_NEAR(out.right, checks::rightLength(out.schedule, w, h), 1e-9);
    EXPECT_NEAR(out.left, checks::leftLength(out.schedule, w, h), 1e-9);
    EXPECT_NEAR(out.deviation, checks::rightDeviation(out.schedule, request.curve.segments(), w, h),
                1e-6);
    EXPECT_EQ(out.schedule.runs.front().every, Rows(2)); // the second row after the underarm
    int bindOffs = 0;
    for (std::size_t r = 0; r < out.schedule.runs.size(); ++r) {
      const scye::Run& run = out.schedule.runs[r];
      if (r > 0) {
        EXPECT_LT(checks::rate(run), checks::rate(out.schedule.runs[r - 1])); // never grow
      }
      if (run.kind != ShapingKind::BindOff || out.beyondStyle) continue;
      bindOffs += run.times;
      EXPECT_TRUE(run.stitches.value() * w <= 1.5 + 1e-9 || run.stitches == Stitches(2));
    }
    EXPECT_LE(bindOffs, 4);
  }
}

struct Cheapest {
  double cost = 1e300, deviation = 1e300;
};

Cheapest cheapestOfAll(const ArmholeRequest& request, int times) {
  const ShapingPrices prices = ShapingPrices::at(request.style.fidelity);
  const double w = request.size.width;
  const checks::Intervals curve =
      checks::intervals(request.curve.segments(), request.rows.value() / 2, request.size.height);
  Cheapest best;
  const auto use = [&](const std::vector<scye::Run>& runs) {
    const Schedule s{.underarm = request.underarm, .runs = runs, .rows = request.rows};
    const double off =
        checks::deviation(checks::rightInward(s), curve, request.curve.start().x(), w);
    const double cost = prices.line * double(runs.size()) + prices.near(off);
    if (cost < best.cost) best = {cost, off};
  };
  checks::Enumeration{.widest = std::max(2, int(1.5 * times / w + 1e-9)),
                      .maxSteps = 4 * times,
                      .taken = request.taken.value(),
                      .rows = request.rows.value() - 1,
                      .use = use}
      .run();
  return best;
}

TEST(ArmholeShaping, optimumIsTheEnumerators) {
  std::mt19937 rng(32);
  int beyond = 0;
  for (int i = 0; i < 150; ++i) {
    ArmholeRequest request =
        randomArmhole(rng, std::uniform_real_distribution<double>(12, 30)(rng));
    request.style.fidelity = std::uniform_real_distribution<double>(0, 1)(rng);
    Cheapest best = cheapestOfAll(request, 1);
    if (best.deviation > 1.5) {
      ++beyond;
      best.cost = std::min(best.cost, cheapestOfAll(request, 2).cost);
    }
    EXPECT_NEAR(shapeArmhole(request).cost, best.cost, 1e-6) << "case " << i;
  }
  EXPECT_GT(beyond, 5);
  EXPECT_LT(beyond, 100);
}

TEST(ArmholeShaping, tooFewRowsAreSaid) {
  ArmholeRequest request = armholeOf({5, 0.4, 18, 0.55}, {0.25, 0.2}, 4);
  request.rows = Rows(4);
  EXPECT_EQ(shapeArmhole(request).status, ShapingStatus::TooFewRows);
}

TEST(ArmholeShaping, nothingToTakeAwayIsAStraightEdge) {
  ArmholeRequest request = armholeOf({0, 0.4, 18, 0.55}, {0.5, 0.36}, 4);
  const ArmholeShaping out = shapeArmhole(request);
  EXPECT_EQ(out.status, ShapingStatus::Fitted);
  EXPECT_TRUE(out.schedule.runs.empty());
  EXPECT_NEAR(out.right, 4 * 0.5 + request.rows.value() * 0.36, 1e-12);
}

TEST(ArmholeShaping, slopesOutAgainToTheTip) {
  ArmholeRequest request{
      .curve = Path(Vec2(22, 0)), .size = {10.0 / 22, 10.0 / 30}, .underarm = Stitches(5)};
  request.curve.cubicTo({20, 0}, {16.5, 3}, {16.5, 7}).lineTo({16.5, 9}).lineTo({18.3, 18});
  request.taken = Stitches(12), request.grown = Stitches(4), request.rows = Rows(54);
  const ArmholeShaping out = shapeArmhole(request);
  ASSERT_NE(out.status, ShapingStatus::TooFewRows);
  EXPECT_EQ(out.schedule.taken(), Stitches(8));
  int last = -100, grown = 0;
  for (const EdgeEvent& e : knittedEdge(out.schedule, EdgeSide::Right, 1).events) {
    if (e.change.value() > 0) continue;
    EXPECT_EQ(e.row % 2, 1); // right-side rows
    EXPECT_GE(e.row - last, 4);
    last = e.row, ++grown;
  }
  EXPECT_EQ(grown, 4);
  EXPECT_LE(out.deviation, 1.5);
}

TEST(NeckShaping, roundNeckFollowsItsCurveFromTheCentre) {
  NeckRequest request{.curve = Path(Vec2(3, 0)), .size = {10.0 / 22, 10.0 / 30}};
  request.curve.cubicTo({5, 0}, {7, 2}, {7, 5}).lineTo({7, 8});
  request.taken = Stitches(9), request.rows = Rows(24);
  const ArmholeShaping out = shapeNeck(request);
  ASSERT_NE(out.status, ShapingStatus::TooFewRows);
  EXPECT_LE(out.deviation, 2); // a flat beginning outruns bind-offs of 1.5 cm
  EXPECT_EQ(out.schedule.taken(), request.taken);
  double before = 1e9;
  for (const scye::Run& run : out.schedule.runs) {
    EXPECT_LT(checks::rate(run), before);
    before = checks::rate(run);
  }
  // The right section binds off on the wrong-side rows before, and both end with the same stitches.
  const KnittedEdge left = neckEdge(out.schedule, EdgeSide::Left, 101);
  const KnittedEdge right = neckEdge(out.schedule, EdgeSide::Right, 101);
  ASSERT_EQ(left.events.size(), right.events.size());
  for (std::size_t i = 0; i < left.events.size(); ++i) {
    EXPECT_EQ(left.events[i].change, right.events[i].change);
    EXPECT_EQ(left.events[i].row % 2, 1);
    const bool bindOff = left.events[i].kind == EventKind::BindOff;
    EXPECT_EQ(right.events[i].row, left.events[i].row - (bindOff ? 1 : 0));
  }
}

} // namespace
} // namespace scye
