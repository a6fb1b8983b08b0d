#include "shaping/run_search.h"

namespace scye {

std::vector<Rung> shapingLadder(const ShapingStyle& style, const StitchSize& size) {
  std::vector<Rung> ladder;
  const int widest = style.widestStep(size), stride = 1 + (widest - 2) / kBindOffRungs;
  if (style.maxSteps > 0)
    for (int k = widest; k >= 2; k -= stride)
      ladder.push_back({ShapingKind::BindOff, k, 2});
  if (style.everyRow) ladder.push_back({ShapingKind::Decrease, 1, 1});
  for (int every = 2; every <= kSparsest; every += 2)
    ladder.push_back({ShapingKind::Decrease, 1, every});
  return ladder;
}

Chords::Chords(const StitchSize& size, AskedEdges edges, int widestStep)
    : size_(size), edges_(edges), table_((widestStep + 1) * 4 * kRows) {
  for (int k = 0; k <= widestStep; ++k)
    for (const bool from : {false, true})
      for (const bool to : {false, true})
        for (int gap = 0; gap < kRows; ++gap)
          table_[((k * 2 + from) * 2 + to) * kRows + gap] = sum(k, from, to, gap);
}

double Chords::sum(int stitches, bool fromBindOff, bool toBindOff, int gap) const {
  const auto single = [&](int rows) {
    return std::sqrt(stitches * size_.width * stitches * size_.width +
                     rows * size_.height * rows * size_.height);
  };
  double both = 0;
  if (edges_ != AskedEdges::Left) both += single(gap);
  if (edges_ != AskedEdges::Right) both += single(gap + int(toBindOff) - int(fromBindOff));
  return both;
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
