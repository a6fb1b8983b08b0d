// The sleeve cap in whole stitches and rows, its knitted edge as long as it is wanted.
//
// Rows, crown stitches and runs are searched together. Acceptable are: after the underarm bind-off
// stepped bind-offs and decreases from steep to sparse, then from sparse to steep, stepped
// bind-offs again, then the crown bind-off on a right-side (or, at a small price, wrong-side) row 1
// to 3 rows after the last shaping. The reference curve is the drafted cap solved again for the
// wanted length and the whole-stitch width, underarm and crown; nearness is edgeDeviation() from
// it. Rows are searched within 6 of the reference's height, crowns within 5 cm of the wanted width.
// Prices, in units of one line at the default fidelity, are in shaping_cost.h; a mismatch over 2 mm
// and a deviation over 1 stitch are dear.
//
// A schedule may leave the curve by 1.25 stitches, with at most 6 lines by 1.5. Where none such is
// within 2 mm (low, wide caps: in two rows the curve moves in by more than a step), stepped
// bind-offs may be twice, then four times as wide and as many, and the result says `beyondStyle`;
// those may leave the curve by 1.5 stitches with 6 lines, by 6 with 4. The search is exact over
// these sets: tests compare it with plain enumeration. Processor time: 0.4 ms at 22/30 (worst 2), 3
// ms at 40/56; low caps at the finest gauges up to 50.
#pragma once

#include "curve/cap_curve.h"
#include "model/units.h"
#include "shaping/runs.h"

#include <optional>
#include <vector>

namespace scye {

struct CapRequest {
  StitchSize size{};
  Stitches width{0};    // of the sleeve at the underarm, selvedges included
  Stitches underarm{0}; // bound off at each side: the bodice's own
  Stitches selvedge{1}; // at each edge
  double crown = 7;     // cm, wanted between seams; searched near it
  double lowerFullness = 0.45, upperFullness = 0.55;
  double target = 0; // cm: both edges together with flats = knitted armhole + cap ease
  std::vector<Run>
      armhole{}; // the armhole's runs: its first bind-offs are repeated where that is near
  ShapingStyle style{};
  int lineLimit = 0; // 0: six up to 24 stitches in 10 cm, eight above; two more at full fidelity
  std::optional<Stitches> crownStitches{}; // fixed, selvedges included
  std::optional<Rows> rows{}; // fixed, from the underarm bind-off to the crown's; at least 3
};

enum class CapStatus {
  Fitted,        // within 2 mm and 1 stitch and the line limit
  Rough,         // knittable, but one of these is missed: compare the figures
  SleeveTooWide, // even a flat cap is longer than the armhole: no height solves the match
  NoStitches,    // width, underarm and crown leave nothing to shape
  NoSchedule,    // nothing knittable comes near the curve: a cap of a few rows, see referenceHeight
};

struct CapShaping {
  CapStatus status = CapStatus::NoStitches;
  Schedule schedule;          // of both edges; crown and rows inside
  CapShape reference;         // the drafted half cap in whole stitches
  double referenceHeight = 0; // cm
  double right = 0, left = 0; // cm, knitted lengths with flats
  double mismatch = 0;        // cm, knitted - target
  double deviation = 0;       // stitches
  // Has more or wider stepped bind-offs than the style allows: the cap is low for its width.
  // Decreases on every row, a deeper armhole or a narrower sleeve may do without.
  bool beyondStyle = false;
  double cost = 0;
  [[nodiscard]] bool knittable() const {
    return status == CapStatus::Fitted || status == CapStatus::Rough;
  }
};

[[nodiscard]] CapShaping shapeCap(const CapRequest& request);

// A cap whose halves are fitted each to its own side (a leaning cap, or armholes that differ): both
// edges have a schedule of their own, with rows and crown in common. `lean` moves the crown toward
// the left edge (negative: the right), so that the right edge takes away more stitches.
struct HalvesRequest {
  CapRequest cap{};                       // its target is not used
  double rightTarget = 0, leftTarget = 0; // cm, each with its underarm and half the crown
  double lean = 0;                        // cm
  Stitches leftUnderarm{0};               // cap.underarm is the right edge's
};
struct HalvesShaping {
  CapShaping right, left; // each: its own edge's length, mismatch and deviation alone
  [[nodiscard]] bool knittable() const { return right.knittable() && left.knittable(); }
};
[[nodiscard]] HalvesShaping shapeCapHalves(const HalvesRequest& request);

} // namespace scye
