// Random garments that can be made, taken through draft and knitting.
#pragma once

#include "garment/derived.h"
#include "support/made.h"
#include "support/random_designs.h"

namespace scye::test {

inline std::vector<Made> some(std::uint64_t seed, int count) {
  RandomDesigns designs(propertySeed(seed));
  std::vector<Made> all;
  while (int(all.size()) < count) {
    const Design design = designs.plausible();
    if (!anyBlocking(findingsOf(design))) all.push_back(made(design));
  }
  return all;
}

} // namespace scye::test
