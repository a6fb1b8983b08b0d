#include "schematic/notches.h"

namespace scye {
namespace {

// From a walk's coordinates to those of its piece: x is measured from the centre line, outward to
// `side` (1 right, -1 left).
struct Onto {
  double halfWidth = 0, up = 0, side = 1;
  [[nodiscard]] Vec2 point(const Vec2& p) const { return {side * (halfWidth - p.x()), up + p.y()}; }
  // Going up, the fabric lies to the right of either edge.
  [[nodiscard]] Vec2 inward(const Vec2& tangent) const {
    return {-side * tangent.y(), -tangent.x()};
  }
};

void add(std::vector<PieceNotch>& out, const SeamWalk& walk, bool cap, const Onto& onto) {
  int number = 0;
  for (const Notch& notch : walk.notches()) {
    ++number;
    if (notch.kind == NotchKind::Shoulder) continue;
    const auto place = cap ? walk.cap().at(walk.onCap(notch.s)) : walk.armhole().at(notch.s);
    out.push_back({number, onto.point(place.point), onto.inward(place.tangent)});
  }
}

} // namespace

std::vector<PieceNotch> pieceNotches(const GarmentDraft& draft, PieceId piece) {
  std::vector<PieceNotch> out;
  const SleeveBody& sleeve = draft.sleeve;
  if (piece == PieceId::Sleeve) { // the front half lies on the right
    add(out, SeamWalk(draft, ArmholeHalf::Back), true,
        {draft.cap.back.halfWidth, sleeve.length, -1});
    add(out, SeamWalk(draft, ArmholeHalf::Front), true,
        {draft.cap.front.halfWidth, sleeve.length, 1});
    return out;
  }
  const bool back = piece == PieceId::Back;
  const SeamWalk walk(draft, back ? ArmholeHalf::Back : ArmholeHalf::Front);
  const double halfBust = (back ? draft.bodice.back : draft.bodice.front).halfBust;
  const double up = (back ? draft.bodice.at : draft.bodice.frontAt).underarm;
  if (piece != PieceId::RightFront) add(out, walk, false, {halfBust, up, 1});
  if (piece != PieceId::LeftFront) add(out, walk, false, {halfBust, up, -1});
  return out;
}

} // namespace scye
