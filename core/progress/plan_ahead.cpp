#include "progress/plan_ahead.h"

#include "knit/acts.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// How far out the edge stands, in stitches.
double outward(const RowLine& line, EdgeSide side) {
  return side == EdgeSide::Right ? line.rightEdge : -line.leftEdge;
}

const RowLine* bodyLine(const KnitPiece& piece, Rows row) {
  for (const RowLine& line : piece.rows)
    if (line.section == SectionId::Undivided && line.row == row) return &line;
  return nullptr;
}

// Right-side rows from `first` to `last`.
int rightRows(Rows first, Rows last) {
  first += Rows(isRightSide(first) ? 0 : 1);
  return last < first ? 0 : (last - first).value() / 2 + 1;
}

int sign(const Act& a) {
  return a.kind == ActKind::Increase ? 1 : -1;
}

// One edge of a piece from the row it is at to where it is to come.
class EdgeAhead {
public:
  EdgeAhead(EdgeSide side, Acts ahead) : side_(side), acts_(std::move(ahead)) {}

  // Changes the sum of `shapes` by `outward` stitches within the rows; returns what found no room.
  int shape(Shapes shapes, int outward, Rows first, Rows last) {
    if (outward == 0 || last < first) return outward;
    int net = 0;
    bool oneWay = true;
    for (const Act& a : acts_)
      if (a.shapes == shapes) net += sign(a) * a.stitches.value();
    for (const Act& a : acts_)
      if (a.shapes == shapes) oneWay &= sign(a) == (net + outward > 0 ? 1 : -1);
    const auto isOld = [&](const Act& a) { return a.shapes == shapes; };
    if (oneWay) { // all of it anew
      std::erase_if(acts_, isOld);
      return evenly(shapes, net + outward, first, last);
    }
    return among(shapes, outward, first, last);
  }

  // Between what is shaped there already; returns what found no room.
  int among(Shapes shapes, int outward, Rows first, Rows last) {
    for (Rows row = last - Rows(isRightSide(last) ? 0 : 1); row >= first && outward != 0;
         row -= Rows(2)) {
      if (!free(row)) continue;
      const bool wider = outward > 0;
      acts_.push_back(
          {row, wider ? ActKind::Increase : ActKind::Decrease, side_, Stitches(1), shapes});
      outward += wider ? -1 : 1;
    }
    return outward;
  }

  // Further decreases after the last of an armhole, or some of the last left out.
  int armhole(int outward, Rows first, Rows last) {
    while (outward > 0) {
      const auto at = std::find_if(acts_.rbegin(), acts_.rend(), [](const Act& a) {
        return a.shapes == Shapes::Armhole && a.kind == ActKind::Decrease;
      });
      if (at == acts_.rend()) break;
      acts_.erase(std::next(at).base());
      --outward;
    }
    for (Rows row = first + Rows(isRightSide(first) ? 0 : 1); row <= last && outward < 0;
         row += Rows(2))
      if (free(row)) {
        acts_.push_back({row, ActKind::Decrease, side_, Stitches(1), Shapes::Armhole});
        ++outward;
      }
    return outward;
  }

  // The first bind-off or turn that shapes this is so much wider.
  int widen(Shapes shapes, int outward) {
    for (Act& a : acts_) {
      if (a.shapes != shapes ||
          (a.kind != ActKind::BindOff && a.kind != ActKind::Hold && a.kind != ActKind::Wait))
        continue;
      const bool turns = a.kind == ActKind::Wait;
      const int now = a.stitches.value(), most = std::max(-outward, 1 - now);
      a.stitches = Stitches(now + most);
      if (turns) followWaiting(most);
      outward += most;
      if (outward == 0) break;
    }
    return outward;
  }

  [[nodiscard]] const Acts& acts() const { return acts_; }

private:
  [[nodiscard]] bool free(Rows row) const {
    return std::none_of(acts_.begin(), acts_.end(), [&](const Act& a) { return a.row == row; });
  }

  int evenly(Shapes shapes, int changes, Rows first, Rows last) {
    if (changes == 0) return 0;
    const EvenShaping even =
        shapeEvenly({.kind = changes > 0 ? ShapingKind::Increase : ShapingKind::Decrease,
                     .changes = std::abs(changes),
                     .firstRow = first,
                     .lastRow = last});
    const std::vector<Rows> rows = changeRows(even);
    for (const Rows row : rows)
      acts_.push_back(
          {row, changes > 0 ? ActKind::Increase : ActKind::Decrease, side_, Stitches(1), shapes});
    return changes > 0 ? changes - int(rows.size()) : changes + int(rows.size());
  }

