#include "shaping/spread.h"

#include <algorithm>

namespace scye {

std::vector<SpreadRun> spreadRuns(Stitches before, Stitches more) {
  const int gaps = more.value() + 1, after = std::max(1, before.value() / gaps);
  const int wider = std::max(0, before.value() - gaps * after);
  const int middle = more.value() - wider;
  if (middle <= 0) return {{after + 1, more.value()}};
  std::vector<SpreadRun> runs;
  for (const SpreadRun& run :
       {SpreadRun{after + 1, (wider + 1) / 2}, {after, middle}, {after + 1, wider / 2}})
    if (run.times > 0) runs.push_back(run);
  return runs;
}

} // namespace scye
