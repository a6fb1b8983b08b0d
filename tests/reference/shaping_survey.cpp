// The trial of issue "whole stitches": armhole and cap of every body of the survey, in whole
// stitches and rows, at seven gauges and four upper-arm eases. Figures are read off the row tables
// (by core/shaping/checks.h, which shares nothing with the search). By default every 20th
// body; all of them with SCYE_WHOLE_SURVEY=1 (five minutes).
#include "reference/shaping_survey.h"
#include "core/shaping/checks.h"
#include "shaping/armhole_shaping.h"
#include "shaping/cap_shaping.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>

namespace scye::survey {
namespace {

constexpr double kCapEase = 1; // cm

struct Gauge {
  int stitches, rows; // in 10 cm
};
constexpr Gauge kGauges[] = {{12, 17}, {16, 22}, {20, 28}, {22, 30}, {26, 36}, {32, 44}, {40, 56}};
constexpr double kEases[] = {0, 3, 6, 10};

struct Sample {
  std::vector<double> mismatch, deviation, lines, crown, time,
      armholeDeviation; // mm, st, 1, cm, us, st
  int slim = 0, tooWide = 0, tooLow = 0, unexplained = 0, beyond = 0;

  void add(const Sample& other) {
    const auto append = [](std::vector<double>& to, const std::vector<double>& from) {
      to.insert(to.end(), from.begin(), from.end());
    };
    append(mismatch, other.mismatch), append(deviation, other.deviation);
    append(lines, other.lines), append(crown, other.crown), append(time, other.time);
    append(armholeDeviation, other.armholeDeviation);
    slim += other.slim, tooWide += other.tooWide, tooLow += other.tooLow,
        unexplained += other.unexplained, beyond += other.beyond;
  }
};

double quantile(std::vector<double> of, double share) {
  if (of.empty()) return 0;
  const std::size_t at = std::min(of.size() - 1, std::size_t(share * double(of.size())));
  std::nth_element(of.begin(), of.begin() + long(at), of.end());
  return of[at];
}

double shareWithin(const std::vector<double>& of, double limit) {
  const auto inside =
      std::count_if(of.begin(), of.end(), [&](double v) { return v <= limit + 1e-6; });
  return of.empty() ? 1 : double(inside) / double(of.size());
}

double processorMicroseconds() {
  return 1e6 * double(std::clock()) / CLOCKS_PER_SEC;
}

// Caps by their height: within the trade's proportions, where the bars hold, or lower and higher.
struct Trial {
  Sample usual, unusual;
};

void tryBody(const Frame& body, const Gauge& gauge, Trial& trial) {
  const double w = 10.0 / gauge.stitches, h = 10.0 / gauge.rows;
  if (body.bust - body.cross < 1.5) {
    ++trial.unusual.slim;
    return;
  }
  const int underarm = std::max(1, int(std::lround(body.underarm / w)));
  ArmholeRequest half{.curve = body.armhole(), .size = {w, h}, .underarm = Stitches(underarm)};
  half.taken = Stitches(int(std::lround((body.bust - body.cross) / w)) - underarm);
  half.rows = Rows(2 * int(std::lround(body.depth / h / 2)));
  const ArmholeShaping armhole = shapeArmhole(half);
  ASSERT_NE(armhole.status, ShapingStatus::TooFewRows);

  CapRequest request{.size = {w, h}, .underarm = Stitches(underarm), .crown = body.crown};
  request.width = Stitches(int(std::lround(body.upperArm / w)) + 2);
  const double wanted =
      checks::rightLength(armhole.schedule, w, h) + checks::leftLength(armhole.schedule, w, h);
  request.target = wanted + kCapEase;
  request.armhole = armhole.schedule.runs;
  const double before = processorMicroseconds();
  const CapShaping cap = shapeCap(request);
  const double spent = processorMicroseconds() - before;
  if (!cap.knittable()) {
    // Only a sleeve whose flat edge is longer than the armhole's, or all but, has no cap.
    const bool tooWide = (request.width.value() - 2) * w >= request.target;
    const bool tooLow = !tooWide && cap.referenceHeight < 4 * h;
    if (tooWide && cap.status == CapStatus::SleeveTooWide)
      ++trial.unusual.tooWide;
    else if (tooLow && cap.status == CapStatus::NoSchedule)
      ++trial.unusual.tooLow;
    else
      ++trial.unusual.unexplained;
    return;
  }
  const double ratio = cap.referenceHeight / body.depth;
  Sample& sample = ratio >= 0.5 && ratio <= 0.85 ? trial.usual : trial.unusual;
  const double top = 0.5 * (cap.schedule.crown.value() - 2);
  const double length =
      checks::rightLength(cap.schedule, w, h, top) + checks::leftLength(cap.schedule, w, h, top);
  const Cubic reference = capCurve(cap.reference, cap.referenceHeight);
  sample.mismatch.push_back(10 * std::abs(length - wanted - kCapEase));
  sample.deviation.push_back(checks::rightDeviation(cap.schedule, {reference}, w, h));
  sample.beyond += cap.beyondStyle;
  sample.lines.push_back(cap.schedule.lines());
  sample.crown.push_back(std::abs((cap.schedule.crown.value() - 2) * w - body.crown));
  sample.time.push_back(spent);
  sample.armholeDeviation.push_back(
      checks::rightDeviation(armhole.schedule, half.curve.segments(), w, h));
}

void print(const char* what, const Sample& s) {
  if (s.mismatch.empty()) return;
  std::printf(
      "%-22s %6zu | %4.2f %4.2f %5.2f %5.1f%% %5.1f%% | %4.2f %4.2f %4.2f %5.1f%% | %g %g %g | "
      "%4.2f %4.2f %4d | %5.0f %6.0f | %4.2f %4.2f %5.1f%%\n",
      what, s.mismatch.size(), quantile(s.mismatch, 0.5), quantile(s.mismatch, 0.95),
      quantile(s.mismatch, 1), 100 * shareWithin(s.mismatch, 1), 100 * shareWithin(s.mismatch, 2),
      quantile(s.deviation, 0.5), quantile(s.deviation, 0.95), quantile(s.deviation, 1),
      100 * shareWithin(s.deviation, 1), quantile(s.lines, 0.5), quantile(s.lines, 0.95),
      quantile(s.lines, 1), quantile(s.crown, 0.5), quantile(s.crown, 1), s.beyond,
      quantile(s.time, 0.5), quantile(s.time, 1), quantile(s.armholeDeviation, 0.5),
      quantile(s.armholeDeviation, 1), 100 * shareWithin(s.armholeDeviation, 1));
}

TEST(ShapingSurvey, everyBodyAtEveryGauge) {
  const std::vector<Body> all = bodies();
  ASSERT_EQ(all.size(), 1991);
  const std::size_t step = std::getenv("SCYE_WHOLE_SURVEY") ? 1 : 20;
  std::printf(
      "%-22s %6s | mismatch mm: median 95%% worst, <=1, <=2 | stitches off: median 95%% worst, "
      "<=1 | lines | crown cm off, beyond style | us median worst | armhole off <=1\n",
      "gauge, ease", "caps");
  Trial whole, snug; // snug: ease 0 and 3
  for (const Gauge& gauge : kGauges) {
    const int lineBar = gauge.stitches <= 24 ? 6 : 8;
    for (const double ease : kEases) {
      Trial trial;
      for (std::size_t i = 0; i < all.size(); i += step)
        tryBody(frame(all[i], ease), gauge, trial);
      char name[64];
      std::snprintf(name, sizeof name, "%d/%d ease %g", gauge.stitches, gauge.rows, ease);
      print(name, trial.usual);
      std::snprintf(name, sizeof name, "  low or high, %d none", trial.unusual.tooWide);
      print(name, trial.unusual);
      EXPECT_LE(quantile(trial.usual.lines, 1), lineBar);
      EXPECT_LE(quantile(trial.unusual.lines, 1), lineBar);
      whole.usual.add(trial.usual), whole.unusual.add(trial.unusual);
      if (ease <= 3) snug.usual.add(trial.usual), snug.unusual.add(trial.unusual);
    }
  }
  print("all, usual heights", whole.usual);
  print("all, low or high", whole.unusual);
  print("ease 0 and 3, usual", snug.usual);
  std::printf(
      "no cap: %d sleeves too wide, %d all but too wide, %d armholes too slim, %d unexplained\n",
      whole.unusual.tooWide, whole.unusual.tooLow, whole.unusual.slim, whole.unusual.unexplained);
  EXPECT_EQ(whole.unusual.unexplained, 0);
  Sample every = whole.usual;
  every.add(whole.unusual);
  print("every cap", every);
  EXPECT_GE(shareWithin(every.mismatch, 1), 0.95);
  EXPECT_GE(shareWithin(every.mismatch, 2),
            0.995); // the rest: caps lower than a third of the armhole
  EXPECT_GE(shareWithin(every.armholeDeviation, 1.5), 0.99);
  // Within the trade's proportions of cap height to armhole depth.
  EXPECT_LE(quantile(whole.usual.mismatch, 1), 2);
  EXPECT_GE(shareWithin(whole.usual.deviation, 1.5), 0.999);
  EXPECT_GE(shareWithin(whole.usual.deviation, 1), 0.85);
  EXPECT_GE(shareWithin(snug.usual.deviation, 1), 0.97);
}

} // namespace
} // namespace scye::survey