  // The stitches that wait further in, and those that are taken up or bound off in the end.
  void followWaiting(int more) {
    bool first = true;
    for (Act& a : acts_) {
      if (a.shapes != Shapes::Shoulder) continue;
      if (a.kind == ActKind::Wait) {
        if (!first) a.from += Stitches(more);
        first = false;
      } else {
        a.stitches += Stitches(more);
      }
    }
  }

  EdgeSide side_;
  Acts acts_;
};

// Where the rows of the target go on from, and by how much they are shifted.
struct Join {
  Rows from{0}, shift{0};
};

std::optional<Join> joinOf(const KnitPiece& worked, Rows row, const KnitPiece& target) {
  if (row < worked.underarmRow) {
    if (target.underarmRow > row) return Join{row, Rows(0)};
    return Join{target.underarmRow - Rows(1), row + Rows(1) - target.underarmRow};
  }
  const Rows up = row - worked.underarmRow;
  const Rows divided = target.splitRow >= Rows(0) ? target.splitRow : target.lastRow();
  const Rows last = std::min(
      {target.shoulderRow, divided, target.neckRow >= Rows(0) ? target.neckRow : target.lastRow()});
  Rows from = std::min(target.underarmRow + up, last - Rows(1));
  from -= Rows(from % 2); // an even row
  if (from < target.underarmRow) return std::nullopt;
  return Join{from, row - from};
}

Acts shifted(Acts acts, Rows by) {
  for (Act& a : acts)
    a.row += by;
  return acts;
}

void moveMarks(KnitPiece& piece, Rows after, Rows by) {
  for (Rows* mark : {&piece.underarmRow, &piece.shoulderRow, &piece.splitRow, &piece.neckRow,
                     &piece.crownRow, &piece.foldRow})
    if (*mark > after) *mark += by;
}

// Counts of what is held, taken up and closed, from where the edges stand.
void recount(KnitPiece& piece) {
  for (Section& s : piece.sections)
    sortActs(s.acts);
  Section& body = piece.sections.front();
  const RowLine at = workedRows({body}).back();
  const auto waiting = [&](EdgeSide side) { // beyond the turns of a shoulder begun below the neck
    Stitches n;
    for (const Act& a : body.acts)
      if (a.side == side && (a.kind == ActKind::Wait || a.kind == ActKind::TakeUp))
        n += a.kind == ActKind::Wait ? a.stitches : -a.stitches;
    return n;
  };
  for (Section& s : piece.sections) {
    if (s.id == SectionId::Right) s.rightEdge = at.rightEdge, s.waiting = waiting(EdgeSide::Right);
    if (s.id == SectionId::Left) s.leftEdge = at.leftEdge, s.waiting = waiting(EdgeSide::Left);
    for (Act& a : s.acts) {
      if (a.kind == ActKind::Rest)
        a.stitches = Stitches(int(std::lround(s.leftEdge - at.leftEdge)));
      if (a.kind == ActKind::Rejoin)
        a.stitches = Stitches(int(std::lround(s.rightEdge - s.leftEdge)));
      if (a.kind == ActKind::Rest || a.kind == ActKind::Rejoin) a.from = waiting(EdgeSide::Left);
    }
  }
  piece.rows = workedRows(piece.sections);
  // What is bound off in the very last row of a piece in one is all there is.
  if (piece.sections.size() > 1 || body.acts.empty() || body.acts.back().kind != ActKind::Close)
    return;
  const std::size_t n = piece.rows.size();
  if (n < 2 || piece.rows[n - 1].acts.size() != 1) return;
  body.acts.back().stitches = piece.rows[n - 2].stitches();
  piece.rows = workedRows(piece.sections);
}

// The shapes that an edge has below and above the underarm.
Shapes sideOf(const KnitPiece& piece) {
  const bool sleeve = piece.id == PieceId::Sleeve || piece.id == PieceId::LeftSleeve;
  return sleeve ? Shapes::Sleeve : Shapes::Side;
}

bool isOpening(const KnitPiece& piece, EdgeSide side) {
  return (piece.id == PieceId::LeftFront && side == EdgeSide::Left) ||
         (piece.id == PieceId::RightFront && side == EdgeSide::Right);
}

// What widens a full sleeve; what a rib goes without is no shaping.
bool ofCuff(const Act& a) {
  return a.kind == ActKind::IncreaseEvenly && a.shapes == Shapes::Cuff;
}

