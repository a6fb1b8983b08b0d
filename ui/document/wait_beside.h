// Waits for a file to be read or written, beside the window: it paints itself and its timers run,
// while mouse and keyboard wait until it is done. For what is a moment on a good disk and may be
// long on a bad one.
#pragma once

#include <functional>

namespace scye {

void waitBeside(const std::function<void()>& work); // `work` runs on another thread

// What `work` returns.
template <class Result>
[[nodiscard]] Result resultBeside(const std::function<Result()>& work) {
  Result result{};
  waitBeside([&] { result = work(); });
  return result;
}

} // namespace scye
