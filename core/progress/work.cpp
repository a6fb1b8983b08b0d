#include "progress/work.h"

#include <algorithm>
#include <bit>

namespace scye {

ReadingRange rangeOf(Reading reading) {
  switch (reading) {
  case Reading::StitchCount:
  case Reading::RowCount:
    return {1, 400};
  case Reading::Across:
  case Reading::Along:
    return {2, 100};
  case Reading::Armhole:
  case Reading::Depth:
    return {3, 60};
  case Reading::Width:
  case Reading::Cross:
    return {3, 150};
  case Reading::Length:
    break;
  }
  return {3, 150};
}

bool Measured::any() const {
  return std::any_of(values.begin(), values.end(), [](const auto& v) { return v.has_value(); });
}

const PieceWork* Work::find(PieceId piece) const {
  const auto at = std::find_if(pieces.begin(), pieces.end(),
                               [&](const PieceWork& p) { return p.piece == piece; });
  return at == pieces.end() ? nullptr : &*at;
}

PieceWork* Work::find(PieceId piece) {
  return const_cast<PieceWork*>(std::as_const(*this).find(piece));
}

const KnitPiece* plannedPiece(const KnitGarment& garment, PieceId piece) {
  const KnitPiece* planned = garment.piece(piece);
  return !planned && piece == PieceId::LeftSleeve ? garment.piece(PieceId::Sleeve) : planned;
}

std::vector<PieceId> piecesToKnit(const KnitGarment& garment) {
  std::vector<PieceId> pieces;
  for (const KnitPiece& piece : garment.pieces) {
    pieces.push_back(piece.id);
    if (piece.id == PieceId::Sleeve && !garment.piece(PieceId::LeftSleeve))
      pieces.push_back(PieceId::LeftSleeve);
  }
  return pieces;
}

std::optional<PieceId> pieceByKey(std::string_view key) {
  for (int i = 0; i <= int(PieceId::LeftSleeve); ++i)
    if (pieceKey(PieceId(i)) == key) return PieceId(i);
  return std::nullopt;
}

std::uint64_t markOf(const KnitPiece& piece) {
  std::uint64_t mark = 0xcbf29ce484222325;
  const auto add = [&](std::uint64_t x) { mark = (mark ^ x) * 0x100000001b3; };
  add(std::uint64_t(piece.hemRows.value())), add(std::uint64_t(piece.foldRow.value()));
  add(std::uint64_t(piece.edge)), add(std::uint64_t(piece.rib.kind));
  for (const RowLine& line : piece.rows) {
    add(std::uint64_t(line.row.value())), add(std::uint64_t(line.section));
    add(std::uint64_t(line.stitches().value()));
    for (const Act& a : line.acts) {
      add(std::uint64_t(a.kind)), add(std::uint64_t(a.side));
      add(std::uint64_t(a.stitches.value()));
    }
  }
  return mark;
}

bool samePlans(const Work& a, const Work& b) {
  const auto same = [](const PieceWork& x, const PieceWork& y) {
    return x.piece == y.piece && x.answers == y.answers && x.ownPlan == y.ownPlan &&
           x.measured == y.measured && x.plan == y.plan;
  };
  return std::equal(a.pieces.begin(), a.pieces.end(), b.pieces.begin(), b.pieces.end(), same);
}

Work withPlans(Work work, const Work& plans) {
  for (PieceWork& piece : work.pieces)
    if (const PieceWork* planned = plans.find(piece.piece)) {
      piece.plan = planned->plan;
      piece.answers = planned->answers, piece.ownPlan = planned->ownPlan;
      piece.worked = std::min(piece.worked, int(piece.plan.rows.size()));
    }
  return work;
}

PieceWork* workOn(Work& work, const KnitGarment& present, const KnitGarment& design,
                  PieceId piece) {
  if (PieceWork* there = work.find(piece)) return there;
  const KnitPiece* planned = plannedPiece(present, piece);
  const KnitPiece* own = plannedPiece(design, piece);
  if (!planned || !own) return nullptr;
  PieceWork begun;
  begun.piece = piece;
  begun.plan = *planned;
  begun.plan.id = piece;
  begun.answers = markOf(*own);
  work.pieces.push_back(std::move(begun));
  return &work.pieces.back();
}

} // namespace scye
