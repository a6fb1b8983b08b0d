#include "core/shaping/oracle.h"
#include "shaping/cap_shaping.h"
#include "shaping/cost.h"

#include <gtest/gtest.h>

#include <array>
#include <random>

namespace scye {
namespace {

// A cap that some knitter might want: its target is that of a drafted height.
CapRequest randomCapRequest(std::mt19937& rng, double stitchesIn10) {
  std::uniform_real_distribution<double> unit(0, 1);
  CapRequest request{.size = {10 / stitchesIn10, 10 / (1.37 * stitchesIn10)}};
  const double w = request.size.width, upperArm = 30 + 12 * unit(rng);
  request.width = Stitches(int(std::lround(upperArm / w)) + 2);
  request.underarm = Stitches(std::max(1, int(std::lround((2 + unit(rng)) / w))));
  request.crown = 0.2 * upperArm;
  const CapShape shape{.halfWidth = upperArm / 2,
                       .underarm = request.underarm.value() * w,
                       .crownHalf = request.crown / 2};
  request.target = 2 * capEdge(shape, 11 + 3 * unit(rng)).first;
  return request;
}

std::vector<Cubic> reference(const CapShaping& cap) {
  return {capCurve(cap.reference, cap.referenceHeight)};
}

TEST(CapShaping, figuresAreThoseOfTheRowTable) {
  std::mt19937 rng(41);
  int fitted = 0;
  for (int i = 0; i < 200; ++i) {
    const CapRequest request =
        randomCapRequest(rng, std::uniform_real_distribution<double>(12, 32)(rng));
    const CapShaping cap = shapeCap(request);
    ASSERT_TRUE(cap.knittable());
    const double w = request.size.width, h = request.size.height;
    const double top = 0.5 * (cap.schedule.crown.value() - 2);
    EXPECT_EQ(2 * (cap.schedule.taken() + request.underarm) + cap.schedule.crown, request.width);
    EXPECT_NEAR(cap.right, checks::rightLength(cap.schedule, w, h, top), 1e-9);
    EXPECT_NEAR(cap.left, checks::leftLength(cap.schedule, w, h, top), 1e-9);
    EXPECT_NEAR(cap.mismatch, cap.right + cap.left - request.target, 1e-9);
    EXPECT_NEAR(cap.deviation, checks::rightDeviation(cap.schedule, reference(cap), w, h), 1e-6);
    EXPECT_NEAR(2 * capEdge(cap.reference, cap.referenceHeight).first, request.target, 1e-9);
    if (cap.status != CapStatus::Fitted) continue;
    ++fitted;
    EXPECT_LE(std::abs(cap.mismatch), 0.2);
    EXPECT_LE(cap.deviation, 1 + 1e-9);
    EXPECT_LE(cap.schedule.lines(), 10 / w <= 24 ? 6 : 8);
  }
  EXPECT_GE(fitted, 120); // low and wide caps among them are not
}

TEST(CapShaping, goesFromSteepToSparseToSteep) {
  std::mt19937 rng(42);
  for (int i = 0; i < 200; ++i) {
    const CapRequest request =
        randomCapRequest(rng, std::uniform_real_distribution<double>(12, 32)(rng));
    const CapShaping cap = shapeCap(request);
    const std::vector<scye::Run>& runs = cap.schedule.runs;
    ASSERT_FALSE(runs.empty());
    EXPECT_EQ(runs.front().every, Rows(2));
    bool rising = false;
    for (std::size_t r = 1; r < runs.size(); ++r) {
      ASSERT_NE(checks::rate(runs[r]), checks::rate(runs[r - 1]));
      if (rising) {
        EXPECT_GT(checks::rate(runs[r]), checks::rate(runs[r - 1]));
      }
      rising = checks::rate(runs[r]) > checks::rate(runs[r - 1]);
    }
    for (const scye::Run& run : runs) {
      if (run.kind != ShapingKind::BindOff) {
        EXPECT_EQ(run.every.value() % 2, 0); // right-side rows only
        continue;
      }
      if (cap.beyondStyle) continue;
      EXPECT_LE(run.times, 4);
      EXPECT_TRUE(run.stitches.value() * request.size.width <= 1.5 + 1e-9 ||
                  run.stitches == Stitches(2));
    }
  }
}

// The more a schedule may leave the curve, the fewer lines it may have: {stitches, lines}.
using Tiers = std::vector<std::pair<double, int>>;
const Tiers kUsual{{1.25, 99}, {1.5, 6}}, kBeyondStyle{{1.5, 6}, {6, 4}};

// What a cap costs by the prices, from its row table.
double priceOf(const Schedule& s, const CapRequest& request, const CapShape& shape,
               const checks::Intervals& curve, double foot, const std::vector<int>& armhole,
               int limit, const Tiers& tiers) {
  const double w = request.size.width, h = request.size.height;
  const int lines = s.lines();
  const double off = checks::deviation(checks::rightInward(s), curve, foot, w);
  const auto allows = [&](const auto& tier) { return off <= tier.first && lines <= tier.second; };
  if (lines > limit || std::none_of(tiers.begin(), tiers.end(), allows)) return 1e300;
  const double top = 0.5 * (s.crown.value() - 2 * request.selvedge.value());
  const double length = checks::rightLength(s, w, h, top) + checks::leftLength(s, w, h, top);
  std::vector<int> bindOffs;
  for (const scye::Run& run : s.runs) {
    if (run.kind != ShapingKind::BindOff) break;
    bindOffs.insert(bindOffs.end(), run.times, run.stitches.value());
  }
  // Where the steps only grow at once, the first group of bind-offs ends where they grow.
  for (std::size_t i = 1; i < bindOffs.size(); ++i)
    if (bindOffs[i] > bindOffs[i - 1]) bindOffs.resize(i);
  const ShapingPrices prices = ShapingPrices::at(request.style.fidelity);
  return prices.line * lines + prices.near(off) + ShapingPrices::missed(length - request.target) +
         ShapingPrices::crownOff(2 * shape.crownHalf - request.crown) +
         (s.rows.value() % 2 ? ShapingPrices::kWrongSideCrown : 0) +
         (!armhole.empty() && bindOffs != armhole ? ShapingPrices::kUnlikeArmhole : 0);
}

double cheapest(const CapRequest& request, int times, const Tiers& tiers,
                const std::vector<int>& armhole, int limit) {
  const int widest = std::max(2, int(times * request.style.maxStep / request.size.width + 1e-9));
  const double w = request.size.width, h = request.size.height;
  double best = 1e300;
  for (int crown = 4; crown < request.width.value(); ++crown) {
    const int spread = request.width.value() - crown - 2 * request.underarm.value();
    const double off = std::abs((crown - 2) * w - request.crown);
    if (spread < 2 || spread % 2 || off > std::max(5.0, 2 * w)) continue;
    const CapShape shape{.halfWidth = 0.5 * (request.width.value() - 2) * w,
                         .underarm = request.underarm.value() * w,
                         .crownHalf = 0.5 * (crown - 2) * w};
    const RootSummary height = solveCapHeight(std::array{shape, shape}, request.target);
    const int middle = int(std::lround(height.x / h));
    const checks::Intervals curve =
        checks::intervals({capCurve(shape, height.x)}, (middle + 8) / 2, h);
    const auto use = [&](const std::vector<scye::Run>& runs) {
      Schedule s{.underarm = request.underarm, .runs = runs, .crown = Stitches(crown)};
      const bool bindOff = runs.back().kind == ShapingKind::BindOff;
      for (int gap = bindOff ? 2 : 1; gap <= 3; ++gap) {
        s.rows = s.shapedRows() + Rows(gap);
        if (std::abs(s.rows.value() - middle) > 6) continue;
        best = std::min(best, priceOf(s, request, shape, curve, shape.halfWidth - shape.underarm,
                                      armhole, limit, tiers));
      }
    };
    checks::Enumeration{.widest = widest,
                        .maxSteps = times * request.style.maxSteps,
                        .taken = spread / 2,
                        .rows = middle + 5,
                        .mayRise = true,
                        .use = use}
        .run();
  }
  return best;
}

TEST(CapShaping, optimumIsTheEnumerators) {
  std::mt19937 rng(43);
  int usual = 0;
  for (int i = 0; i < 60; ++i) {
    CapRequest request =
        randomCapRequest(rng, std::uniform_real_distribution<double>(6.5, 9.5)(rng));
    request.style.fidelity = i % 3 == 0 ? 0.5 : std::uniform_real_distribution<double>(0, 1)(rng);
    request.lineLimit = i % 2 ? 4 : 6;
    if (i % 4 == 0) request.style.maxStep = 5;
    std::vector<int> armhole;
    if (i % 5 == 0)
      armhole = {2}, request.armhole = {{ShapingKind::BindOff, Stitches(2), Rows(2), 1}};
    const CapShaping cap = shapeCap(request);
    double best = cheapest(request, 1, kUsual, armhole, request.lineLimit);
    EXPECT_EQ(cap.beyondStyle, best >= ShapingPrices::kOverTwoMm);
    for (const int times : {2, 4})
      if (best >= ShapingPrices::kOverTwoMm)
        best = std::min(best, cheapest(request, times, kBeyondStyle, armhole, request.lineLimit));
    EXPECT_NEAR(cap.cost, best, 1e-6) << "case " << i;
    usual += !cap.beyondStyle;
  }
  EXPECT_GE(usual, 30);
  EXPECT_LT(usual, 60); // both searches have been looked into
}

TEST(CapShaping, tooWideASleeveIsSaid) {
  CapRequest request{.size = {0.45, 0.33}, .width = Stitches(90), .underarm = Stitches(6)};
  request.target = 38;
  EXPECT_EQ(shapeCap(request).status, CapStatus::SleeveTooWide);
}

TEST(CapShaping, nothingToShapeIsSaid) {
  CapRequest request{
      .size = {0.45, 0.33}, .width = Stitches(14), .underarm = Stitches(6), .target = 30};
  EXPECT_EQ(shapeCap(request).status, CapStatus::NoStitches);
  EXPECT_EQ(shapeCap({}).status, CapStatus::NoStitches);
}

TEST(CapShaping, nonsenseIsRefusedNotFollowed) {
  std::mt19937 rng(47);
  const CapRequest good = randomCapRequest(rng, 22);
  const double nan = std::nan(""), inf = HUGE_VAL;
  for (const double target : {nan, inf, -inf, -5.0, 0.0, 1e9}) {
    CapRequest request = good;
    request.target = target;
    EXPECT_FALSE(shapeCap(request).knittable()) << target;
    HalvesRequest halves{.cap = good, .rightTarget = target, .leftTarget = target};
    EXPECT_FALSE(shapeCapHalves(halves).knittable()) << target;
  }
  for (const int rows : {-8, 0, 1, 2, 100000}) {
    CapRequest request = good;
    request.rows = Rows(rows);
    EXPECT_FALSE(shapeCap(request).knittable()) << rows;
  }
  CapRequest request = good;
  request.crown = nan;
  EXPECT_FALSE(shapeCap(request).knittable());
  request = good, request.crownStitches = good.width;
  EXPECT_FALSE(shapeCap(request).knittable());
  request = good, request.size.width = 0;
  EXPECT_FALSE(shapeCap(request).knittable());
}

TEST(CapShaping, fixedRowsAndCrownAreKept) {
  std::mt19937 rng(44);
  const CapRequest free = randomCapRequest(rng, 22);
  const CapShaping first = shapeCap(free);
  ASSERT_TRUE(first.knittable());
  CapRequest fixed = free;
  fixed.rows = first.schedule.rows + Rows(2);
  fixed.crownStitches = first.schedule.crown + Stitches(2);
  const CapShaping second = shapeCap(fixed);
  ASSERT_TRUE(second.knittable());
  EXPECT_EQ(second.schedule.rows, *fixed.rows);
  EXPECT_EQ(second.schedule.crown, *fixed.crownStitches);
}

// Both are cheapest at their own prices; added, what one saves in lines it pays in nearness.
TEST(CapShaping, controlTradesLinesForNearness) {
  const ShapingPrices few = ShapingPrices::at(0), faithful = ShapingPrices::at(1);
  std::mt19937 rng(45);
  for (int i = 0; i < 30; ++i) {
    CapRequest request = randomCapRequest(rng, 22);
    request.lineLimit = 6;
    request.style.fidelity = 0;
    const CapShaping simple = shapeCap(request);
    request.style.fidelity = 1;
    const CapShaping near = shapeCap(request);
    const double saved =
        (few.line - faithful.line) * (near.schedule.lines() - simple.schedule.lines());
    const double strayed =
        (faithful.deviation - few.deviation) * (simple.deviation - near.deviation);
    EXPECT_GE(saved + strayed, -1e-9);
  }
}

TEST(CapHalves, eachHalfFitsItsOwnSide) {
  std::mt19937 rng(46);
  for (int i = 0; i < 30; ++i) {
    HalvesRequest request{.cap = randomCapRequest(rng, 22)};
    request.leftUnderarm = request.cap.underarm;
    request.lean = 0.8;
    const double half = request.cap.target / 2;
    request.rightTarget = half + 0.35, request.leftTarget = half - 0.35;
    const HalvesShaping out = shapeCapHalves(request);
    ASSERT_TRUE(out.knittable());
    const Schedule &r = out.right.schedule, &l = out.left.schedule;
    EXPECT_EQ(r.rows, l.rows);
    EXPECT_EQ(r.crown, l.crown);
    EXPECT_EQ(r.taken() + l.taken() + 2 * request.cap.underarm + r.crown, request.cap.width);
    const double top = 0.5 * (r.crown.value() - 2), w = request.cap.size.width,
                 h = request.cap.size.height;
    EXPECT_NEAR(checks::rightLength(r, w, h, top), request.rightTarget, 0.2);
    EXPECT_NEAR(checks::leftLength(l, w, h, top), request.leftTarget, 0.2);
    EXPECT_NEAR(out.right.mismatch, checks::rightLength(r, w, h, top) - request.rightTarget, 1e-9);
    EXPECT_NEAR(out.left.mismatch, checks::leftLength(l, w, h, top) - request.leftTarget, 1e-9);
    EXPECT_GT(r.taken(), l.taken());
  }
}

} // namespace
} // namespace scye
