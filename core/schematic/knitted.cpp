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
    int turned = 0; // stitches that wait over the bust
    bool topped =
        false; // a shoulder that was stepped by turns: only one row more lies on each step
    for (const RowLine& line : piece_.rows) {
      if (line.section != section) continue;
      for (const Act& a : line.acts) {
        if (a.side != side || (a.kind != ActKind::Wait && a.kind != ActKind::TakeUp)) continue;
        if (a.shapes == Shapes::Bust)
          turned += a.kind == ActKind::Wait ? a.stitches.value() : -turned;
        else
          topped = a.kind == ActKind::TakeUp;
      }
      const double y = std::max(0, line.row - 1) * size_.height;
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
    const int last = lastRow(section);
    if (last > 0) points.push_back({points.back().x(), last * size_.height});
    return points;
  }

private:
  [[nodiscard]] int lastRow(SectionId section) const {
    int last = 0;
    for (const RowLine& line : piece_.rows)
      if (line.section == section) last = line.row;
    return last;
  }

  // `turned` stitches wait at `side`: what the fabric ends with there is no selvedge.
  [[nodiscard]] Seam seamOf(const RowLine& line, EdgeSide side, int turned) const {
    const double w = size_.width;
    const auto in = [&](EdgeSide s) {
      return std::max(0, inset(line, s) - (s == side ? turned : 0));
    };
    const double left = (line.leftEdge + in(EdgeSide::Left)) * w,
                 right = (line.rightEdge - in(EdgeSide::Right)) * w;
    const double middle = 0.5 * (left + right);
    return left <= right ? Seam{left, right} : Seam{middle, middle};
  }

  [[nodiscard]] int inset(const RowLine& line, EdgeSide side) const {
    const bool left = side == EdgeSide::Left;
    const bool isFront = piece_.id == (left ? PieceId::LeftFront : PieceId::RightFront);
    const bool isInner = line.section == (left ? SectionId::Right : SectionId::Left);
    if (!isFront && !isInner) return finish_.selvedge;
    if (piece_.neckRow >= 0 && line.row >= piece_.neckRow - 1) return finish_.neck;
    return isFront ? finish_.front : 0;
  }

  const KnitPiece& piece_;
  const StitchSize& size_;
  const EdgeFinish& finish_;
};

} // namespace

EdgeFinish edgeFinish(const GarmentDraft& draft, const KnitGarment& knitted) {
  const Lattice& l = knitted.lattice;
  const bool pickedUp = draft.sizes.style.bandPickedUp();
  return {l.selvedge, l.pickUp, pickedUp ? l.pickUp : 0};
}

Path knittedOutline(const KnitPiece& piece, const StitchSize& size, const EdgeFinish& finish) {
  const Stairs stairs(piece, size, finish);
  std::vector<Vec2> points = stairs.edge(SectionId::Body, EdgeSide::Right);
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
  down(SectionId::Body, EdgeSide::Left);
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
  int row = edge.begin;
  double pending = 0;
  const auto go = [&](int to) {
    at += Vec2(pending, (to - row) * size.height);
    path.lineTo(at);
    row = to;
  };
  for (const EdgeEvent& e : edge.events) {
    if (e.kind == EventKind::Underarm) {
      at.x() += e.change.value() * size.width;
      path.lineTo(at);
      continue;
    }
    go(e.row);
    pending = e.change.value() * size.width;
  }
  go(edge.end);
  if (flatTop > 0) path.lineTo(at + Vec2(flatTop, 0));
  return path;
}

KnittedEdge seamEdge(const KnitPiece& piece, EdgeSide side, int end) {
  // A left edge begins a row later where stitches are bound off under the arm (runs.h:
  // knittedEdge).
  const auto isUnderarm = [&](const Act& a) {
    return a.shapes == Shapes::Underarm && a.side == side;
  };
  const bool underarm = std::any_of(piece.rows.begin(), piece.rows.end(), [&](const RowLine& line) {
    return std::any_of(line.acts.begin(), line.acts.end(), isUnderarm);
  });
  const int begin = piece.underarmRow + (side == EdgeSide::Left && underarm ? 1 : 0);
  std::vector<double> positions;
  for (const RowLine& line : piece.rows) {
    // A split piece goes on at its right in the right section, at its left in the left one.
    const SectionId inner = side == EdgeSide::Left ? SectionId::Right : SectionId::Left;
    if (line.section == inner || line.row < begin - 1 || line.row >= end) continue;
    positions.push_back(side == EdgeSide::Left ? line.leftEdge : line.rightEdge);
  }
  return edgeFromColumn(positions, side, begin, end);
}

} // namespace scye
