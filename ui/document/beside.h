// A thread for what takes too long for the window's own: one piece of work at a time, and the
// newest wins. Starting another tells the one that runs to stop, if it can, and takes the place of
// one that waits. What work finds out it posts to the window's thread itself.
#pragma once

#include <chrono>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

namespace scye {

class Beside {
public:
  using Work = std::function<void(const std::stop_token&)>;

  Beside() = default;
  ~Beside(); // tells what runs to stop and waits for it
  Beside(const Beside&) = delete;
  Beside& operator=(const Beside&) = delete;

  void start(Work work);
  void stop();      // what runs is told to, what waits is dropped
  void askToStop(); // what runs alone
  // Whether nothing runs or waits any more; waits for that so long at most.
  bool finished(std::chrono::milliseconds atMost);

private:
  void run();

  std::mutex mutex_;
  std::condition_variable wake_, idle_;
  std::optional<Work> next_;
  std::stop_source running_;
  bool busy_ = false, quit_ = false;
  std::thread thread_; // there from the first work on
};

} // namespace scye
