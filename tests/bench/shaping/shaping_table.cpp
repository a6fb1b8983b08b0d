// How near the knitted shaping comes to what is wanted of it, as a table: the survey's bodies at
// seven gauges, with close, usual and loose ease, as pullover and jacket, with plain and narrow
// cross widths, upright caps, and every tenth leaning. Read off the row tables by
// tests/reference/shaping_survey.
//   scye_shaping_table [every Nth body, 1 for all] [seconds at most]
#include "reference/shaping_survey.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <map>
#include <string>
#include <vector>

using namespace scye;
using namespace scye::survey;

namespace {

// One bar over the designs of a gauge: how many keep it, and the worst.
struct Tally {
  long within = 0, of = 0;
  double worst = 0;
  std::string worstCase;
};

struct Table {
  std::vector<std::string> order;
  std::map<std::string, std::map<int, Tally>> rows; // by bar, by gauge; 0: all

  void add(const std::string& bar, int gauge, double value, double limit, const Design& design) {
    if (!rows.contains(bar)) order.push_back(bar);
    for (const int column : {gauge, 0}) {
      Tally& t = rows[bar][column];
      ++t.of, t.within += value <= limit + 1e-9;
      if (value > t.worst) t.worst = value, t.worstCase = column == 0 ? commandLine(design) : "";
    }
  }
};

double processorMilliseconds() {
  timespec t{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return 1e3 * double(t.tv_sec) + 1e-6 * double(t.tv_nsec);
}

void judge(Table& table, const Figures& f, int gauge, double ms, const Design& d) {
  const auto bar = [&](const char* name, double value, double limit) {
    table.add(name, gauge, value, limit, d);
  };
  bar("crown within 1 stitch of wanted", std::abs(f.crownOff), 1);
  bar("crown within 1 cm (1.5 at 12)", std::abs(f.crownOffCm), gauge <= 12 ? 1.5 : 1);
  bar("height within 2 rows of the curve's", std::abs(f.heightOff), 2);
  const bool usual = f.capRatio >= 0.5 && f.capRatio <= 0.85;
  if (usual) {
    bar("cap within 1 stitch of the curve *", f.capOff, 1);
    bar("cap within 1.5 *", f.capOff, 1.5);
  }
  bar("cap within 1 stitch, any height", f.capOff, 1);
  bar("armhole within 1 stitch", f.armholeOff, 1);
  bar("  with a whole-stitch cross width", f.armholeOffWhole, 1);
  bar("armhole within 1.5", f.armholeOff, 1.5);
  bar("armhole in 3 lines", f.armholeLines, 3);
  bar("armhole in 3 lines, increases too", f.armholeLines + f.increaseLines, 3);
  bar("one stepped bind-off (two over 8 cm)", f.armholeBindOffs, f.takenAway > 8 ? 2 : 1);
  bar("armhole's steps never grow", f.armholeStepsGrow, 0);
  const int most = gauge <= 22 ? 5 : gauge <= 28 ? 6 : 7;
  bar("cap in 5 lines (6 at 28, 7 at 36)", f.capLines, most);
  if (gauge >= 22) {
    bar("steps at most 1.5 cm (from 22 up)", f.widestStep, 1.5);
    bar("steps at most 1.9 cm (from 22 up)", f.widestStep, 1.9);
  } else {
    bar("steps at most 2 (12), 3 (16-20) stitches", f.widestStitches, gauge <= 12 ? 2 : 3);
  }
  bar("seam within 2 mm, mean of the measures", std::abs(10 * f.seam), 2);
  bar("seam within 4 mm", std::abs(10 * f.seam), 4);
  bar("three measures within 5 mm of each other", 10 * f.spread, 5);
  if (!f.printedWay) bar("  where no armhole is in the printed way", 10 * f.spread, 5);
  bar("armholes alike within a row", f.sidesRows, 1);
  bar("sleeves mirror images", !f.sleevesMirrored, 0);
  // Two where stitches are fine or much is taken away.
  bar("underarm moved by 1 stitch at most (2)", std::abs(f.underarmMoved),
      gauge >= 27 || f.takenAway > 8 ? 2 : 1);
  bar("redraft within 16 ms of processor time", ms, 16);
}

} // namespace

int main(int argc, char** argv) {
  const std::size_t every = argc > 1 ? std::max(1, std::atoi(argv[1])) : 1;
  const bool plainOnly = std::getenv("SCYE_PLAIN") != nullptr;
  const double seconds = argc > 2 ? std::atof(argv[2]) : 1e9;
  const std::vector<Body> all = bodies();
  Table table;
  long designs = 0, capless = 0, shared = 0;
  std::size_t turn = 0;
  std::vector<double> times;
  for (std::size_t i = 0; i < all.size() && processorMilliseconds() < 1e3 * seconds; i += every)
    for (const Gauge& gauge : kGauges)
      for (const Fit fit : {Fit::Close, Fit::Usual, Fit::Loose})
        for (const Garment garment : {Garment::Pullover, Garment::Jacket})
          for (const bool narrow : {false, true}) {
            if (plainOnly && (fit == Fit::Loose || garment == Garment::Jacket)) continue;
            const CapLean lean = ++turn % 10 == 0 ? CapLean::Leaning : CapLean::Upright;
            const Design design = designOf(all[i], {gauge, fit, garment, narrow, lean});
            const double before = processorMilliseconds();
            const Derived derived = derive(design);
            const double ms = processorMilliseconds() - before;
            times.push_back(ms);
            const Figures f = figures(derived);
            ++designs, capless += !f.knitted, shared += f.oneSchedule;
            if (f.knitted) judge(table, f, gauge.stitches, ms, design);
          }
  std::printf("%ld designs, %ld without a cap, %.1f %% with one armhole schedule\n\n", designs,
              capless, 100.0 * double(shared) / double(designs));
  std::printf("| share, %% |");
  for (const Gauge& gauge : kGauges)
    std::printf(" %d |", gauge.stitches);
  std::printf(" all | worst |\n|");
  for (std::size_t i = 0; i < std::size(kGauges) + 3; ++i)
    std::printf(" --- |");
  std::printf("\n");
  for (const std::string& bar : table.order) {
    std::printf("| %s |", bar.c_str());
    for (const Gauge& gauge : kGauges) {
      const auto& row = table.rows[bar];
      const auto at = row.find(gauge.stitches);
      if (at == row.end())
        std::printf(" - |");
      else
        std::printf(" %.1f |", 100 * double(at->second.within) / double(at->second.of));
    }
    const Tally& t = table.rows[bar][0];
    std::printf(" %.2f | %.2f |\n", 100 * double(t.within) / double(t.of), t.worst);
  }
  std::printf("\n* of caps 0.5 to 0.85 of the armhole depth high\n\nWorst cases:\n");
  for (const std::string& bar : table.order) {
    const Tally& t = table.rows[bar][0];
    if (t.within < t.of) std::printf("%s: %.2f\n  %s\n", bar.c_str(), t.worst, t.worstCase.c_str());
  }
  std::sort(times.begin(), times.end());
  const auto quantile = [&](double share) {
    return times.empty()
               ? 0
               : times[std::min(times.size() - 1, std::size_t(share * double(times.size())))];
  };
  std::printf(
      "\nProcessor time of a redraft, ms: median %.2f, 95 %% %.2f, 99.9 %% %.2f, worst %.2f\n",
      quantile(0.5), quantile(0.95), quantile(0.999), quantile(1));
}
