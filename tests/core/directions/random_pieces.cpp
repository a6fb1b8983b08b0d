#include "core/directions/random_pieces.h"

#include "knit/acts.h"

#include <algorithm>

namespace scye::test {
namespace {

constexpr int kKept = 12; // stitches that every shaping leaves

EdgeSide startOf(int row) {
  return row % 2 == 1 ? EdgeSide::Right : EdgeSide::Left;
}

} // namespace

// Rib, or a facing with its fold.
void RandomPieces::hem(KnitPiece& piece) {
  piece.hemRows = Rows(random_.index(12));
  if (!random_.chance(0.3)) return;
  piece.foldRow = Rows(2 * (1 + random_.index(5)) + 1);
  piece.hemRows = piece.foldRow + Rows(random_.index(4));
}

void RandomPieces::spread(Section& body, int row) {
  const int more = 2 * (1 + random_.index((count_ - 1) / 2));
  body.acts.push_back(
      {Rows(row), ActKind::IncreaseEvenly, EdgeSide::Right, Stitches(more), Shapes::Cuff});
  count_ += more;
}

// Runs of one kind of row after each other, from row `from` to row `last`.
void RandomPieces::shape(Section& section, int from, int last, Shapes right, Shapes left) {
  int row = from;
  while (true) {
    row += random_.index(12);
    if (random_.chance(0.2)) {
      row = shortRows(section, row, last, right, left);
      continue;
    }
    const bool pairs = random_.chance(0.2), off = pairs || random_.chance(0.3),
               grow = random_.chance(0.3);
    const int k = off ? 1 + random_.index(3) : 1, edges = random_.index(3); // both, right, left
    const int every = pairs ? 1 : 1 + random_.index(6), times = 1 + random_.index(5);
    for (int i = 0; i < times; ++i, row += every) {
      if (row > last || count_ < kKept + 2 * k) return;
      for (const EdgeSide side : {EdgeSide::Right, EdgeSide::Left}) {
        const bool wanted =
            pairs ? side == startOf(row) : edges == 0 || (edges == 1) == (side == EdgeSide::Right);
        if (!wanted || (off && side != startOf(row))) continue;
        const ActKind kind = off ? ActKind::BindOff : grow ? ActKind::Increase : ActKind::Decrease;
        section.acts.push_back(
            {Rows(row), kind, side, Stitches(k), side == EdgeSide::Right ? right : left});
        count_ += kind == ActKind::Increase ? k : -k;
      }
    }
  }
}

// Turns at one edge or at both, each at the end of every row toward it, until all is taken up
// there; at an edge where nothing waits the shaping may go on. Returns the row after them.
int RandomPieces::shortRows(Section& section, int row, int last, Shapes right, Shapes left) {
  const int edges = random_.index(3); // both, right, left
  int turns[2] = {edges == 2 ? 0 : 1 + random_.index(4), edges == 1 ? 0 : 1 + random_.index(4)};
  int waiting[2] = {0, 0};
  const bool shaped = random_.chance(0.5);
  for (; turns[0] >= 0 || turns[1] >= 0; ++row) {
    const EdgeSide side = startOf(row + 1); // where the row ends
    const int i = int(side), k = 1 + random_.index(6);
    const bool room = count_ - waiting[0] - waiting[1] - k >= kKept &&
                      (waiting[i] > 0 || row + 2 * (turns[0] + turns[1]) + 4 <= last);
    if (turns[i] > 0 && room) {
      section.acts.push_back({Rows(row), ActKind::Wait, side, Stitches(k), i == 0 ? right : left,
                              Stitches(waiting[i])});
      waiting[i] += k, turns[i] -= 1;
    } else {
      if (waiting[i] > 0)
        section.acts.push_back(
            {Rows(row), ActKind::TakeUp, side, Stitches(waiting[i]), i == 0 ? right : left});
      waiting[i] = 0, turns[i] = -1;
    }
    if (shaped && waiting[1 - i] == 0 && row < last && random_.chance(0.4)) {
      section.acts.push_back(
          {Rows(row), ActKind::Increase, startOf(row), Stitches(1), i == 0 ? left : right});
      count_ += 1;
    }
  }
  return row;
}

// Above row `above`, where nothing else happens at that edge and nothing waits there.
void RandomPieces::buttonholes(Section& section, int above) {
  if (!random_.chance(0.3)) return;
  const EdgeSide side = random_.chance(0.5) ? EdgeSide::Right : EdgeSide::Left;
  const int k = 1 + random_.index(4), from = 1 + random_.index(3), every = 1 + random_.index(20);
  const SectionId outer = side == EdgeSide::Right ? SectionId::Right : SectionId::Left;
  Stitches waiting = section.id == outer ? section.waiting : Stitches(0);
  Acts holes;
  for (const RowLine& line : workedRows({section})) {
    const bool waited = waiting > Stitches(0);
    bool free =
        line.row.value() > above && line.stitches().value() >= kKept && line.row % every == 0;
    for (const Act& act : line.acts) {
      free = free && act.side != side && act.kind != ActKind::Rest && act.kind != ActKind::Rejoin &&
             act.kind != ActKind::IncreaseEvenly;
      if (act.side != side) continue;
      if (act.kind == ActKind::Wait) waiting += act.stitches;
      if (act.kind == ActKind::TakeUp) waiting = Stitches(0);
    }
    if (free && !waited)
      holes.push_back(
          {line.row, ActKind::Buttonhole, side, Stitches(k), Shapes::Opening, Stitches(from)});
  }
  append(section.acts, holes);
}

void RandomPieces::bindOffAll(Section& section) {
  const ActKind kind = random_.chance(0.5) ? ActKind::Close : ActKind::BindOff;
  section.acts.push_back({section.last, kind, startOf(section.last.value()), Stitches(count_),
                          kind == ActKind::Close ? Shapes::Crown : Shapes::Shoulder});
}

// In the row after the body's last one; what waits at its edges then goes with its half.
void RandomPieces::divide(KnitPiece& piece, Section body) {
  const bool room = body.acts.back().row < body.last - Rows(1) && count_ > 2 * kKept + 16,
             turned = room && random_.chance(0.4);
  const int waitsRight = turned ? random_.index(6) : 0, waitsLeft = turned ? random_.index(6) : 0;
  if (waitsLeft > 0)
    body.acts.push_back({body.last - Rows(1), ActKind::Wait, EdgeSide::Left, Stitches(waitsLeft),
                         Shapes::Shoulder});
  if (waitsRight > 0)
    body.acts.push_back(
        {body.last, ActKind::Wait, EdgeSide::Right, Stitches(waitsRight), Shapes::Shoulder});
  piece.sections = {body};
  const RowLine at = workedRows(piece.sections).back();
  const int both = count_ - waitsRight - waitsLeft, split = body.last.value() + 1;
  const int held = kKept + 2 + random_.index(both - 2 * kKept - 4);
  // Rows toward the right edge are wrong-side rows.
  Section right{SectionId::Right,    Rows(split),  Rows(split + 2 + random_.index(30)),
                at.leftEdge + held,  at.rightEdge, {},
                Stitches(waitsRight)};
  right.acts.push_back({Rows(split), ActKind::Rest, EdgeSide::Left, Stitches(held), Shapes::Neck,
                        Stitches(waitsLeft)});
  if (waitsRight > 0)
    right.acts.push_back({Rows(split + 1), ActKind::TakeUp, EdgeSide::Right, Stitches(waitsRight),
                          Shapes::Shoulder});
  count_ = both - held + waitsRight;
  shape(right, split + 2, right.last.value() - 1,
        random_.chance(0.5) ? Shapes::Armhole : Shapes::Shoulder, Shapes::Neck);
  bindOffAll(right);
  Section left{SectionId::Left,    Rows(split),        Rows(split + 1 + random_.index(30)),
               at.leftEdge,        at.leftEdge + held, {},
               Stitches(waitsLeft)};
  left.acts.push_back({Rows(split), ActKind::Rejoin, EdgeSide::Right, Stitches(held), Shapes::Neck,
                       Stitches(waitsLeft)});
  if (waitsLeft > 0)
    left.acts.push_back(
        {Rows(split), ActKind::TakeUp, EdgeSide::Left, Stitches(waitsLeft), Shapes::Shoulder});
  count_ = held + waitsLeft;
  shape(left, split + 1, left.last.value() - 1, Shapes::Neck,
        random_.chance(0.5) ? Shapes::Armhole : Shapes::Shoulder);
  bindOffAll(left);
  piece.sections.push_back(right);
  piece.sections.push_back(left);
}

KnitPiece RandomPieces::next() {
  KnitPiece piece;
  piece.id = random_.chance(0.5) ? PieceId::Back : PieceId::Sleeve;
  hem(piece);
  count_ = 40 + random_.index(100);
  const int middle = piece.hemRows.value() + random_.index(60),
            top = middle + 3 + random_.index(60);
  Section body;
  body.rightEdge = 0.5 * count_, body.leftEdge = -0.5 * count_;
  body.acts.push_back({Rows(0), ActKind::CastOn, EdgeSide::Right, Stitches(count_), Shapes::Hem});
  if (random_.chance(0.2)) spread(body, piece.hemRows.value() + 1);
  const auto next = [&](int least) { return std::max(least, body.acts.back().row.value() + 1); };
  const int fold = piece.foldRow.value();
  shape(body, next(fold + 1), middle, Shapes::Side, Shapes::Side);
  shape(body, next(fold + 1), top - 2, Shapes::Armhole,
        random_.chance(0.5) ? Shapes::Armhole : Shapes::Neck);
  body.last = Rows(top);
  if (count_ < 2 * kKept + 6 || random_.chance(0.4)) {
    bindOffAll(body);
    piece.sections = {body};
  } else {
    body.last = Rows(top - top % 2); // the piece is divided in a right-side row
    divide(piece, std::move(body));
  }
  for (Section& section : piece.sections) {
    sortActs(section.acts);
    buttonholes(section, std::max(0, fold));
    sortActs(section.acts);
  }
  piece.rows = workedRows(piece.sections);
  return piece;
}

} // namespace scye::test
