#include "knit/acts.h"
#include "progress/plan_ahead.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace scye {
namespace {

// The rest of an S-curve from somewhere on it: nearly the whole of it low down, a quarter's arc
// from its steepest place on, the flat end of one near the crown.
struct Fullness {
  double lower, upper;
};
constexpr std::array<Fullness, 7> kRests{
    {{0.45, 0.55}, {0.25, 0.75}, {0.1, 0.9}, {0, 1}, {0, 0.8}, {0, 0.6}, {0, 0.35}}};
constexpr double kNear = 0.05;  // cm: an edge that is as long as wanted
constexpr int kCorrections = 3; // of the length asked for, see rest()

class Rest {
public:
  Rest(const KnitPiece& worked, int lines, const CapRequest& whole, double length, bool frontRight)
      : worked_(worked), at_(worked.rows[std::size_t(lines) - 1]), whole_(whole), length_(length),
        frontRight_(frontRight) {}

  std::optional<CapAhead> best() const {
    std::optional<CapAhead> best;
    double least = 0;
    for (const Fullness& fullness : kRests) {
      double cost = 0;
      auto found = rest(fullness, cost);
      if (!found) continue;
      if (!best || cost < least) least = cost, best = std::move(found);
    }
    return best;
  }

private:
  [[nodiscard]] CapRequest ask(const Fullness& fullness, double target) const {
    CapRequest r = whole_;
    r.widths = {at_.stitches()};
    r.lowerFullness = fullness.lower, r.upperFullness = fullness.upper;
    r.front.underarm = r.back.underarm = Stitches(0);
    // Halves that are not alike so far stand at different distances from the middle.
    const double apart = 0.5 * (at_.rightEdge + at_.leftEdge) * r.size.width;
    const double front = frontRight_ ? apart : -apart;
    r.front.lean = whole_.front.lean + front, r.back.lean = whole_.back.lean - front;
    r.armholes = {EdgeLength{target, target, target}, EdgeLength{target, target, target}};
    r.ease = 0;
    return r;
  }

  [[nodiscard]] KnitPiece joined(const CapShaping& cap) const {
    KnitPiece piece = worked_;
    const Rows base = at_.row - Rows(1); // the right-side row that was worked last
    Section& body = piece.sections.front();
    const Schedule& right = frontRight_ ? cap.front : cap.back;
    const Schedule& left = frontRight_ ? cap.back : cap.front;
    Acts acts = between(body.acts, Rows(0), at_.row);
    append(acts, edgeActs(knittedEdge(right, EdgeSide::Right, base), EdgeSide::Right, Shapes::Cap));
    append(acts, edgeActs(knittedEdge(left, EdgeSide::Left, base), EdgeSide::Left, Shapes::Cap));
    piece.crownRow = base + right.rows;
    acts.push_back({piece.crownRow, ActKind::Close,
                    isRightSide(piece.crownRow) ? EdgeSide::Right : EdgeSide::Left, right.crown,
                    Shapes::Crown});
    sortActs(acts);
    body.acts = std::move(acts);
    body.last = piece.crownRow;
    piece.size = whole_.size;
    piece.rows = workedRows(piece.sections);
    return piece;
  }

  [[nodiscard]] double lengthOf(const KnitPiece& piece) const {
    return (realCap(piece, EdgeSide::Right, whole_.size, whole_.selvedge) +
            realCap(piece, EdgeSide::Left, whole_.size, whole_.selvedge))
        .mean();
  }

  // What is asked of the rest is corrected by what the whole then lacks: the two do not simply add
  // up.
  [[nodiscard]] std::optional<CapAhead> rest(const Fullness& fullness, double& cost) const {
    double target = length_ - lengthSoFar();
    std::optional<CapAhead> best;
    for (int i = 0; i < kCorrections; ++i) {
      if (!(target > 0)) break;
      const CapShaping cap = shapeCap(ask(fullness, target));
      if (!cap.knittable()) break;
      KnitPiece piece = joined(cap);
      if (!worksOut(piece)) break;
      const double off = lengthOf(piece) - length_;
      if (!best || std::abs(off) < std::abs(best->off)) {
        cost = cap.cost + 100 * std::max(0.0, std::abs(off) - kNear);
        best = CapAhead{std::move(piece), off};
      }
      if (std::abs(off) <= kNear) break;
      target -= off;
    }
    return best;
  }

  // Of both edges, from the seam to the row they are at.
  [[nodiscard]] double lengthSoFar() const {
    double sum = 0;
    for (const EdgeSide side : {EdgeSide::Right, EdgeSide::Left}) {
      KnittedEdge edge;
      edge.begin = worked_.underarmRow + Rows(side == EdgeSide::Left ? 1 : 0);
      edge.end = at_.row - Rows(1);
      for (const Act& a : worked_.sections.front().acts)
        if (a.side == side && a.row >= worked_.underarmRow && a.row <= at_.row &&
            a.kind != ActKind::Close)
          edge.events.push_back({a.row, a.stitches,
                                 a.shapes == Shapes::Underarm  ? EventKind::Underarm
                                 : a.kind == ActKind::Decrease ? EventKind::Decrease
                                                               : EventKind::BindOff});
      edge.end = std::max(edge.end, edge.events.empty() ? edge.begin : edge.events.back().row);
      sum += edgeLength(edge, whole_.size).mean();
    }
    return sum;
  }

  const KnitPiece& worked_;
  const RowLine& at_;
  const CapRequest& whole_;
  double length_;
  bool frontRight_;
};

} // namespace

std::optional<CapAhead> capAhead(const KnitPiece& worked, int lines, const CapRequest& whole,
                                 double length, bool frontRight) {
  if (lines <= 0 || lines >= int(worked.rows.size())) return std::nullopt;
  const RowLine& at = worked.rows[std::size_t(lines) - 1];
  // After the underarm bind-off at both edges, on a wrong-side row.
  if (at.row <= worked.underarmRow || at.rightSide()) return std::nullopt;
  return Rest(worked, lines, whole, length, frontRight).best();
}

} // namespace scye
