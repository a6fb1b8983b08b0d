// How long a redraft and the search for remedies take, over random designs: processor time of one
// core, as a table of shares. Designs that somebody might want, at 10 to 40 stitches in 10 cm; and
// any that the fields allow.
//   scye_speed_survey [designs] [seed]
#include "garment/derived.h"
#include "garment/remedies.h"
#include "reference/shaping_survey.h"
#include "support/random_designs.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

using namespace scye;

namespace {

struct Times {
  std::vector<double> ms;
  double worst = 0;
  std::string worstDesign;

  void add(double took, const Design& design) {
    ms.push_back(took);
    if (took > worst) worst = took, worstDesign = survey::commandLine(design);
  }
  [[nodiscard]] double at(double share) {
    const auto n = std::ptrdiff_t(std::ceil(share * double(ms.size()))) - 1;
    std::nth_element(ms.begin(), ms.begin() + n, ms.end());
    return ms[std::size_t(n)];
  }
  void print(const char* name) {
    std::printf("| %-34s | %8.2f | %8.1f | %8.1f | %8.1f |\n", name, at(0.5), at(0.99), at(0.999),
                worst);
  }
};

Design atAGauge(Design design, test::RandomDesigns& random) {
  const double stitches = random.index(31) + 10;
  return design.set(Field::SwatchStitches, stitches)
      .set(Field::SwatchWidth, 10)
      .set(Field::SwatchRows, std::round(stitches * random.uniform(1.2, 1.6)))
      .set(Field::SwatchHeight, 10);
}

void time(const Design& design, Times& redraft, Times& remedies, int& givenUp) {
  double begun = cpuSeconds();
  Derived derived = derive(design);
  redraft.add(1e3 * (cpuSeconds() - begun), design);
  begun = cpuSeconds();
  RemedyWatch watch;
  watch.seconds = cpuSeconds;
  givenUp += !deriveRemedies(design, derived, watch);
  remedies.add(1e3 * (cpuSeconds() - begun), design);
}

} // namespace

int main(int argc, char** argv) {
  const int designs = argc > 1 ? std::atoi(argv[1]) : 2000;
  test::RandomDesigns random(argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 2026);
  if (designs < 1) return 2;
  Times redraft, remedies, anyRedraft, anyRemedies;
  int givenUp = 0, anyGivenUp = 0;
  for (int i = 0; i < designs; ++i)
    time(atAGauge(random.plausible(), random), redraft, remedies, givenUp);
  for (int i = 0; i < designs / 2; ++i)
    time(random.wild(), anyRedraft, anyRemedies, anyGivenUp);
  std::printf(
      "| ms of one core                     |   median |     99 %% |   99.9 %% |    worst |\n"
      "| --- | --- | --- | --- | --- |\n");
  redraft.print("redraft, plausible designs");
  remedies.print("all remedies, plausible designs");
  anyRedraft.print("redraft, any design");
  anyRemedies.print("all remedies, any design");
  std::printf("given up: %d of %d, %d of %d\n", givenUp, designs, anyGivenUp, designs / 2);
  for (const Times* t : {&redraft, &remedies, &anyRedraft, &anyRemedies})
    std::printf("\nworst, %.1f ms: %s\n", t->worst, t->worstDesign.c_str());
}
