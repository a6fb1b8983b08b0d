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
  Path curve(Vec2(foot, 0));
  const double top = half.rise * half.depth;
  curve.cubicTo({foot - half.scoop * half.span, 0}, {17, top * (1 - half.scoop)}, {17, top})
      .lineTo({17, half.depth});
  ArmholeRequest request{.curves = {curve}, .size = size, .underarm = Stitches(underarm)};
  request.taken = Stitches(int(std::lround(half.span / size.width)));
  request.rows = Rows(2 * int(std::lround(half.depth / size.height / 2)));
  return request;
}

ArmholeRequest randomArmhole(std::mt19937& rng, double stitchesIn10) {
  std::uniform_real_distribution<double> unit(0, 1);
  const Half half{1.5 + 2.5 * unit(rng), 0.35 + 0.3 * unit(rng), 16 + 6 * unit(rng),
                  0.4 + 0.3 * unit(rng)};
  return armholeOf(half, {10 / stitchesIn10, 10 / (1.37 * stitchesIn10)}, 4);
}

ArmholeShaping cheapest(const ArmholeRequest& request) {
  return shapeArmholes(request, 1).front();
}

// What is printed (common practice): at most one stepped bind-off, then 1 on every right-side row,
// then on every 4th.
bool isPlain(const Schedule& s, bool muchTaken) {
  int bindOffs = 0, last = 0;
  for (const scye::Run& run : s.runs) {
    if (run.kind == ShapingKind::BindOff) {
      if (last > 0) return false;
      bindOffs += run.times;
      continue;
    }
    if (run.every.value() <= last || run.every > Rows(4)) return false;
    last = run.every.value();
  }
  return bindOffs <= (muchTaken ? 2 : 1);
}

double slowDeviation(const ArmholeRequest& request, const Schedule& s) {
  return checks::rightDeviation(s, request.curves.front().segments(), request.size.width,
                                request.size.height);
}

TEST(ArmholeShaping, isPlainAndMeasuredRight) {
  std::mt19937 rng(31);
  int near = 0, plain = 0;
  for (int i = 0; i < 400; ++i) {
    const double gauge = std::uniform_real_distribution<double>(12, 40)(rng);
    const ArmholeRequest request = randomArmhole(rng, gauge);
    const std::vector<ArmholeShaping> all = shapeArmholes(request, 6);
    for (std::size_t n = 1; n < all.size(); ++n)
      EXPECT_LE(all[n - 1].cost, all[n].cost);
    const ArmholeShaping& out = all.front();
    ASSERT_NE(out.status, ShapingStatus::TooFewRows);
    const double w = request.size.width, h = request.size.height;
    EXPECT_EQ(out.schedule.taken(), request.taken);
    EXPECT_NEAR(out.right.mean(), checks::rightLengths(out.schedule, w, h).mean(), 1e-9);
    EXPECT_NEAR(out.left.mean(), checks::leftLengths(out.schedule, w, h).mean(), 1e-9);
    EXPECT_NEAR(out.deviation, slowDeviation(request, out.schedule), 1e-6);
    EXPECT_EQ(out.schedule.runs.front().every, Rows(2)); // the second row after the underarm
    for (std::size_t r = 1; r < out.schedule.runs.size(); ++r)
      EXPECT_LT(checks::rate(out.schedule.runs[r]), checks::rate(out.schedule.runs[r - 1]));
    near += out.deviation <= 1, plain += isPlain(out.schedule, false);
  }
  EXPECT_GE(near, 330); // of any armhole; of bodies see tests/reference/shaping_survey.cpp
  EXPECT_GE(plain, 396);
}

// "Bind off, then 1 on every right-side row": nothing else where that does.
TEST(ArmholeShaping, thePrintedWayIsTakenWhereItDoes) {
  std::mt19937 rng(33);
  int printed = 0;
  for (int i = 0; i < 400; ++i) {
    const ArmholeRequest request =
        randomArmhole(rng, std::uniform_real_distribution<double>(12, 40)(rng));
    const Schedule simple{
        .underarm = request.underarm,
        .runs = {{ShapingKind::Decrease, Stitches(1), Rows(2), request.taken.value()}},
        .rows = request.rows};
    if (slowDeviation(request, simple) > 1 - 1e-6) continue;
    ++printed;
    EXPECT_EQ(cheapest(request).schedule, simple);
    EXPECT_EQ(shapeArmholes(request, 6).size(), 1u);
  }
  EXPECT_GT(printed, 40);
}

