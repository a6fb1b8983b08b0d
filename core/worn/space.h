// Space as the garment is worn in it, cm: x to the wearer's left, y up from the nape, z forward.
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

namespace scye {

using Vec3 = Eigen::Vector3d;

// 0 up to a, 1 from b on, smooth between; a > b runs the other way.
[[nodiscard]] inline double smoothStep(double a, double b, double x) {
  const double t = std::clamp((x - a) / (b - a), 0.0, 1.0);
  return t * t * (3 - 2 * t);
}

// The smaller of both, rounded off where they differ by less than `width`: at most a quarter of it
// lower.
[[nodiscard]] inline double smoothMin(double a, double b, double width) {
  const double h = std::max(width - std::abs(a - b), 0.0) / width;
  return std::min(a, b) - h * h * width / 4;
}

[[nodiscard]] inline Vec3 unit(const Vec3& v, const Vec3& otherwise = Vec3::UnitY()) {
  const double n = v.norm();
  return n > 1e-12 ? Vec3(v / n) : otherwise;
}

} // namespace scye
