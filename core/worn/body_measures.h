// What a form is made from: the wearer's own measurements, without any ease, and where they lie.
// Heights are cm above the nape, so those of the trunk are negative.
#pragma once

#include "model/field.h"
#include "model/sizes.h"

namespace scye {

struct BodyMeasures {
  Figure figure = Figure::Woman;
  double bust = 0, waist = 0, hip = 0, neckBase = 0;   // girths
  double upperArm = 0, elbow = 0, wrist = 0, hand = 0; // girths
  double armLength = 0;                                // shoulder tip to wrist
  double halfShoulder = 0;                             // half the cross-shoulder
  double neckPointX = 0, neckPointY = 0;               // side of the neck
  double tipY = 0, armpitY = 0, bustY = 0, waistY = 0, hipY = 0;
  double slope = 0; // of the shoulder, cm down a cm out
  // Compared with a woman of bust 94: for what grows with the body and is not measured.
  [[nodiscard]] double scale() const;
  bool operator==(const BodyMeasures&) const = default;
};

// The garment's shoulder is flatter than the body's; a body's slopes by 19 to 22 degrees (from
// memory of anthropometric surveys). The armpit lies at the measured depth of the scye,
// kept between 0.40 and 0.53 of the back waist length (ISO 8559-1 scye depth; shares from memory).
[[nodiscard]] BodyMeasures bodyMeasures(const Sizes& sizes, Figure figure);

} // namespace scye
