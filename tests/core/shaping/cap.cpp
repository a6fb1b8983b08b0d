#include "core/shaping/oracle.h"
#include "shaping/cap_shaping.h"
#include "shaping/cost.h"
#include "shaping/scye_shaping.h"

#include <gtest/gtest.h>

#include <random>

namespace scye {
namespace {

EdgeLength each(double cm) {
  return {cm, cm, cm};
}

CapRequest capOf(double stitchesIn10, double width, double armhole) {
  CapRequest r{.size = {10 / stitchesIn10, 10 / (1.37 * stitchesIn10)}};
  const int nearest = int(std::lround(width / r.size.width)) + 2;
  r.widths = {Stitches(nearest), Stitches(nearest + 1)};
  r.front.underarm = r.back.underarm = Stitches(int(std::lround(2.3 / r.size.width)));
  r.crown = 0.2 * width;
  r.armholes = {each(armhole), each(armhole)};
  r.ease = 1;
  return r;
}

CapRequest randomCap(std::mt19937& rng, double low, double high) {
  const auto in = [&](double a, double b) {
    return std::uniform_real_distribution<double>(a, b)(rng);
  };
  const double width = in(28, 40);
  CapRequest r = capOf(in(low, high), width, width * in(1.4, 1.6));
  const double apart = in(0, 0.15); // of the armhole's measures
  for (EdgeLength& a : r.armholes)
    a.chord -= apart, a.corner += apart, a.middle -= 0.25; // as armholes are
  return r;
}

// The price of a cap, from the row table and the drafted curve alone.
double slowCost(const CapRequest& r, const CapShaping& cap) {
  const ShapingPrices prices = ShapingPrices::at(r.style.fidelity);
  const double w = r.size.width, h = r.size.height;
  const Schedule& s = cap.front;
  const double top = 0.5 * (s.crown.value() - 2);
  const checks::Lengths right = checks::rightLengths(s, w, h, top),
                        left = checks::leftLengths(s, w, h, top);
  const double chord = right.chord + left.chord, corner = right.corner + left.corner,
               middle = right.middle + left.middle;
  double seam = 0, spread = 0;
  for (const EdgeLength& a : r.armholes) {
    const std::array over{chord - a.chord, corner - a.corner, middle - a.middle};
    seam = std::max(seam, 10 * std::abs((over[0] + over[1] + over[2]) / 3 - r.ease));
    const auto [least, most] = std::minmax_element(over.begin(), over.end());
    spread = std::max(spread, 10 * (*most - *least));
  }
  const double off =
      checks::rightDeviation(s, {capCurve(cap.referenceFront, cap.referenceHeight)}, w, h);
  const double crown = std::abs(2 * top - r.crown / w);
  const double rows = s.rows.value() - cap.referenceHeight / h;
  double cost = prices.line * s.lines() + prices.capOff(off) + ShapingPrices::kCrown(crown) +
                ShapingPrices::height(rows, rows) + ShapingPrices::kSeam(seam) +
                ShapingPrices::spread(r.size)(spread);
  cost += ShapingPrices::kFurtherLine * std::max(0.0, s.lines() - ShapingPrices::capLines(r.size));
  if (s.rows.value() % 2) cost += ShapingPrices::kWrongSideCrown;
  if (cap.width != r.widths.front()) cost += ShapingPrices::kOtherWidth;
  for (const scye::Run& run : s.runs) {
    cost += ShapingPrices::single(run);
    cost += prices.told(run, r.style, r.size) - prices.line;
  }
  return cost;
}

TEST(CapShaping, figuresAreThoseOfTheRowTable) {
  std::mt19937 rng(41);
  int fitted = 0;
  for (int i = 0; i < 300; ++i) {
    const CapRequest r = randomCap(rng, 10, 40);
    const CapShaping cap = shapeCap(r);
    ASSERT_TRUE(cap.knittable()) << i;
    const double w = r.size.width, h = r.size.height;
    EXPECT_EQ(cap.front, cap.back);
    EXPECT_EQ(cap.width.value(),
              2 * (cap.front.underarm + cap.front.taken()).value() + cap.front.crown.value());
    const double top = 0.5 * (cap.front.crown.value() - 2);
    EXPECT_NEAR(cap.frontRight.mean(), checks::rightLengths(cap.front, w, h, top).mean(), 1e-9);
    EXPECT_NEAR(cap.frontLeft.mean(), checks::leftLengths(cap.front, w, h, top).mean(), 1e-9);
    EXPECT_NEAR(cap.seam,
                cap.frontRight.mean() + cap.frontLeft.mean() - r.armholes[0].mean() - r.ease, 1e-9);
    // The curve is that of the wanted crown, whatever crown came out.
    EXPECT_NEAR(2 * cap.referenceFront.crownHalf, r.crown, 1e-12);
    EXPECT_NEAR(2 * capEdge(cap.referenceFront, cap.referenceHeight).first,
                r.armholes[0].mean() + r.ease, 1e-6);
    EXPECT_NEAR(cap.deviation,
                checks::rightDeviation(cap.front,
                                       {capCurve(cap.referenceFront, cap.referenceHeight)}, w, h),
                1e-6);
    EXPECT_NEAR(cap.cost, slowCost(r, cap), 1e-6) << i;
    fitted += std::abs(cap.seam) <= 0.2 && cap.deviation <= 1;
  }
  // With no other armhole to try; of garments see tests/reference/shaping_survey.cpp.
  EXPECT_GE(fitted, 245);
}

TEST(CapShaping, goesFromSteepToSparseToSteep) {
  std::mt19937 rng(42);
  for (int i = 0; i < 300; ++i) {
    const CapRequest r = randomCap(rng, 10, 40);
    const CapShaping cap = shapeCap(r);
    ASSERT_TRUE(cap.knittable());
    const std::vector<scye::Run>& runs = cap.front.runs;
    EXPECT_EQ(runs.front().every, Rows(2));
    bool rising = false;
    for (std::size_t n = 1; n < runs.size(); ++n) {
      const double before = checks::rate(runs[n - 1]), now = checks::rate(runs[n]);
      EXPECT_NE(before, now);
      if (now > before) rising = true;
      EXPECT_FALSE(rising && now < before) << i;
    }
    const int rest = cap.front.rows.value() - cap.front.shapedRows().value();
    EXPECT_GE(rest, 1);
    EXPECT_LE(rest, 3);
  }
}

// Every acceptable cap of the sets that are searched, priced anew: none is cheaper.
TEST(CapShaping, optimumIsTheEnumerators) {
  std::mt19937 rng(43);
  int compared = 0;
  for (int i = 0; i < 25; ++i) {
    CapRequest r = randomCap(rng, 10, 13);
    r.widths.pop_back();
    const CapShaping cap = shapeCap(r);
    if (!cap.knittable() || cap.beyondStyle || std::abs(cap.deviation) > 1.5) continue;
    ++compared;
    double best = 1e300;
    const double height = cap.referenceHeight / r.size.height, crown = r.crown / r.size.width + 2;
    for (int k = int(std::ceil(crown - 1)); k <= crown + 1; ++k) {
      const int taken = cap.width.value() - 2 * r.front.underarm.value() - k;
      if (taken % 2) continue;
      const auto use = [&](const std::vector<scye::Run>& runs) {
        CapShaping other = cap;
        other.front = {r.front.underarm, runs, Rows(0), Stitches(k)};
        const int last = other.front.shapedRows().value();
        for (int rows = std::max(last + 1, int(std::ceil(height - 2)));
             rows <= std::min(double(last + 3), height + 2); ++rows) {
          if (rows == last + 1 && runs.back().kind == ShapingKind::BindOff) continue;
          other.front.rows = Rows(rows);
          best = std::min(best, slowCost(r, other));
        }
      };
      checks::Enumeration{.widest = 2,
                          .sparsest = 6,
                          .maxSteps = 4,
                          .taken = taken / 2,
                          .rows = int(height + 2) - 1,
                          .mayRise = true,
                          .use = use}
          .run();
    }
    EXPECT_LE(cap.cost, best + 1e-6) << i;
  }
  EXPECT_GT(compared, 15);
}

TEST(CapShaping, tooWideASleeveIsSaid) {
  EXPECT_EQ(shapeCap(capOf(22, 46, 40)).status, CapStatus::SleeveTooWide);
}

TEST(CapShaping, nothingToShapeIsSaid) {
  CapRequest r = capOf(22, 30, 40);
  r.crown = 60;
  EXPECT_EQ(shapeCap(r).status, CapStatus::NoStitches);
}

TEST(CapShaping, nonsenseIsRefusedNotFollowed) {
  for (const double bad : {0.0, -1.0, std::nan("")}) {
    CapRequest r = capOf(22, 30, 40);
    r.size.width = bad;
    EXPECT_FALSE(shapeCap(r).knittable());
    r = capOf(22, 30, 40);
    r.size.height = bad;
    EXPECT_FALSE(shapeCap(r).knittable());
  }
  EXPECT_FALSE(shapeCap(capOf(22, 30, 1e9)).knittable());
  EXPECT_FALSE(shapeCap(capOf(22, 30, std::nan(""))).knittable());
}

TEST(CapShaping, controlTradesLinesForNearness) {
  std::mt19937 rng(44);
  int lines[2] = {}, n = 0;
  double off[2] = {};
  for (int i = 0; i < 60; ++i) {
    CapRequest r = randomCap(rng, 20, 32);
    for (const int near : {0, 1}) {
      r.style.fidelity = near;
      const CapShaping cap = shapeCap(r);
      lines[near] += cap.lines(), off[near] += cap.deviation;
    }
    ++n;
  }
  EXPECT_LT(lines[0], lines[1]);
  EXPECT_GT(off[0], off[1]);
}

// Work is counted, so a search that is cut short still ends the same on every machine.
TEST(CapShaping, littleWorkStillGivesACap) {
  std::mt19937 rng(45);
  for (int i = 0; i < 40; ++i) {
    CapRequest r = randomCap(rng, 20, 40);
    r.work = 300;
    const CapShaping cap = shapeCap(r);
    EXPECT_TRUE(cap.knittable()) << i;
    EXPECT_LT(cap.work, 2000);
    const CapShaping again = shapeCap(r);
    EXPECT_EQ(cap.front, again.front);
  }
}

TEST(CapHalves, endTogetherAndFitTheWhole) {
  std::mt19937 rng(46);
  int fits = 0;
  for (int i = 0; i < 60; ++i) {
    CapRequest r = randomCap(rng, 14, 36);
    r.back.lean = 0.6, r.front.lean = -0.6;
    r.back.share = 0.52, r.front.share = 0.48;
    const CapShaping cap = shapeCap(r);
    ASSERT_TRUE(cap.knittable());
    EXPECT_EQ(cap.front.rows, cap.back.rows);
    EXPECT_EQ(cap.front.crown, cap.back.crown);
    EXPECT_EQ(cap.width, cap.front.underarm + cap.front.taken() + cap.back.underarm +
                             cap.back.taken() + cap.front.crown);
    EXPECT_NEAR((cap.back.taken() - cap.front.taken()).value() * r.size.width, 1.2,
                1 * r.size.width + 1e-9);
    const double right = (cap.frontRight + cap.backLeft).mean(),
                 left = (cap.backRight + cap.frontLeft).mean();
    const double worst = std::max(std::abs(right - r.armholes[1].mean() - r.ease),
                                  std::abs(left - r.armholes[0].mean() - r.ease));
    EXPECT_NEAR(std::abs(cap.seam), worst, 1e-9);
    fits += worst <= 0.2;
  }
  EXPECT_GE(fits, 50);
}

} // namespace
} // namespace scye
