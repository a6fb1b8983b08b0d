#include "document/beside.h"

#include <utility>

namespace scye {

Beside::~Beside() {
  {
    const std::lock_guard lock(mutex_);
    quit_ = true;
    next_.reset();
    running_.request_stop();
  }
  wake_.notify_all();
  if (thread_.joinable()) thread_.join();
}

void Beside::start(Work work) {
  {
    const std::lock_guard lock(mutex_);
    running_.request_stop();
    next_ = std::move(work);
    if (!thread_.joinable()) thread_ = std::thread([this] { run(); });
  }
  wake_.notify_all();
}

void Beside::stop() {
  const std::lock_guard lock(mutex_);
  running_.request_stop();
  next_.reset();
}

void Beside::askToStop() {
  const std::lock_guard lock(mutex_);
  running_.request_stop();
}

bool Beside::finished(std::chrono::milliseconds atMost) {
  std::unique_lock lock(mutex_);
  return idle_.wait_for(lock, atMost, [this] { return !busy_ && !next_; });
}

void Beside::run() {
  std::unique_lock lock(mutex_);
  while (true) {
    wake_.wait(lock, [this] { return quit_ || next_; });
    if (quit_) return;
    const Work work = *std::exchange(next_, std::nullopt);
    running_ = std::stop_source();
    busy_ = true;
    const std::stop_token stop = running_.get_token();
    lock.unlock();
    work(stop);
    lock.lock();
    busy_ = false;
    idle_.notify_all();
  }
}

} // namespace scye
