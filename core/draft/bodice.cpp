#include "draft/bodice.h"

#include "draft/complete.h"
#include "draft/neckline.h"
#include "draft/side.h"
#include "draft/starting.h"

#include <algorithm>

namespace scye {
namespace {

ArmholeShape armhole(const Sizes& s, double share, Field cross, Field underarm, Field scoop) {
  ArmholeShape a;
  a.halfBust = 0.5 * share * s.finished(Field::Bust);
  a.underarm = s[underarm];
  a.halfShoulder = 0.5 * s.finished(Field::CrossShoulder);
  a.halfCross = 0.5 * s.finished(cross);
  a.depth = s.finished(Field::ArmholeDepth);
  a.rise = s[Field::RiseShare];
  a.scoop = s[scoop];
  return a;
}

std::vector<PieceEdge> halfPiece(const ArmholeShape& armhole, const Path& side, double centreX,
                                 const Path& neckFromTop, double underarmY) {
  const Vec2 up(0, underarmY);
  const Path curve = armholeCurve(armhole).moved(up);
  Path shoulder(curve.end());
  shoulder.lineTo(neckFromTop.start());
  return {{EdgeKind::CastOn, Path(Vec2(centreX, 0)).lineTo(side.start())},
          {EdgeKind::Side, side},
          {EdgeKind::Underarm, underarmFlat(armhole).moved(up)},
          {EdgeKind::Armhole, curve},
          {EdgeKind::Shoulder, shoulder},
          {EdgeKind::Neck, neckFromTop}};
}

// Where the short rows go, and how much of them there is room for.
BustWedge bustWedge(const Sizes& s, const Bodice& b) {
  if (!s.style.bustShortRows() || s[Field::BustDepth] <= 0) return {};
  constexpr double kLeastMiddle = 2; // cm that every row works, to the centre or the front edge
  BustWedge wedge;
  wedge.depth = s[Field::BustDepth];
  wedge.low = std::max(b.at.underarm - kBustBelowUnderarm, 0.5 * (b.at.hem + b.at.underarm));
  wedge.reach =
      std::max(0.0, std::min(s[Field::BustReach],
                             b.front.halfBust - std::max(0.0, b.bandInner) - kLeastMiddle));
  return wedge;
}

BodiceHeights raised(BodiceHeights at, double by) {
  for (double* y : {&at.underarm, &at.tip, &at.neckPoint, &at.nape})
    *y += by;
  return at;
}

// The side seam with the wedge opened.
Path withWedge(const Path& side, const BustWedge& wedge) {
  if (wedge.depth <= 0) return side;
  Path path(side.start());
  bool opened = false;
  for (const Cubic& c : side.segments()) {
    const Vec2 a = c.start(), b = c.end();
    if (!opened && b.y() > wedge.low) {
      const double t = (wedge.low - a.y()) / (b.y() - a.y());
      const Vec2 corner = a + t * (b - a), up(0, wedge.depth);
      path.lineTo(corner).lineTo(corner + 0.5 * up - Vec2(wedge.reach, 0)).lineTo(corner + up);
      opened = true;
    }
    path.lineTo(b + (opened ? Vec2(0, wedge.depth) : Vec2(0, 0)));
  }
  return path;
}

} // namespace

ArmholeShape backArmhole(const Sizes& s) {
  return armhole(s, s[Field::BackShare], Field::CrossBack, Field::UnderarmBack, Field::ScoopBack);
}

ArmholeShape frontArmhole(const Sizes& s) {
  return armhole(s, 1 - s[Field::BackShare], Field::CrossFront, Field::UnderarmFront,
                 Field::ScoopFront);
}

Bodice draftBodice(const Sizes& s) {
  Bodice b;
  b.back = backArmhole(s);
  b.front = frontArmhole(s);
  if (s.style.hem().folded) b.at.fold = s[Field::HemDepth];
  b.at.underarm = b.at.fold + std::max(s.finished(Field::HemToUnderarm), kLeastBody);
  b.at.tip = b.at.underarm + b.back.depth;
  b.at.neckPoint = b.at.tip + s[Field::ShoulderDrop];
  b.at.nape = b.at.neckPoint - s[Field::BackNeckDrop];
  b.at.waist = b.at.fold + s[Field::WaistHeight];
  b.at.hip = b.at.waist - hipBelowWaist(s.style.figure);
  b.at.hem = s.style.hem().ribbed ? std::min(s[Field::HemDepth], 0.5 * b.at.underarm) : b.at.fold;
  b.at.neckLow = s.style.straightBackNeck() ? b.at.neckPoint : b.at.nape;
  const double band = bandInNeck(s);
  b.halfNeck = 0.5 * s[Field::NeckWidth] + band;

  const bool jacket = s.style.jacket();
  if (jacket) {
    const double half = 0.5 * s[Field::ButtonBand];
    b.bandInner = half;
    b.openingX = s.style.bandKnittedOn() ? -half : half;
  }

  b.bust = bustWedge(s, b);
  b.frontAt = raised(b.at, b.bust.depth);
  b.frontAt.neckLow = b.frontAt.neckPoint - s[Field::FrontNeckDrop] - band;

  const Neckline shape = s.style.neckline;
  const NeckHalf back{0, b.halfNeck, b.at.neckLow, b.at.neckPoint};
  const NeckHalf front{b.bandInner, b.halfNeck, b.frontAt.neckLow, b.frontAt.neckPoint};
  const double share = s[Field::BackShare];
  b.backSide = sideSeam(s, b.at, share);
  b.frontSide = sideSeam(s, b.at, 1 - share);
  b.hemGirth = 2 * (b.backSide.start().x() + b.frontSide.start().x());
  b.backHalf = halfPiece(b.back, b.backSide, 0, backNeck(back), b.at.underarm);
  Path neck = frontNeck(shape, front);
  if (jacket && b.openingX < b.bandInner) neck.lineTo(Vec2(b.openingX, neck.end().y()));
  b.frontHalf =
      halfPiece(b.front, withWedge(b.frontSide, b.bust), b.openingX, neck, b.frontAt.underarm);
  if (jacket)
    b.frontHalf.push_back({EdgeKind::Opening, Path(neck.end()).lineTo(Vec2(b.openingX, 0))});

  // The finished neck edge lies one band inside the knitted one; a standing band has its length.
  b.neckEdge = neckEdge({shape, s.style.backNeck, s[Field::NeckWidth], s[Field::FrontNeckDrop],
                         s[Field::BackNeckDrop]});
  return b;
}

std::vector<Piece> bodicePieces(const GarmentStyle& style, const Bodice& b) {
  std::vector<Piece> pieces{mirrored(PieceId::Back, b.backHalf)};
  if (!style.jacket()) {
    pieces.push_back(mirrored(PieceId::Front, b.frontHalf));
    return pieces;
  }
  // Seen from the right side the wearer's left front has its armhole on the right.
  pieces.push_back({PieceId::LeftFront, b.frontHalf});
  Piece right{PieceId::RightFront, {}};
  for (auto it = b.frontHalf.rbegin(); it != b.frontHalf.rend(); ++it)
    right.edges.push_back({it->kind, it->path.mirroredX().reversed()});
  std::rotate(right.edges.begin(), right.edges.end() - 1, right.edges.end());
  pieces.push_back(std::move(right));
  return pieces;
}

} // namespace scye
