#include "seam/garment_draft.h"

#include "draft/complete.h"
#include "seam/checks.h"

#include <algorithm>

namespace scye {
namespace {

// Half a sleeve's edges, x >= 0, from the middle of its lower edge round to the middle of its
// crown.
struct HalfSleeve {
  Path castOn, seam, underarm, cap;
};

HalfSleeve halfSleeve(const Path& seam, const CapShape& shape, double height) {
  const Vec2 up(0, seam.end().y());
  const Cubic curve = capCurve(shape, height);
  Path cap(curve.start() + up);
  cap.cubicTo(curve.p[1] + up, curve.p[2] + up, curve.p[3] + up);
  return {Path(Vec2(0, 0)).lineTo(seam.start()), seam, Path(seam.end()).lineTo(cap.start()), cap};
}

// The front half lies on the right: seen from its right side this is the sleeve of the right arm,
// and the left one is its mirror image.
Piece draftedSleeve(const Path& seam, const CapMatch& m) {
  const HalfSleeve front = halfSleeve(seam, m.front, m.height);
  const HalfSleeve back = halfSleeve(seam, m.back, m.height);
  const auto onTheLeft = [](const Path& path) { return path.mirroredX().reversed(); };
  const Path backCap = onTheLeft(back.cap);
  return {PieceId::Sleeve,
          {{EdgeKind::CastOn, onTheLeft(back.castOn).append(front.castOn)},
           {EdgeKind::SleeveSeam, front.seam},
           {EdgeKind::Underarm, front.underarm},
           {EdgeKind::Cap, front.cap},
           {EdgeKind::Crown, Path(front.cap.end()).lineTo(backCap.start())},
           {EdgeKind::Cap, backCap},
           {EdgeKind::Underarm, onTheLeft(back.underarm)},
           {EdgeKind::SleeveSeam, onTheLeft(back.seam)}}};
}

} // namespace

const Piece* GarmentDraft::piece(PieceId id) const {
  const auto at =
      std::find_if(pieces.begin(), pieces.end(), [&](const Piece& p) { return p.id == id; });
  return at == pieces.end() ? nullptr : &*at;
}

GarmentDraft draftGarment(const Design& design) {
  return draftGarment(design, complete(design));
}

GarmentDraft draftGarment(const Design& design, const Sizes& completed) {
  GarmentDraft g;
  g.design = design;
  Worked worked = matchCap(completed);
  g.sizes = std::move(worked.sizes);
  g.cap = worked.match;
  g.bodice = draftBodice(g.sizes);
  g.pieces = bodicePieces(g.sizes.style, g.bodice);
  g.sleeve = sleeveBody(g.sizes, g.cap.height);
  g.pieces.push_back(draftedSleeve(sleeveSeam(g.sizes, g.sleeve), g.cap));
  g.findings = checkDraft(g);
  return g;
}

} // namespace scye
