// The bars of armhole and cap over the survey's bodies, from the row tables of whole garments. A
// thinned sample, held to the bars; or, where bars contradict each other and the one named first
// in DEVELOPERS.md goes before, to what is reached of the other. The whole survey is
// tests/bench/shaping, whose table stands there.
#include "reference/shaping_survey.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <functional>
#include <vector>

namespace scye::survey {
namespace {

struct Seen {
  Figures f;
  Gauge gauge;
};

// Some bodies at every gauge, each with another ease, garment, cross width and lean.
std::vector<Seen> sample() {
  std::vector<Seen> out;
  const std::vector<Body> all = bodies();
  int turn = 0;
  for (std::size_t i = 7; i < all.size(); i += 28)
    for (const Gauge& gauge : kGauges) {
      ++turn;
      const Case c{.gauge = gauge,
                   .fit = Fit(turn % 3),
                   .garment = turn % 4 < 2 ? Garment::Pullover : Garment::Jacket,
                   .narrow = turn % 5 < 2,
                   .lean = turn % 11 == 0 ? CapLean::Leaning : CapLean::Upright};
      out.push_back({figures(derive(designOf(all[i], c))), gauge});
    }
  return out;
}

TEST(ShapingSurvey, barsAreKept) {
  const std::vector<Seen> all = sample();
  ASSERT_GT(all.size(), 480u);
  const auto share = [&](const char* name, double least,
                         const std::function<bool(const Seen&)>& within,
                         const std::function<bool(const Seen&)>& counts) {
    int of = 0, kept = 0;
    for (const Seen& s : all)
      if (s.f.knitted && counts(s)) ++of, kept += within(s);
    ASSERT_GT(of, 30) << name;
    const double percent = 100.0 * kept / of;
    std::printf("%-45s %5.1f %% of %d, at least %g\n", name, percent, of, least);
    EXPECT_GE(percent, least) << name;
  };
  const auto every = [](const Seen&) { return true; };
  const auto usual = [](const Seen& s) { return s.f.capRatio >= 0.5 && s.f.capRatio <= 0.85; };
  const auto fine = [](const Seen& s) { return s.gauge.stitches >= 22; };
  constexpr double kRounding = 1e-9;
  share(
      "has a cap", 99.9, [](const Seen& s) { return s.f.knitted; }, every);
  share(
      "crown within 1 stitch", 100,
      [](const Seen& s) { return std::abs(s.f.crownOff) <= 1 + kRounding; }, every);
  share(
      "crown within 1 cm (1.5 at 12)", 100,
      [](const Seen& s) { return std::abs(s.f.crownOffCm) <= (s.gauge.stitches <= 12 ? 1.5 : 1); },
      every);
  share(
      "height within 2 rows", 99.5,
      [](const Seen& s) { return std::abs(s.f.heightOff) <= 2 + 0.01; }, every);
  share(
      "cap within 1 stitch", 93, [](const Seen& s) { return s.f.capOff <= 1.001; }, usual);
  share(
      "cap within 1.5 stitches", 100, [](const Seen& s) { return s.f.capOff <= 1.501; }, usual);
  share(
      "armhole within 1 stitch", 95, [](const Seen& s) { return s.f.armholeOff <= 1.001; }, every);
  share(
      "armhole in 3 lines", 98, [](const Seen& s) { return s.f.armholeLines <= 3; }, every);
  share(
      "increases in one line", 95, [](const Seen& s) { return s.f.increaseLines <= 1; }, every);
  share(
      "increases in two lines", 100, [](const Seen& s) { return s.f.increaseLines <= 2; }, every);
  share(
      "one stepped bind-off (two over 8 cm)", 99,
      [](const Seen& s) { return s.f.armholeBindOffs <= (s.f.takenAway > 8 ? 2 : 1); }, every);
  share(
      "armhole's steps never grow", 100, [](const Seen& s) { return !s.f.armholeStepsGrow; },
      every);
  share(
      "cap in 5 lines (6 at 28, 7 at 36)", 98,
      [](const Seen& s) {
        return s.f.capLines <= (s.gauge.stitches <= 22 ? 5 : s.gauge.stitches <= 28 ? 6 : 7);
      },
      every);
  // Wanted are 90 % within 1.5 cm: where a cap or an armhole would leave its curve by more than a
  // stitch for it, the curve goes before.
  share(
      "steps within 1.5 cm", 90, [](const Seen& s) { return s.f.widestStep <= 1.5 + kRounding; },
      fine);
  share(
      "steps of 3 stitches (2 at 12)", 95,
      [](const Seen& s) { return s.f.widestStitches <= (s.gauge.stitches <= 12 ? 2 : 3); },
      [](const Seen& s) { return s.gauge.stitches < 22; });
  share(
      "steps within 1.9 cm", 99, [](const Seen& s) { return s.f.widestStep <= 1.9 + kRounding; },
      fine);
  share(
      "seam within 2 mm", 94.5, [](const Seen& s) { return std::abs(s.f.seam) <= 0.2; }, every);
  share(
      "seam within 4 mm", 100, [](const Seen& s) { return std::abs(s.f.seam) <= 0.4; }, every);
  // Wanted are 95 % (88 at 12); in the printed way an armhole's own measures are apart.
  share(
      "measures within 5 mm, no printed way", 97, [](const Seen& s) { return s.f.spread <= 0.5; },
      [](const Seen& s) { return !s.f.printedWay; });
  share(
      "measures within 5 mm", 94, [](const Seen& s) { return s.f.spread <= 0.5; }, every);
  share(
      "armholes alike within a row", 100, [](const Seen& s) { return s.f.sidesRows <= 1; }, every);
  share(
      "sleeves are mirror images", 100, [](const Seen& s) { return s.f.sleevesMirrored; }, every);
  share(
      "underarm moved by a stitch at most, two where stitches are fine or much is taken away", 100,
      [](const Seen& s) {
        return std::abs(s.f.underarmMoved) <= (s.gauge.stitches >= 27 || s.f.takenAway > 8 ? 2 : 1);
      },
      every);
}

// Neighbouring designs give neighbouring caps: a woman's pullover and jacket, the bust from 80 to
// 130 cm by 1.
TEST(ShapingSurvey, neighboursDoNotJump) {
  for (const Gauge& gauge : kGauges)
    for (const Garment garment : {Garment::Pullover, Garment::Jacket}) {
      std::vector<Figures> row;
      for (int bust = 80; bust <= 130; ++bust) {
        Design d;
        d.choose(Choice::Garment, garment).set(Field::Bust, bust);
        d.set(Field::SwatchStitches, gauge.stitches).set(Field::SwatchRows, gauge.rows);
        row.push_back(figures(derive(d)));
        ASSERT_TRUE(row.back().knitted);
      }
      for (std::size_t i = 1; i < row.size(); ++i) {
        const std::string at = std::to_string(gauge.stitches) + " stitches, bust " +
                               std::to_string(80 + i) + ", garment " + std::to_string(int(garment));
        EXPECT_LE(std::abs(row[i].crown - row[i - 1].crown), 2) << at;
        EXPECT_LE(std::abs(row[i].capRows - row[i - 1].capRows), 4) << at;
        EXPECT_LE(std::abs(row[i].underarm - row[i - 1].underarm), 2) << at;
      }
    }
}

} // namespace
} // namespace scye::survey
