#include "worn/body_measures.h"

#include "draft/side.h"

#include <array>
#include <cmath>
#include <numbers>

namespace scye {

double BodyMeasures::scale() const {
  return bust / 94;
}

BodyMeasures bodyMeasures(const Sizes& s, Figure figure) {
  BodyMeasures b;
  b.figure = figure;
  b.bust = s.body(Field::Bust), b.waist = s.body(Field::Waist), b.hip = s.body(Field::Hip);
  b.neckBase = s[Field::NeckBase];
  b.upperArm = s.body(Field::UpperArm), b.elbow = s.body(Field::Elbow);
  b.wrist = s.body(Field::Wrist), b.hand = s[Field::HandGirth];
  // Below the underarm the elbow cannot be thicker than the arm, nor the wrist than the elbow.
  b.elbow = std::min(b.elbow, b.upperArm), b.wrist = std::min(b.wrist, b.elbow);
  b.halfShoulder = 0.5 * s.body(Field::CrossShoulder);
  constexpr std::array<double, 4> kDegrees{20, 22, 20, 19};
  b.slope = std::tan(kDegrees[std::size_t(figure)] * std::numbers::pi / 180);
  b.neckPointX = std::min(b.neckBase / (2 * std::numbers::pi) * 1.08, 0.55 * b.halfShoulder);
  b.neckPointY = 0.1 * b.neckBase / (2 * std::numbers::pi);
  b.tipY = b.neckPointY - b.slope * (b.halfShoulder - b.neckPointX);
  const double back = s.body(Field::BackWaistLength);
  const double scye = s.body(Field::ArmholeDepth); // from the nape
  b.armpitY = -std::clamp(scye - 0.5, 0.40 * back, 0.53 * back);
  b.waistY = -back;
  constexpr std::array<double, 4> kBustBelow{0.17, 0.10, 0.10, 0.10}; // of armpit to waist
  b.bustY = b.armpitY + kBustBelow[std::size_t(figure)] * (b.waistY - b.armpitY);
  b.hipY = b.waistY - hipBelowWaist(figure);
  b.armLength = s.body(Field::SleeveToUnderarm) + 0.72 * (b.tipY - b.armpitY);
  return b;
}

} // namespace scye
