#include "seam/garment_draft.h"

#include "draft/complete.h"
#include "seam/checks.h"

#include <algorithm>

namespace scye {
namespace {

std::vector<PieceEdge> halfSleeve(const Path& seam, const CapShape& shape, double height) {
  const Vec2 up(0, seam.end().y());
  const Cubic curve = capCurve(shape, height);
  Path cap(curve.start() + up);
  cap.cubicTo(curve.p[1] + up, curve.p[2] + up, curve.p[3] + up);
  return {{EdgeKind::CastOn, Path(Vec2(0, 0)).lineTo(seam.start())},
          {EdgeKind::SleeveSeam, seam},
          {EdgeKind::Underarm, Path(seam.end()).lineTo(cap.start())},
          {EdgeKind::Cap, cap},
          {EdgeKind::Crown, Path(cap.end()).lineTo(Vec2(-shape.lean, cap.end().y()))}};
}

// The front half lies on the right: seen from its right side this is the sleeve of the right arm,
// and the left one is its mirror image.
Piece sleevePiece(const Path& seam, const CapMatch& m) {
  const auto front = halfSleeve(seam, m.front, m.height), back = halfSleeve(seam, m.back, m.height);
  Piece piece = mirrored(PieceId::Sleeve, front);
  const std::size_t n = front.size(); // cast-on, seam, underarm, cap, crown, cap, underarm, seam
  for (std::size_t k = 2; k < n - 1; ++k)
    piece.edges[2 * n - 2 - k].path = back[k].path.mirroredX().reversed();
  piece.edges[n - 1].path =
      Path(front[n - 2].path.end()).lineTo(back[n - 2].path.mirroredX().end());
  return piece;
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
  g.pieces.push_back(sleevePiece(sleeveSeam(g.sizes, g.sleeve), g.cap));
  g.findings = checkDraft(g);
  return g;
}

} // namespace scye
