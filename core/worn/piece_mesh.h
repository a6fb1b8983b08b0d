// A flat piece as a mesh of triangles, its points in rows along the courses, and its edges sampled
// where they are sewn.
#pragma once

#include "worn/pattern.h"

#include <array>
#include <vector>

namespace scye {

struct PieceMesh {
  std::vector<Vec2> at;                      // cm, the edge's points first
  std::vector<std::array<int, 3>> triangles; // counter-clockwise
  std::vector<std::vector<int>> runs;        // points of each edge, both ends included
  int edgePoints = 0;
};

// Round the piece counter-clockwise: each run of points ends where the next one starts.
using SeamLines = std::vector<Line>;

// Points inside are `spacing` apart. Cost: about 3 us a point.
[[nodiscard]] PieceMesh meshed(const SeamLines& runs, double spacing);
// The same mesh on another outline whose runs have as many points; inner points follow harmonically
// (a graph Laplacian). Empty where the counts differ or a triangle would turn over.
[[nodiscard]] std::optional<PieceMesh> morphed(const PieceMesh& mesh, const SeamLines& runs);

// Evenly spaced along a line, its ends included; `parts` at least 1.
[[nodiscard]] Line evenly(const Line& line, int parts);

} // namespace scye
