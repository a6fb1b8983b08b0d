// The trunk of a form: stacked sections, shoulders and neck as one field, sampled. Used by BodyForm
// alone.
#pragma once

#include "worn/body_measures.h"
#include "worn/space.h"

#include <functional>
#include <vector>

namespace scye {

// One section across the trunk: an oval |x/half|^n + |z/depth|^n = 1 with a depth of its own before
// and behind its middle.
struct TrunkSection {
  double y = 0, half = 0, front = 0, back = 0, middle = 0, power = 2.2;
};

struct TrunkField {
  explicit TrunkField(const BodyMeasures& measures);

  std::vector<TrunkSection> sections; // rising
  double neckRadius = 0;
  Vec3 neckBase = Vec3::Zero(), neckAxis = Vec3::UnitY();
  double bottom = 0, top = 0;

  // The sampled field, x >= 0.
  double spacing = 1;
  Vec3 low = Vec3::Zero();
  Eigen::Vector3i count = Eigen::Vector3i::Zero();
  std::vector<Eigen::Vector4f> nodes; // distance and its slope

  [[nodiscard]] TrunkSection section(double y) const; // monotone cubic between the given ones
  [[nodiscard]] double exact(const Vec3& p, const TrunkSection& s) const; // before sampling
  [[nodiscard]] double sampled(const Vec3& p, Vec3* normal) const;
  [[nodiscard]] Vec3 neckMiddle() const; // where the neck's base is measured

private:
  void fitGirths();
  [[nodiscard]] TrunkSection underNeck() const;
  void sample();
  [[nodiscard]] double exactGirth(double y) const;
  BodyMeasures m_;
};

// Round the section of a field (negative inside, star-shaped about `middle`) across `axis`, as a
// tape goes; to about 0.02 %.
[[nodiscard]] double sectionGirth(const std::function<double(const Vec3&)>& field,
                                  const Vec3& middle, const Vec3& axis, double reach);
// The perimeter of the convex hull: a tape bridges hollows.
[[nodiscard]] double hullPerimeter(std::vector<Eigen::Vector2d> points);

} // namespace scye
