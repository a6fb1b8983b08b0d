// The armhole of half a piece (cm): x from the piece's centre line, y up from the underarm line.
//   (B,0) flat by the underarm bind-off U to (B-U,0); a cubic leaving horizontally and arriving
//   vertically at (X, rD), its arms k times the curve's width and height; straight up to (X, D).
// Where the cross width is not that of the shoulder, the vertical ends at max(r, 0.5) D and a
// straight line goes on to the shoulder tip (S, D). Domain: B > X + U, D > 0, 0.3 <= k <= 0.9.
// Outside of it the shape is drawn with a curve at least kLeastCurve wide, and the draft says so in
// a finding.
#pragma once

#include "curve/path.h"

namespace scye {

inline constexpr double kLeastCurve = 0.2; // cm

struct ArmholeShape {
  double halfBust = 0;     // B
  double underarm = 0;     // U
  double halfCross = 0;    // X
  double halfShoulder = 0; // S, x of the shoulder tip
  double depth = 0;        // D
  double rise = 0;         // r
  double scoop = 0.5523;   // k

  [[nodiscard]] double away() const { return halfBust - halfCross; }
  // The end of the flat part, never nearer to X than kLeastCurve.
  [[nodiscard]] double curveStart() const;
  bool operator==(const ArmholeShape&) const = default;
};

[[nodiscard]] Path underarmFlat(const ArmholeShape& a);  // (B,0) to the end of the bind-off
[[nodiscard]] Path armholeCurve(const ArmholeShape& a);  // from there to the shoulder tip
[[nodiscard]] double armholeEdge(const ArmholeShape& a); // length of both, 1e-12 relative

} // namespace scye
