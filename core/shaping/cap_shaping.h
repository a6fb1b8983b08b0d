// The sleeve cap in whole stitches and rows.
//
// The reference is the drafted cap solved again (curve/cap_curve.h) for whole stitches of width and
// underarm bind-off and for the armhole as it is knitted, with the crown as wanted. Searched are:
// the width (the whole numbers nearest to the drafted one), the crown (within 2 stitches of what is
// wanted, more than 1 at a price that no other fault comes up to), the rows (within 2 of the
// reference's height), and the runs: after the underarm bind-off stepped bind-offs and decreases
// from steep to sparse, then from sparse to steep, stepped bind-offs again, then the crown bind-off
// on a right-side or, at a small price, wrong-side row 1 to 3 rows after the last shaping. What is
// best is said by cost.h, in this order of weight: the drawn shape, few lines, the seam. Nearness
// is edgeDeviation() from the reference; the seam is cap - armhole - ease by the mean of the three
// measures of edge_length.h, on the side of the wearer where it is worse, and how far the three lie
// apart.
//
// Where nothing good comes within 1 stitch, 1.5 are allowed; where nothing comes within these (low,
// wide caps: in two rows the curve moves in by more than a step) bind-offs may be twice, then four
// times as wide and as many, farther off and more rows higher or lower, and the result says
// `beyondStyle`.
//
// Branch and bound, run_search.h: the least cost over these sets, unless CapRequest::work runs out.
// Cost of processor time: 0.2 ms at 22/30, 1 ms at 40/56.
#pragma once

#include "curve/cap_curve.h"
#include "model/units.h"
#include "shaping/runs.h"

#include <array>
#include <limits>
#include <optional>
#include <vector>

namespace scye {

// What is particular to the half of a cap that is sewn to one side of the body.
struct CapSide {
  Stitches underarm{0}; // bound off: the bodice's own
  double lean = 0;      // cm, how far the crown lies away from this half
  double share = 0.5;   // of the whole cap's edge that this half is to have
};

struct CapRequest {
  StitchSize size{};
  std::vector<Stitches> widths{}; // of the sleeve at the underarm, selvedges included; best first
  Stitches selvedge{1};           // at each edge
  double crown = 7;               // cm, wanted between seams
  std::optional<double> height{}; // cm, of the smooth draft
  double lowerFullness = 0.35, upperFullness = 0.45;
  CapSide front{}, back{};              // alike: both edges have one schedule
  std::array<EdgeLength, 2> armholes{}; // cm, the wearer's left and right, both edges, as knitted
  double ease = 0;                      // cm, what the cap is to be longer
  ShapingStyle style{};
  // Dearer caps are of no use, and the search's work ends there (places come through).
  double bound = std::numeric_limits<double>::infinity();
  long work = 30000;

  [[nodiscard]] bool halvesAlike() const {
    return front.underarm == back.underarm && front.lean == back.lean;
  }
};

enum class CapStatus {
  Fitted,        // within every bar: see CapShaping::withinBars
  Rough,         // knittable, but a bar is missed: compare the figures
  SleeveTooWide, // even a flat cap is longer than the armhole: no height solves the match
  NoStitches,    // width, underarm and crown leave nothing to shape
  NoSchedule,    // nothing knittable comes near the curve: a cap of a few rows, see referenceHeight
};

// Bars of a cap that fits, see DEVELOPERS.md: crown within 1 stitch, height within 2 rows,
// deviation within 1 stitch, seam within 2 mm, the measures within 5 mm of each other.
struct CapBars {
  static constexpr double kCrown = 1, kHeight = 2, kOff = 1; // stitches, rows, stitches
  static constexpr double kSeam = 0.2, kSpread = 0.5;        // cm
  static constexpr double kSeamAtMost = 0.4;                 // cm, whatever comes
};

struct CapShaping {
  CapStatus status = CapStatus::NoStitches;
  Stitches width{0};                      // of the sleeve, of those asked
  Schedule front, back;                   // of the edge sewn to that side; crown and rows in common
  CapShape referenceFront, referenceBack; // the drafted half caps in whole stitches
  double referenceHeight = 0;             // cm
  EdgeLength frontRight, frontLeft, backRight, backLeft; // worked at the right or left edge
  double seam = 0;      // cm, cap - armhole - ease, on the worse side, by the mean
  double spread = 0;    // cm, between the measures, on the worse side
  double deviation = 0; // stitches
  // Has more or wider stepped bind-offs than the style allows: the cap is low for its width.
  // Decreases on every row, a deeper armhole or a narrower sleeve may do without.
  bool beyondStyle = false;
  double cost = std::numeric_limits<double>::infinity();
  long work = 0; // places that the search came through, and the programme's states, 64 for one

  // Both edges of the cap on that side of the wearer; the left sleeve is the right one's mirror
  // image.
  [[nodiscard]] EdgeLength leftSleeve() const { return backRight + frontLeft; }
  [[nodiscard]] EdgeLength rightSleeve() const { return frontRight + backLeft; }
  [[nodiscard]] int lines() const { return std::max(front.lines(), back.lines()); }
  [[nodiscard]] bool knittable() const {
    return status == CapStatus::Fitted || status == CapStatus::Rough;
  }
};

[[nodiscard]] CapShaping shapeCap(const CapRequest& request);

// For many caps of one gauge, where `shelf` (cap_halves.h) keeps what they have in common.
class CapPieces;
[[nodiscard]] CapShaping shapeCap(const CapRequest& request, CapPieces& shelf);

// The drafted curve of one half in stitches, as a path from the underarm bind-off to the crown.
[[nodiscard]] Path capReference(const CapShape& half, double height);

} // namespace scye
