// Walking the armhole's edge and the cap's edge together, from the underarm seam to the shoulder:
// which point is sewn to which. One to one along the underarm bind-off; beyond it the ease is let
// in (LetIn). Lengths in cm.
#pragma once

#include "curve/arc.h"
#include "seam/garment_draft.h"

#include <string_view>
#include <vector>

namespace scye {

// How much of the smooth ease is let in up to the fraction t of the way from the underarm bind-off
// to the shoulder: 0 up to a third, rising smoothly to 1.
[[nodiscard]] double easeShare(double t);

enum class ArmholeHalf : std::uint8_t { Back, Front };

// How the ease of one side lies along its armhole (common practice): what is eased in smoothly by
// ds'/ds = 1 + e g(t) / integral of g, t the fraction of the way to the shoulder, g = 0 below a
// third, then smoothstep: none low down, most toward the crown; what is gathered or pleated evenly
// over the last stretch to the shoulder.
struct LetIn {
  double from = 0, gathersFrom = 0, to = 0; // of the armhole: end of the underarm bind-off, where
                                            // gathers or pleats begin, shoulder
  double smooth = 0, drawn = 0;             // cm of the cap; their sum is the side's ease
  [[nodiscard]] double ease() const { return smooth + drawn; }
  [[nodiscard]] bool gathers() const { return drawn > 0; }
  [[nodiscard]] double upTo(double s) const; // let in from the underarm to s
  [[nodiscard]] double onCap(double s) const { return s + upTo(s); }
  // The point of the armhole that is sewn to the cap's point c, to 1e-9; needs onCap to rise.
  [[nodiscard]] double onArmhole(double c) const;
};
// `ease` of one side of an armhole whose whole cap has `capEase`: each side has its share of the
// gathers. Their width is half of Field::GatherWidth, at most kMostGathered of the way from the
// underarm bind-off.
inline constexpr double kMostGathered = 0.8;
[[nodiscard]] LetIn letIn(const GarmentDraft& draft, double underarm, double length, double ease,
                          double capEase);

enum class NotchKind : std::uint8_t { Underarm, Between, CurveEnd, GathersBegin, Shoulder };
[[nodiscard]] std::string_view notchKey(NotchKind kind); // "underarm", ...; phrase "mark.<key>"

struct Notch {
  NotchKind kind = NotchKind::Between;
  double s = 0; // along the armhole
};

class SeamWalk {
public:
  SeamWalk(const GarmentDraft& draft, ArmholeHalf half);

  // Both edges run from the underarm seam upward; x inward from the seam, y up from the underarm
  // line.
  [[nodiscard]] const ArcWalk& armhole() const { return armhole_; }
  [[nodiscard]] const ArcWalk& cap() const { return cap_; }
  [[nodiscard]] double underarm() const { return letIn_.from; } // s at the end of the bind-off
  [[nodiscard]] double curveEnd() const { return curveEnd_; } // s at the end of the armhole's curve
  [[nodiscard]] double ease() const { return cap_.length() - armhole_.length(); }
  [[nodiscard]] const LetIn& letIn() const { return letIn_; }
  // Where along the cap the point s of the armhole is sewn; strictly increasing while the ease is
  // not more negative than about a third of the armhole.
  [[nodiscard]] double onCap(double s) const;
  // From the end of the underarm bind-off up to the shoulder: the end of the curve, where gathers
  // begin, and about every 5 cm between. Where the curve ends near the gathers' beginning, that
  // alone is marked.
  [[nodiscard]] std::vector<Notch> notches() const;

private:
  ArcWalk armhole_, cap_;
  LetIn letIn_;
  double curveEnd_ = 0;
};

} // namespace scye
