#include "schematic/front_view.h"

#include "seam/hang.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace scye {
namespace {

class FrontDrawer {
public:
  explicit FrontDrawer(const GarmentDraft& g) : g_(g) { group_.id = "worn"; }

  Group draw() {
    // From the back forward: the inside of the back behind the neck, the sleeves, the front.
    if (const Piece* back = g_.piece(PieceId::Back)) {
      const double drop = g_.bodice.frontAt.tip - g_.bodice.at.tip; // shoulders meet
      piece(back->outline().moved({0, drop}));
    }
    for (const double side : {-1.0, 1.0})
      sleeve(side);
    for (const PieceId id : {PieceId::Front, PieceId::RightFront, PieceId::LeftFront})
      if (const Piece* p = g_.piece(id)) {
        piece(p->outline());
        edges(*p);
      }
    return std::move(group_);
  }

private:
  void piece(const Path& outline) {
    group_.strokes.push_back({outline, Role::Fabric, true});
    group_.strokes.push_back({outline, Role::Outline, false});
  }
  void guide(const Vec2& a, const Vec2& b) {
    group_.strokes.push_back({Path::polyline({a, b}), Role::Guide, false});
  }
  void edges(const Piece& p) {
    if (g_.bodice.frontAt.hem <= 0) return;
    const Box box = p.box();
    const double y = g_.bodice.frontAt.hem;
    guide({box.low.x(), y}, {box.high.x(), y});
  }

  // Folded in half along its middle: from the tip along the fold to the cuff, and back along the
  // seam to the underarm.
  void sleeve(double side) {
    const ArmholeShape& armhole = g_.bodice.front;
    const BodiceHeights& at = g_.bodice.frontAt;
    const SleeveBody& sl = g_.sleeve;
    const double angle = sleeveAngle(g_) * std::numbers::pi / 180;
    const Vec2 tip(side * armhole.halfShoulder, at.tip),
        under(side * armhole.halfBust, at.underarm);
    const Vec2 down(side * std::cos(angle), -std::sin(angle)); // along the fold
    const Vec2 in(-side * std::sin(angle), -std::cos(angle));  // toward the seam
    const double length = sl.length + g_.cap.height;
    const auto place = [&](double along, double across) {
      return Vec2(tip + along * down + across * in);
    };
    const Vec2 edge = place(length, 0), inner = place(length, sl.halfCuff),
               cuffOut = place(length - sl.cuff, 0),
               cuffIn = place(length - sl.cuff, std::max(sl.halfCuff, sl.halfFull));
    Path path(tip);
    // The shoulder rounds into the sleeve.
    path.cubicTo(tip + Vec2(side * 0.12 * g_.cap.height, -0.02 * g_.cap.height),
                 place(0.18 * length, 0), place(0.3 * length, 0));
    path.lineTo(cuffOut).lineTo(edge).lineTo(inner).lineTo(cuffIn).lineTo(under);
    // It reaches under the front, whose armhole is the seam that is seen.
    const double inside = side * (std::min(armhole.halfCross, armhole.halfShoulder) - 1);
    path.lineTo(Vec2(inside, under.y())).lineTo(Vec2(inside, tip.y() - 1)).lineTo(tip);
    piece(path);
    if (sl.cuff > 0) guide(cuffOut, cuffIn);
  }

  const GarmentDraft& g_;
  Group group_;
};

} // namespace

double sleeveAngle(const GarmentDraft& draft) {
  const double share = sleeveHang(draft).share;
  return std::clamp(35 + (share - 0.5) * 100, 20.0, 80.0);
}

Group frontView(const GarmentDraft& draft) {
  return FrontDrawer(draft).draw();
}

} // namespace scye
