// The survey's bodies as shaping tests need them: an armhole and a cap a body, by the starting
// values of the design (fitted pullover: ease 5 at the bust, 2 in depth, cap ease 1; common
// practice). Source of the bodies: 1988 anthropometric survey (tests/data/README.md).
#pragma once

#include "curve/path.h"

#include <string>
#include <vector>

namespace scye::survey {

struct Body {
  bool woman = true;
  double bust = 0, upperArm = 0, crossShoulder = 0, scyeDepth = 0; // cm
};

// All women, then all men of the two files in tests/data.
[[nodiscard]] std::vector<Body> bodies();

// What is drafted for a body; half pieces, cm.
struct Frame {
  double bust = 0, cross = 0, depth = 0;       // B, X, D
  double underarm = 0, rise = 0, scoop = 0.55; // U, r, k
  double upperArm = 0, crown = 0;              // W, T
  [[nodiscard]] Path armhole() const;          // from (B - U, 0)
};
[[nodiscard]] Frame frame(const Body& body, double upperArmEase);

} // namespace scye::survey
