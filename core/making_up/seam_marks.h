// Pin marks: which row of the cap is sewn to which row of the armhole, on the knitted edges. Both
// edges are followed along their chords (the rule of knit/edge_length.h); along the underarm
// bind-off they run one to one, beyond it the ease is let in as seam/walk.h says. A mark that lies
// on a bind-off is told in its stitches. Also the small whole ratios a knitter sews and picks up
// by.
#pragma once

#include "knit/knit_garment.h"
#include "seam/walk.h"

#include <utility>

namespace scye {

// A knitted edge as its chords: lengths along it and the rows they belong to.
class EdgeChain {
public:
  EdgeChain(const KnittedEdge& edge, const StitchSize& size);
  [[nodiscard]] double length() const { return along_.back(); }
  [[nodiscard]] double flatFrom() const {
    return flatFrom_;
  }                                           // where half a crown begins; else length()
  [[nodiscard]] double rowAt(double s) const; // row of the piece, between rows a fraction
  [[nodiscard]] Vec2
  pointAt(double s) const; // x inward from the side seam, y up from the underarm, cm
  [[nodiscard]] const std::vector<Vec2>& points() const { return points_; }

private:
  [[nodiscard]] std::pair<std::size_t, double> find(double s) const;
  std::vector<Vec2> points_;
  std::vector<double> along_, rows_;
  double flatFrom_ = 0;
};

enum class Flat : std::uint8_t { None, Underarm, Crown };

// A place on a knitted edge, as a knitter finds it.
struct PinPlace {
  double along = 0; // cm from the underarm seam
  int row = 0;      // of the piece
  int up = 0;       // rows above the underarm bind-off
  Flat flat = Flat::None;
  // On a flat, bound-off stitches from where it begins: the underarm's from the seam, the crown's
  // from its end on this side, its selvedge stitch included.
  int stitches = 0;
};

struct SeamMark {
  NotchKind kind = NotchKind::Between; // phrase "mark.<notchKey>"
  PinPlace armhole, cap;
  double letIn = 0; // cm of the cap let in since the underarm
  double ease = 0;  // and since the mark before
};

// One side of one armhole.
struct SeamMarks {
  ArmholeHalf half = ArmholeHalf::Back;
  bool wearersLeft = false;
  LetIn letIn;          // along the knitted edges
  double crownFrom = 0; // cm along the cap where its crown begins
  std::vector<SeamMark>
      marks; // from the underarm to the shoulder; numbered from 1 where they are told
};

// For the wearer's right and left armhole, back and front; empty where no cap is knitted. The marks
// of back and front at the shoulder are the same place: their crown stitches add up to the crown.
[[nodiscard]] std::vector<SeamMarks> seamMarks(const GarmentDraft& draft, const KnitGarment& knit);

// cm between two marks of a side, in either order: along armhole and cap, and the cap's excess.
struct BetweenMarks {
  double armhole = 0, cap = 0, ease = 0;
};
[[nodiscard]] BetweenMarks betweenMarks(const SeamMarks& side, std::size_t from, std::size_t to);

// What gathers or pleats do: how long the cap's top is from pin to pin, and the armhole that it is
// drawn up to; how long the crown's bind-off is, and what of the armhole it takes. Both sides of
// one armhole, cm.
struct DrawnIn {
  double cap = 0, armhole = 0;
  double crown = 0, crownDrawn = 0;
};
[[nodiscard]] DrawnIn drawnIn(const SeamMarks& back, const SeamMarks& front);

// The smallest whole ratio p : q with p / q within `tolerance` of `ratio` (relative); q <= 40.
[[nodiscard]] std::pair<int, int> smallestRatio(double ratio, double tolerance = 0.02);

} // namespace scye
