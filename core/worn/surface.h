// Surfaces to be drawn, in single precision.
#pragma once

#include "worn/space.h"

#include <array>
#include <vector>

namespace scye {

using Vec3f = Eigen::Vector3f;

struct Surface {
  std::vector<Vec3f> at, normal;
  std::vector<std::array<int, 3>> triangles; // counter-clockwise from outside
};

} // namespace scye
