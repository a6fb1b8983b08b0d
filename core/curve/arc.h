// Walking along a path by arc length. The lengths of the segments are found once (1e-12 relative);
// a position inside one by Newton's iteration on its parameter (1e-10 cm).
#pragma once

#include "curve/path.h"

namespace scye {

class ArcWalk {
public:
  explicit ArcWalk(Path path);

  struct Place {
    Vec2 point = Vec2::Zero();
    Vec2 tangent = Vec2::UnitX(); // unit, in the direction of travel
    std::size_t segment = 0;
    double t = 0;
    double s = 0; // arc length from the start, clamped to [0, length()]
  };

  [[nodiscard]] double length() const { return ends_.empty() ? 0 : ends_.back(); }
  [[nodiscard]] Place at(double s) const;
  [[nodiscard]] const Path& path() const { return path_; }
  [[nodiscard]] double endOf(std::size_t segment) const { return ends_[segment]; }

private:
  Path path_;
  std::vector<double> ends_; // cumulative length at the end of each segment
};

} // namespace scye
