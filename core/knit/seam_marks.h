// Pin marks: which row of the cap is sewn to which row of the armhole, on the knitted edges. Both edges
// are followed along their chords (the rule of knit/edge_length.h); along the underarm bind-off they
// run one to one, beyond it the cap's ease is let in as seam/walk.h says. Also the small whole ratios a
// knitter sews and picks up by.
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
  [[nodiscard]] double rowAt(double s) const;  // row of the piece, between rows a fraction
  [[nodiscard]] Vec2 pointAt(double s) const;  // x inward from the side seam, y up from the underarm, cm
  [[nodiscard]] const std::vector<Vec2>& points() const { return points_; }

private:
  [[nodiscard]] std::pair<std::size_t, double> find(double s) const;
  std::vector<Vec2> points_;
  std::vector<double> along_, rows_;
};

struct SeamMark {
  std::string key;      // phrase "mark.<key>": underarm, between, curveEnd, shoulder
  double armhole = 0, cap = 0; // cm along each edge from the underarm seam
  int armholeRow = 0, capRow = 0; // rows of the pieces
  int armholeUp = 0, capUp = 0;   // rows above the underarm bind-off
  double ease = 0;      // cm of the cap let in since the mark before
};

struct SeamMarks {
  BodySide side = BodySide::Back;
  bool wearersLeft = false;
  std::vector<SeamMark> marks;
};

// For the wearer's right and left armhole, back and front; empty where no cap is knitted.
[[nodiscard]] std::vector<SeamMarks> seamMarks(const GarmentDraft& draft, const KnitGarment& knit);

// The smallest whole ratio p : q with p / q within `tolerance` of `ratio` (relative); q <= 40.
[[nodiscard]] std::pair<int, int> smallestRatio(double ratio, double tolerance = 0.02);

} // namespace scye
