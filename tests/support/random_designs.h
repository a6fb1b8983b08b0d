// Random designs for property tests, the same for the same seed on the same standard library.
// Every value respects check(); nothing is said about whether the garment can be made.
#pragma once

#include "model/design.h"

#include <cstdint>
#include <random>

namespace scye::test {

// The seed of a property test, printed and recorded with its result, so that a failure can be had
// again: `fallback`, or the environment variable SCYE_TEST_SEED.
[[nodiscard]] std::uint64_t propertySeed(std::uint64_t fallback);

class RandomDesigns {
public:
  explicit RandomDesigns(std::uint64_t seed) : engine_(seed) {}

  // A garment that somebody might want: a bust within the published tables and a little beyond,
  // some measurements up to 8 % off the filled ones (a few taken on a garment), some styles and
  // eases off their starting values by up to a third of their slider. Limits are left alone.
  [[nodiscard]] Design plausible();
  // Every choice at random, every other field anywhere in its range.
  [[nodiscard]] Design wild();

  [[nodiscard]] double uniform(double low, double high);
  [[nodiscard]] bool chance(double probability);
  [[nodiscard]] int index(int count); // 0 .. count - 1

private:
  void vary(Design& design, Field field, double filled);

  std::mt19937_64 engine_;
};

} // namespace scye::test