// Every plain armhole there is, with its price worked out anew.
TEST(ArmholeShaping, optimumIsTheEnumerators) {
  std::mt19937 rng(32);
  for (int i = 0; i < 150; ++i) {
    ArmholeRequest request =
        randomArmhole(rng, std::uniform_real_distribution<double>(12, 30)(rng));
    request.style.fidelity = std::uniform_real_distribution<double>(0, 1)(rng);
    const ShapingPrices prices = ShapingPrices::at(request.style.fidelity);
    const double w = request.size.width;
    // Stitches within 1.5 cm; three within 1.9, and two always.
    const int plain = std::max({2, int(1.5 / w + 1e-9), 1.9 / w >= 3 - 1e-9 ? 3 : 2});
    double best = 1e300;
    const auto use = [&](const std::vector<scye::Run>& runs) {
      const Schedule s{.underarm = request.underarm, .runs = runs, .rows = request.rows};
      if (!isPlain(s, false)) return;
      const double off = slowDeviation(request, s);
      double cost = prices.line * (double(runs.size()) - 1) + prices.off * off +
                    (off > 1 ? 34 + 8 * (off - 1) : 0) + (off > 1.5 ? 2000 : 0);
      for (const scye::Run& run : runs) {
        if (run.kind == ShapingKind::Decrease && run.times == 1) cost += 0.5;
        const int k = run.stitches.value();
        if (k > 2 && k * w > 1.5 + 1e-9) cost += 8;
        cost += 11 * w * std::max(0, k - plain);
      }
      if (runs.size() == 1 && runs.front().kind == ShapingKind::Decrease)
        cost = off <= 1 ? -1e9 : cost - 1; // then there is no other
      best = std::min(best, cost);
    };
    checks::Enumeration{.widest = std::max(2, int(1.9 / w + 1e-9)),
                        .sparsest = 4,
                        .maxSteps = 1,
                        .taken = request.taken.value(),
                        .rows = request.rows.value() - 1,
                        .use = use}
        .run();
    const ArmholeShaping out = cheapest(request);
    if (best < -1e8) {
      EXPECT_TRUE(out.printedWay) << "case " << i;
    } else if (!out.beyondStyle) {
      EXPECT_NEAR(out.cost, best, 1e-6) << "case " << i;
    }
  }
}

TEST(ArmholeShaping, oneScheduleIsHeldToBothCurves) {
  ArmholeRequest request = armholeOf({3, 0.4, 18, 0.55}, {10.0 / 22, 10.0 / 30}, 5);
  request.curves.push_back(armholeOf({3.3, 0.5, 18, 0.5}, request.size, 5).curves.front());
  const ArmholeShaping out = cheapest(request);
  double worst = 0;
  for (const Path& curve : request.curves)
    worst = std::max(worst, checks::rightDeviation(out.schedule, curve.segments(),
                                                   request.size.width, request.size.height));
  EXPECT_NEAR(out.deviation, worst, 1e-6);
}

TEST(ArmholeShaping, tooFewRowsAreSaid) {
  ArmholeRequest request = armholeOf({5, 0.4, 18, 0.55}, {0.25, 0.2}, 4);
  request.rows = Rows(4);
  EXPECT_EQ(cheapest(request).status, ShapingStatus::TooFewRows);
}

TEST(ArmholeShaping, nothingToTakeAwayIsAStraightEdge) {
  ArmholeRequest request = armholeOf({0, 0.4, 18, 0.55}, {0.5, 0.36}, 4);
  const ArmholeShaping out = cheapest(request);
  EXPECT_EQ(out.status, ShapingStatus::Fitted);
  EXPECT_TRUE(out.schedule.runs.empty());
  EXPECT_NEAR(out.right.mean(), 4 * 0.5 + request.rows.value() * 0.36, 1e-12);
}

TEST(ArmholeShaping, slopesOutAgainToTheTip) {
  Path curve(Vec2(22, 0));
  curve.cubicTo({20, 0}, {16.5, 3}, {16.5, 7}).lineTo({16.5, 9}).lineTo({18.3, 18});
  ArmholeRequest request{
      .curves = {curve}, .size = {10.0 / 22, 10.0 / 30}, .underarm = Stitches(5)};
  request.taken = Stitches(12), request.grown = Stitches(4), request.rows = Rows(54);
  const ArmholeShaping out = cheapest(request);
  ASSERT_NE(out.status, ShapingStatus::TooFewRows);
  EXPECT_EQ(out.schedule.taken(), Stitches(8));
  Rows last{-100};
  int grown = 0;
  for (const EdgeEvent& e : knittedEdge(out.schedule, EdgeSide::Right, Rows(1)).events) {
    if (e.change.value() > 0) continue;
    EXPECT_EQ(e.row % 2, 1); // right-side rows
    EXPECT_GE(e.row - last, Rows(4));
    last = e.row, ++grown;
  }
  EXPECT_EQ(grown, 4);
  EXPECT_EQ(out.schedule.runs.back().kind, ShapingKind::Increase); // in one line
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
  const KnittedEdge left = neckEdge(out.schedule, EdgeSide::Left, Rows(101));
  const KnittedEdge right = neckEdge(out.schedule, EdgeSide::Right, Rows(101));
  ASSERT_EQ(left.events.size(), right.events.size());
  for (std::size_t i = 0; i < left.events.size(); ++i) {
    EXPECT_EQ(left.events[i].change, right.events[i].change);
    EXPECT_EQ(left.events[i].row % 2, 1);
    const bool bindOff = left.events[i].kind == EventKind::BindOff;
    EXPECT_EQ(right.events[i].row, left.events[i].row - Rows(bindOff ? 1 : 0));
  }
}

} // namespace
} // namespace scye
