#include "core/directions/random_pieces.h"

#include "knit/acts.h"

namespace scye::test {
namespace {

constexpr int kKept = 12; // stitches that every shaping leaves

EdgeSide startOf(int row) { return row % 2 == 1 ? EdgeSide::Right : EdgeSide::Left; }

} // namespace

// Runs of one kind of row after each other, until row `last`.
void RandomPieces::shape(Section& section, int last, Shapes right, Shapes left) {
  int row = section.acts.empty() ? section.first : section.acts.back().row + 1;
  while (true) {
    row += random_.index(12);
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
        section.acts.push_back({row, kind, side, Stitches(k), side == EdgeSide::Right ? right : left});
        count_ += kind == ActKind::Increase ? k : -k;
      }
    }
  }
}

void RandomPieces::bindOffAll(Section& section) {
  const ActKind kind = random_.chance(0.5) ? ActKind::Close : ActKind::BindOff;
  section.acts.push_back({section.last, kind, startOf(section.last), Stitches(count_),
                          kind == ActKind::Close ? Shapes::Crown : Shapes::Shoulder});
}

KnitPiece RandomPieces::next() {
  KnitPiece piece;
  piece.id = random_.chance(0.5) ? PieceId::Back : PieceId::Sleeve;
  piece.hemRows = random_.index(12);
  count_ = 40 + random_.index(100);
  const int middle = piece.hemRows + random_.index(60), top = middle + 3 + random_.index(60);
  Section body;
  body.rightEdge = 0.5 * count_, body.leftEdge = -0.5 * count_;
  body.acts.push_back({0, ActKind::CastOn, EdgeSide::Right, Stitches(count_), Shapes::Hem});
  shape(body, middle, Shapes::Side, Shapes::Side);
  shape(body, top - 2, Shapes::Armhole, random_.chance(0.5) ? Shapes::Armhole : Shapes::Neck);
  body.last = top;
  if (count_ < 2 * kKept + 6 || random_.chance(0.4)) {
    bindOffAll(body);
    piece.sections = {body};
  } else {
    body.last = top - top % 2; // the piece is divided in a right-side row
    piece.sections = {body};
    const RowLine at = workedRows(piece.sections).back();
    const int held = kKept + 2 + random_.index(count_ - 2 * kKept - 4), split = body.last + 1;
    const int both = count_;
    Section right{SectionId::Right,   split,        split + 1 + random_.index(30),
                  at.leftEdge + held, at.rightEdge, {}};
    right.acts.push_back({split, ActKind::Rest, EdgeSide::Left, Stitches(held), Shapes::Neck});
    count_ = both - held;
    shape(right, right.last - 1, random_.chance(0.5) ? Shapes::Armhole : Shapes::Shoulder,
          Shapes::Neck);
    bindOffAll(right);
    Section left{SectionId::Left,    split, split + 1 + random_.index(30), at.leftEdge,
                 at.leftEdge + held, {}};
    left.acts.push_back({split, ActKind::Rejoin, EdgeSide::Right, Stitches(held), Shapes::Neck});
    count_ = held;
    shape(left, left.last - 1, Shapes::Neck, random_.chance(0.5) ? Shapes::Armhole : Shapes::Shoulder);
    bindOffAll(left);
    piece.sections.push_back(right);
    piece.sections.push_back(left);
  }
  for (Section& section : piece.sections) sortActs(section.acts);
  piece.rows = workedRows(piece.sections);
  return piece;
}

} // namespace scye::test
