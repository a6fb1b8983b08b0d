// Delaunay triangulation of the inside of a simple polygon with further points in it: incremental
// insertion with edge flips (Lawson, 1977), edges of the polygon that are missing then forced by
// flips (Sloan, Computers & Structures 47, 1993).
#pragma once

#include <Eigen/Core>
#include <array>
#include <vector>

namespace scye {

// The first `boundary` points are the polygon, counter-clockwise; the others lie inside. Triangles
// are counter-clockwise and cover the inside. Cost: about 1 us a point if neighbours in the list
// are neighbours in the plane. Points are shifted by up to 1e-7 of the polygon's size while it is
// worked out, so that no four lie on a circle.
[[nodiscard]] std::vector<std::array<int, 3>>
triangulated(const std::vector<Eigen::Vector2d>& points, int boundary);

[[nodiscard]] bool isInside(const std::vector<Eigen::Vector2d>& polygon, const Eigen::Vector2d& p);

} // namespace scye