// Stitches that a full sleeve is still to be widened by, `more` at each edge more than planned; no
// row doubles its stitches. Whether it goes.
bool widenAboveCuff(Acts& acts, int stitches, int more) {
  int left = 2 * more;
  for (Act& a : acts)
    if (ofCuff(a)) left += a.stitches.value();
  for (Act& a : acts) {
    if (!ofCuff(a)) continue;
    const int here = std::clamp(left, 0, (stitches - 1) / 2 * 2);
    a.stitches = Stitches(here);
    left -= here, stitches += here;
  }
  std::erase_if(acts, [](const Act& a) { return ofCuff(a) && a.stitches.value() == 0; });
  return left == 0;
}

bool widensAboveCuff(const Acts& acts) {
  return std::any_of(acts.begin(), acts.end(), [](const Act& a) { return ofCuff(a); });
}

constexpr Rows kEvenBelow{2}; // below the underarm that stay even, where there is room

// Below the underarm, from row `first` on; where rows are turned early nothing can be shaped.
int shapedSide(EdgeAhead& edge, Shapes shapes, int more, Rows first, const KnitPiece& piece) {
  const Rows top = piece.underarmRow - Rows(1);
  Rows turned = piece.underarmRow, whole = first; // the rows of short rows over the bust
  for (const Act& a : piece.sections.front().acts)
    if (a.shapes == Shapes::Bust) turned = std::min(turned, a.row), whole = std::max(whole, a.row);
  if (turned <= top) {
    more = edge.shape(shapes, more, first, turned - Rows(1));
    return edge.among(shapes, more, whole + Rows(2), top);
  }
  if (top - kEvenBelow >= first) more = edge.shape(shapes, more, first, top - kEvenBelow);
  return edge.among(shapes, more, first, top);
}

} // namespace

int fixedLines(const KnitPiece& piece, int worked) {
  if (worked <= 0 || worked >= int(piece.rows.size())) return std::max(0, worked);
  const RowLine& last = piece.rows[std::size_t(worked - 1)];
  const RowLine& next = piece.rows[std::size_t(worked)];
  return last.rightSide() && next.section == last.section ? worked + 1 : worked;
}

std::optional<KnitPiece> continued(const KnitPiece& worked, int lines, const KnitPiece& target) {
  if (lines <= 0) return target;
  const RowLine& at = worked.rows[std::size_t(lines) - 1];
  const Rows row = at.row, one(1);
  if (at.section != SectionId::Undivided || at.waiting > Stitches(0)) return std::nullopt;
  if (lines >= int(worked.rows.size())) return std::nullopt;
  if (worked.shoulderRow >= Rows(0) && row >= worked.shoulderRow) return std::nullopt;
  const auto join = joinOf(worked, row, target);
  const RowLine* there = join ? bodyLine(target, join->from) : nullptr;
  if (!there || there->waiting > Stitches(0)) return std::nullopt;

  KnitPiece piece = target;
  piece.id = worked.id;
  const bool below = row < worked.underarmRow;
  moveMarks(piece, join->from, join->shift);
  if (!below) piece.underarmRow = worked.underarmRow;
  if (worked.foldRow >= Rows(0) && worked.foldRow <= row) piece.foldRow = worked.foldRow;
  piece.hemRows = row >= worked.hemRows ? worked.hemRows : std::max(row, target.hemRows);
  if (row > Rows(0)) { // what the edge was begun in
    piece.edge = worked.edge, piece.rib = worked.rib;
    piece.sides = worked.sides, piece.selvedge = worked.selvedge;
  }
  for (Section& s : piece.sections) {
    s.last += join->shift;
    if (s.id != SectionId::Undivided) s.first += join->shift;
    s.acts = shifted(between(s.acts, join->from + one, s.last), join->shift);
  }
  Section& body = piece.sections.front();
  const Section& before = worked.sections.front();
  body.first = Rows(0), body.leftEdge = before.leftEdge, body.rightEdge = before.rightEdge;

  // Half a stitch that a centred count has more or less is moved to the side.
  const double half = std::abs(at.rightEdge - there->rightEdge) -
                      std::floor(std::abs(at.rightEdge - there->rightEdge) + 1e-9);
  const double moved = half > 0.25 && half < 0.75 ? 0.5 : 0;
  for (Section& s : piece.sections)
    if (s.id != SectionId::Undivided) s.leftEdge += moved, s.rightEdge += moved;
  // What a full sleeve is still widened by takes all that differs.
  const bool widening = widensAboveCuff(body.acts);
  if (widening && !widenAboveCuff(body.acts, at.stitches().value(),
                                  int(std::lround(there->rightEdge - at.rightEdge))))
    return std::nullopt;
  Acts all;
  for (const EdgeSide side : {EdgeSide::Right, EdgeSide::Left}) {
    const double thereOut = outward(*there, side) + (side == EdgeSide::Right ? moved : -moved);
    int more = int(std::lround(thereOut - outward(at, side))); // outward, still to be worked
    Acts ahead;
    for (const Section& s : piece.sections)
      for (const Act& a : s.acts)
        if (a.side == side) ahead.push_back(a);
    EdgeAhead edge(side, std::move(ahead));
    if (widening) {
      more = 0;
    } else if (isOpening(worked, side)) {
      more = edge.widen(Shapes::Neck, more);
    } else {
      if (below) more = shapedSide(edge, sideOf(worked), more, row + one, piece);
      Rows last = piece.shoulderRow - one;
      if (piece.splitRow >= Rows(0)) last = std::min(last, piece.splitRow - one);
      if (more != 0 && worked.shoulderRow >= Rows(0))
        more = edge.armhole(more, std::max(row + one, piece.underarmRow + Rows(2)), last);
      if (more != 0) more = edge.widen(Shapes::Shoulder, more);
    }
    if (more != 0) return std::nullopt;
    append(all, edge.acts());
  }
  sortActs(all);
  for (Section& s : piece.sections) {
    const EdgeSide own = s.id == SectionId::Left ? EdgeSide::Left : EdgeSide::Right;
    Acts acts;
    for (const Act& a : all) {
      // Sides of a divided neck have the same rows: an outer edge belongs to its own side.
      const bool outer = a.shapes != Shapes::Neck;
      const bool here = a.row >= s.first && a.row <= s.last;
      if (s.id == SectionId::Undivided ? here : here && outer && a.side == own) acts.push_back(a);
    }
    if (s.id != SectionId::Undivided) // its neck edge as it was
      for (const Act& a : s.acts)
        if (a.shapes == Shapes::Neck) acts.push_back(a);
    s.acts = std::move(acts);
  }
  Acts whole = between(before.acts, Rows(0), row);
  append(whole, body.acts);
  body.acts = std::move(whole);
  recount(piece);
  if (!worksOut(piece)) return std::nullopt;
  return piece;
}

