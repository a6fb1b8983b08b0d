// Walking the armhole's edge and the cap's edge together, from the underarm seam to the shoulder: which
// point is sewn to which. One to one along the underarm bind-off; beyond it the cap's ease is let in by
// ds'/ds = 1 + e g(t) / integral of g, t the fraction of the way to the shoulder, g = 0 below a third,
// then smoothstep (common practice: no ease low down, most toward the crown). Lengths in cm.
#pragma once

#include "curve/arc.h"
#include "seam/garment_draft.h"

#include <vector>

namespace scye {

// How much of the ease is let in up to the fraction t of the way from the underarm bind-off to the
// shoulder: 0 up to a third, rising smoothly to 1.
[[nodiscard]] double easeShare(double t);

enum class BodySide : std::uint8_t { Back, Front };

class SeamWalk {
public:
  SeamWalk(const GarmentDraft& draft, BodySide side);

  // Both edges run from the underarm seam upward; x inward from the seam, y up from the underarm line.
  [[nodiscard]] const ArcWalk& armhole() const { return armhole_; }
  [[nodiscard]] const ArcWalk& cap() const { return cap_; }
  [[nodiscard]] double underarm() const { return underarm_; }   // s at the end of the bind-off
  [[nodiscard]] double curveEnd() const { return curveEnd_; }   // s at the end of the armhole's curve
  [[nodiscard]] double ease() const { return cap_.length() - armhole_.length(); }
  // Where along the cap the point s of the armhole is sewn; strictly increasing while the ease is not
  // more negative than about a third of the armhole.
  [[nodiscard]] double onCap(double s) const;
  // Ends of underarm bind-off and curve, the shoulder, and about every 5 cm between.
  [[nodiscard]] std::vector<double> notches() const;

private:
  ArcWalk armhole_, cap_;
  double underarm_ = 0, curveEnd_ = 0;
};

} // namespace scye
