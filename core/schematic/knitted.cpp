#include "schematic/knitted.h"

#include <algorithm>

namespace scye {
namespace {

struct Seam {
  double left = 0, right = 0; // cm, seam lines
};

class Stairs {
public:
  Stairs(const KnitPiece& piece, const StitchSize& size, const EdgeFinish& finish)
      : piece_(piece), size_(size), finish_(finish) {}

  // One edge of a section from the bottom of its first row up to its end. Below its first row it
  // stands where it stood before, which for a side of a neck is the split.
  [[nodiscard]] std::vector<Vec2> edge(SectionId section, EdgeSide side) const {
    std::vector<Vec2> points;
    Stitches turned; // that wait over the bust
    bool topped =
        false; // a shoulder that was stepped by turns: only one row more lies on each step
    for (const RowLine& line : piece_.rows) {
      if (line.section != section) continue;
      for (const Act& a : line.acts) {
        if (a.side != side || (a.kind != ActKind::Wait && a.kind != ActKind::TakeUp)) continue;
        if (a.shapes == Shapes::Bust)
          turned += a.kind == ActKind::Wait ? a.stitches : -turned;
        else
          topped = a.kind == ActKind::TakeUp;
      }
      const double y = size_.up(std::max(Rows(0), line.row - Rows(1)));
      const bool gone =
          line.stitches() == Stitches(0); // its last row: the bind-off closes the edge
      const Seam seam = seamOf(line, side, turned);
      const double now = side == EdgeSide::Right ? seam.right : seam.left;
      const double x = topped && !points.empty() ? points.back().x() : now;
      if (!points.empty() && (gone || points.back().x() != x))
        points.push_back({points.back().x(), y});
      if (gone) return points;
      if (points.empty() || points.back().x() != x) points.push_back({x, y});
    }
    const Rows last = lastRow(section);
    if (last > Rows(0)) points.push_back({points.back().x(), size_.up(last)});
    return points;
  }

private:
  [[nodiscard]] Rows lastRow(SectionId section) const {
    Rows last;
    for (const RowLine& line : piece_.rows)
      if (line.section == section) last = line.row;
    return last;
  }

  // `turned` stitches wait at `side`: what the fabric ends with there is no selvedge.
  [[nodiscard]] Seam seamOf(const RowLine& line, EdgeSide side, Stitches turned) const {
    const double w = size_.width;
    const auto in = [&](EdgeSide s) {
      return std::max(Stitches(0), inset(line, s) - (s == side ? turned : Stitches(0))).value();
    };
    const double left = (line.leftEdge + in(EdgeSide::Left)) * w,
                 right = (line.rightEdge - in(EdgeSide::Right)) * w;
    const double middle = 0.5 * (left + right);
    return left <= right ? Seam{left, right} : Seam{middle, middle};
  }

  [[nodiscard]] Stitches inset(const RowLine& line, EdgeSide side) const {
    const bool left = side == EdgeSide::Left;
    const bool isFront = piece_.id == (left ? PieceId::LeftFront : PieceId::RightFront);
    const bool isInner = line.section == (left ? SectionId::Right : SectionId::Left);
    if (!isFront && !isInner) return finish_.selvedge;
    if (piece_.neckRow >= Rows(0) && line.row >= piece_.neckRow - Rows(1)) return finish_.neck;
    return isFront ? finish_.front : Stitches(0);
  }

  const KnitPiece& piece_;
  const StitchSize& size_;
  const EdgeFinish& finish_;
};

} // namespace

EdgeFinish edgeFinish(const GarmentDraft& draft, const KnitGarment& knitted) {
  const Lattice& l = knitted.lattice;
  const bool pickedUp = draft.sizes.style.bandPickedUp();
  return {l.selvedge, l.pickUp, pickedUp ? l.pickUp : Stitches(0)};
}

Path knittedOutline(const KnitPiece& piece, const StitchSize& size, const EdgeFinish& finish) {
  const Stairs stairs(piece, size, finish);
  std::vector<Vec2> points = stairs.edge(SectionId::Undivided, EdgeSide::Right);
  if (points.empty()) return {};
  const auto up = [&](SectionId section, EdgeSide side) {
    const std::vector<Vec2> e = stairs.edge(section, side);
    points.insert(points.end(), e.begin(), e.end());
  };
  const auto down = [&](SectionId section, EdgeSide side) {
    const std::vector<Vec2> e = stairs.edge(section, side);
    points.insert(points.end(), e.rbegin(), e.rend());
  };
  up(SectionId::Right, EdgeSide::Right);
  down(SectionId::Right, EdgeSide::Left);
  up(SectionId::Left, EdgeSide::Right);
  down(SectionId::Left, EdgeSide::Left);
  down(SectionId::Undivided, EdgeSide::Left);
  points.push_back(points.front());
  return Path::polyline(points);
}

Path workedOutline(const KnitPiece& piece, int lines, const StitchSize& size,
                   const EdgeFinish& finish) {
  KnitPiece worked = piece;
  worked.rows.resize(std::size_t(std::clamp(lines, 0, int(piece.rows.size()))));
  return knittedOutline(worked, size, finish);
}

Path knittedChords(const KnittedEdge& edge, const StitchSize& size, double flatTop) {
  Path path(Vec2(0, 0));
  Vec2 at(0, 0);
  Rows row = edge.begin;
  double pending = 0;
  const auto go = [&](Rows to) {
    at += Vec2(pending, size.up(to - row));
    path.lineTo(at);
    row = to;
  };
  for (const EdgeEvent& e : edge.events) {
    if (e.kind == EventKind::Underarm) {
      at.x() += size.across(e.change);
      path.lineTo(at);
      continue;
    }
    go(e.row);
    pending = size.across(e.change);
  }
  go(edge.end);
  if (flatTop > 0) path.lineTo(at + Vec2(flatTop, 0));
  return path;
}

KnittedEdge seamEdge(const KnitPiece& piece, EdgeSide side, Rows end) {
  // A left edge begins a row later where stitches are bound off under the arm (runs.h:
  // knittedEdge).
  const auto isUnderarm = [&](const Act& a) {
    return a.shapes == Shapes::Underarm && a.side == side;
  };
  const bool underarm = std::any_of(piece.rows.begin(), piece.rows.end(), [&](const RowLine& line) {
    return std::any_of(line.acts.begin(), line.acts.end(), isUnderarm);
  });
  const Rows begin = piece.underarmRow + Rows(side == EdgeSide::Left && underarm ? 1 : 0);
  std::vector<double> positions;
  for (const RowLine& line : piece.rows) {
    // A split piece goes on at its right in the right section, at its left in the left one.
    const SectionId inner = side == EdgeSide::Left ? SectionId::Right : SectionId::Left;
    if (line.section == inner || line.row < begin - Rows(1) || line.row >= end) continue;
    positions.push_back(side == EdgeSide::Left ? line.leftEdge : line.rightEdge);
  }
  return edgeFromColumn(positions, side, begin, end);
}

} // namespace scye