Stitches reachableWidth(const KnitPiece& worked, int lines, Rows underarmRow, Stitches wanted) {
  if (lines <= 0) return wanted;
  const RowLine& at = worked.rows[std::size_t(lines) - 1];
  const Rows next = at.row + Rows(1);
  const int room = rightRows(next, std::max(underarmRow, next) - Rows(1));
  const int now = at.stitches().value();
  // Both edges are shaped alike.
  int each = int(std::lround(0.5 * (wanted.value() - now)));
  each = std::clamp(each, -room, room);
  return Stitches(now + 2 * each);
}

std::optional<KnitPiece> mirroredSleeve(const KnitPiece& sleeve) {
  KnitPiece piece = sleeve;
  piece.id = sleeve.id == PieceId::Sleeve ? PieceId::LeftSleeve : PieceId::Sleeve;
  for (Section& s : piece.sections) {
    for (Act& a : s.acts) {
      if (a.kind == ActKind::CastOn || a.kind == ActKind::Close ||
          a.kind == ActKind::IncreaseEvenly)
        continue;
      const bool toLeft = a.side == EdgeSide::Right;
      a.side = toLeft ? EdgeSide::Left : EdgeSide::Right;
      if (a.kind == ActKind::BindOff) a.row += Rows(toLeft ? 1 : -1); // left edges are a row late
    }
    sortActs(s.acts);
  }
  piece.rows = workedRows(piece.sections);
  if (!worksOut(piece)) return std::nullopt;
  return piece;
}

std::optional<KnitPiece> strayed(const KnitPiece& piece, Rows after, Rows more) {
  const Rows none;
  if (more == none) return piece;
  if (more % 2 != 0 || piece.sections.empty()) return std::nullopt;
  const Section& first = piece.sections.front();
  if (after < none || after >= first.last || after - more > first.last) return std::nullopt;
  KnitPiece out = piece;
  for (Section& s : out.sections) {
    for (const Act& a : s.acts)
      if (more < none && a.row > after && a.row <= after - more) return std::nullopt;
    for (Act& a : s.acts)
      if (a.row > after) a.row += more;
    if (s.first > after) s.first += more;
    s.last += more;
  }
  moveMarks(out, after, more);
  if (out.hemRows > after) out.hemRows += more;
  out.rows = workedRows(out.sections);
  if (!worksOut(out)) return std::nullopt;
  return out;
}

} // namespace scye
