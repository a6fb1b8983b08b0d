// The outlines of the pieces, their edges divided alike wherever they are sewn. Used by sewing.cpp
// alone.
#pragma once

#include "worn/sewing.h"

namespace scye {

enum class RunName : std::uint8_t {
  CastOn,
  SideLow,
  DartLow,
  DartHigh,
  SideHigh,
  Armhole,
  Shoulder,
  Neck,
  Closing,
  FrontSeam,
  CapFront,
  CapBack,
  BackSeam,
};

struct Panel {
  std::vector<RunName> names;
  SeamLines runs;
  void add(RunName name, Line line) { names.push_back(name), runs.push_back(std::move(line)); }
  [[nodiscard]] int find(RunName name) const; // -1: it has none
};

// Places along an armhole at which it is sewn: evenly along the underarm bind-off and along the
// rest, the notches among them.
struct SeamPlaces {
  std::vector<double> s;
  std::vector<int> notch; // index of each notch in s
};

struct Panels {
  Panel back, front, sleeve;
  SeamPlaces backSeam, frontSeam;
};

// Where `parts` holds a number it is kept, else it is set by `spacing`. `even` tells whether the
// parts that were kept are of a fair length.
[[nodiscard]] Panels panelsOf(const WornPattern& pattern, double spacing,
                              std::array<int, kDivided>& parts, bool& even);

} // namespace scye
