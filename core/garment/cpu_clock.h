// Processor time of the calling thread, for those who give up after a while: the same work is done
// before that on a busy machine as on an idle one.
#pragma once

#include <ctime>

namespace scye {

[[nodiscard]] inline double cpuSeconds() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return double(now.tv_sec) + 1e-9 * double(now.tv_nsec);
}

} // namespace scye
