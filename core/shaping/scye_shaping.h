// Armholes and the cap that is sewn into them, chosen together: the underarm bind-off is theirs in
// common, and a cap that is hard to shape may ask for another armhole.
//
// For every underarm bind-off offered the cheapest armholes are listed (armhole_shaping.h); where
// the printed way can be had with it no other is. They are tried in order of cost, each with its
// best cap (cap_shaping.h), until one meets every bar of cap and armhole or thirty have been tried;
// of those tried the cheapest is taken.
#pragma once

#include "shaping/armhole_shaping.h"
#include "shaping/cap_shaping.h"

namespace scye {

// One underarm bind-off, and the armholes that it leaves to be shaped.
struct UnderarmOption {
  Stitches moved{0};              // from the drafted one
  ArmholeRequest back{}, front{}; // `front` is not used where they share a schedule
};

struct ScyeRequest {
  std::vector<UnderarmOption> options{};
  bool oneSchedule = true; // front and back share it
  CapRequest cap{};        // its underarms and armholes are filled in for each option
  // Of an upright cap with two halves: the back's share of the whole edge. A leaning cap's halves
  // are each as long as their own armhole asks.
  std::optional<double> backShare{};
};

struct ScyeShaping {
  std::size_t option = 0;
  ArmholeShaping back, front;
  CapShaping cap;
};

[[nodiscard]] ScyeShaping shapeScye(const ScyeRequest& request);

} // namespace scye
