// Making the sleeve fit: the cap's edge is to be as long as the armhole's, front and back together,
// plus the cap ease (cm). One of five values is the unknown (Choice::WorkedOut), the others are
// held.
//   cap height:  strictly increasing, convex: bracketed Newton, |dH| <= 1e-11 cm
//   (curve/cap_curve.h) others:      the same equation on a bracket by the secant, 1e-10 cm, over
//   what can be had at all leaning cap: cap height and crown shift c together, a 2 x 2 Newton, so
//   that each half-cap's edge is
//                that of its own armhole plus its share of the ease (shared by armhole length)
// Where no solution exists `found` is false, the cap is drawn at kUnmatchedHeight of the armhole
// depth, and the summary says why. Cost: 5 to 20 us.
#pragma once

#include "curve/cap_curve.h"
#include "draft/bodice.h"
#include "model/sizes.h"

#include <optional>

namespace scye {

inline constexpr double kUnmatchedHeight = 0.3; // of the armhole depth
inline constexpr double kLeastCapHeight = 1;    // cm: below this a cap is no cap

struct CapMatch {
  CapShape back, front; // the two halves
  double height = 0;    // H
  double lean = 0;      // c, toward the front
  double crownMark =
      0; // where the shoulder seam meets the crown: cm from its middle toward the front
  double armholeBack = 0, armholeFront = 0; // edges of one armhole
  double capBack = 0, capFront = 0;         // edges of the half-caps, from seam to mark
  double easeWanted = 0;

  bool found = false;
  WorkedOut unknown = WorkedOut::CapHeight;
  double value = 0;         // what was worked out
  double low = 0, high = 0; // what can be had of it while the others hold
  // Where nothing was found: the cap height nearest to the one held that does have a solution, and
  // what the unknown would then be.
  struct Nearest {
    double height = 0, value = 0;
  };
  std::optional<Nearest> nearest;
  RootSummary summary;

  [[nodiscard]] double armhole() const { return armholeBack + armholeFront; }
  [[nodiscard]] double cap() const { return capBack + capFront; }
  [[nodiscard]] double ease() const { return cap() - armhole(); }
};

[[nodiscard]] CapShape capHalf(const Sizes& sizes, Field underarm);

// The sizes with the unknown replaced by what was worked out; the values filled in from others
// (crown width from upper arm, say) stay as they were, so that exactly one thing moves.
struct Worked {
  Sizes sizes;
  CapMatch match;
};
[[nodiscard]] Worked matchCap(const Sizes& sizes);

} // namespace scye
