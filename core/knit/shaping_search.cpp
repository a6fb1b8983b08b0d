#include "knit/shaping_search.h"

namespace scye {

std::vector<Rung> shapingLadder(const ShapingStyle& style, const StitchSize& size) {
  std::vector<Rung> ladder;
  if (style.maxSteps > 0)
    for (int k = style.widestStep(size); k >= 2; --k) ladder.push_back({ShapingKind::BindOff, k, 2});
  if (style.everyRow) ladder.push_back({ShapingKind::Decrease, 1, 1});
  for (int every = 2; every <= kSparsest; every += 2)
    ladder.push_back({ShapingKind::Decrease, 1, every});
  return ladder;
}

Chords::Chords(const StitchSize& size, AskedEdges edges, int widestStep)
    : size_(size), edges_(edges), table_((widestStep + 1) * kRows) {
  for (int k = 0; k <= widestStep; ++k)
    for (int g = 0; g < kRows; ++g)
      table_[k * kRows + g] = std::hypot(k * size.width, g * size.height);
}

std::vector<Run> toRuns(const std::vector<Rung>& ladder, const std::vector<RungRun>& runs) {
  std::vector<Run> out;
  for (const RungRun& run : runs) {
    const Rung& rung = ladder[run.rung];
    out.push_back({rung.kind, Stitches(rung.stitches), Rows(rung.every), run.times});
  }
  return out;
}

} // namespace scye
