// A plain dress form with the wearer's measurements: a trunk sampled as a distance field, and arms
// that can be lifted. No head, no face. Own proportions for woman, man, child and baby (from memory
// of anthropometric figures); the measured girths are then met by scaling each section, and those
// of the sampled form, as a tape takes them, lie within 0.5 cm of what was measured: bust, waist,
// hip, neck base, upper arm, wrist.
//
// A value: posing makes another one, and the sampled trunk is shared between them. Distances are cm
// to the surface, negative inside; near the surface to about 2 %, further off less exact.
#pragma once

#include "worn/body_measures.h"
#include "worn/obstacle.h"

#include <memory>
#include <vector>

namespace scye {

struct TrunkField; // the sampled half of the trunk, x >= 0

class BodyForm : public Obstacle {
public:
  explicit BodyForm(const BodyMeasures& measures); // cost: about 60 ms

  [[nodiscard]] const BodyMeasures& measures() const { return m_; }
  // The arms hanging, as near to the trunk as they come without touching it; degrees from straight
  // down. Lifting the arms beyond `lifted(90)` is not meant.
  [[nodiscard]] double hanging() const { return hanging_; }
  [[nodiscard]] double arm() const { return arm_; }
  [[nodiscard]] BodyForm posed(double degrees) const; // clamped to [hanging(), 90]

  // One arm, the wearer's left; the right one is its mirror image.
  struct Arm {
    Vec3 shoulder, middle, elbow, wrist, knuckles, fingers, thumb;
    double shoulderRadius = 0, upperRadius = 0, elbowRadius = 0, wristRadius = 0, handRadius = 0;
    [[nodiscard]] Vec3 upper() const { return (elbow - shoulder).normalized(); }
  };
  [[nodiscard]] const Arm& leftArm() const { return left_; }

  [[nodiscard]] double trunk(const Vec3& p, Vec3* normal = nullptr) const;
  [[nodiscard]] double arms(const Vec3& p, Vec3* normal = nullptr) const; // with their hands
  // As cloth meets it: hands count as an even end of the arm, since a sleeve is put on over them.
  [[nodiscard]] double distance(const Vec3& p) const;

  [[nodiscard]] Touch touch(const Vec3& p, Layer layer, double gap) const override;
  [[nodiscard]] Touch solid(const Vec3& p) const override;

  // As a tape takes them, the shortest way round a section of the sampled form.
  [[nodiscard]] double trunkGirth(double y) const;
  [[nodiscard]] double neckGirth() const;            // round the neck's base, tilted as the neck is
  [[nodiscard]] double armGirth(double share) const; // 0 at the shoulder, 1 at the wrist
  [[nodiscard]] double bottom() const;               // below this the trunk goes on as it is there
  [[nodiscard]] double top() const;                  // where the neck is cut off
  // Half width, depth to the front and to the back of the trunk's section.
  struct Section {
    double half = 0, front = 0, back = 0;
  };
  [[nodiscard]] Section sectionAt(double y) const;

private:
  void pose(double degrees);
  [[nodiscard]] double leftArmDistance(const Vec3& p, Vec3& normal, bool hand) const;
  [[nodiscard]] bool armsClear() const; // of the trunk, as they are posed
  [[nodiscard]] double bareArms(const Vec3& p, Vec3& normal) const; // without hands

  BodyMeasures m_;
  std::shared_ptr<const TrunkField> trunk_;
  Arm left_;
  double hanging_ = 0, arm_ = 0;
};

} // namespace scye
