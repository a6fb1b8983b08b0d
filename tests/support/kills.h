// What a program that is killed leaves behind.
#pragma once

#include <gtest/gtest.h>

#include <chrono>
#include <csignal>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace scye::test {

// Does `work`, which goes on for ever, in a process of its own that is killed after so long.
template <class Work>
void killedAfter(std::chrono::microseconds time, Work&& work) {
  const pid_t child = fork();
  ASSERT_GE(child, 0);
  if (child == 0) {
    work();
    _exit(1);
  }
  std::this_thread::sleep_for(time);
  kill(child, SIGKILL);
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFSIGNALED(status));
}

} // namespace scye::test
