#include "draft/bodice.h"

#include "draft/neckline.h"
#include "draft/side.h"

#include <algorithm>

namespace scye {
namespace {

ArmholeShape armhole(const Sizes& s, double share, Field cross, Field underarm, Field scoop) {
  ArmholeShape a;
  a.halfBust = 0.5 * share * s.finished(Field::Bust);
  a.underarm = s[underarm];
  a.halfCross = 0.5 * s.finished(cross);
  a.halfShoulder = 0.5 * s.finished(Field::CrossShoulder);
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

} // namespace

ArmholeShape backArmhole(const Sizes& s) {
  return armhole(s, s[Field::BackShare], Field::CrossBack, Field::UnderarmBack, Field::ScoopBack);
}

ArmholeShape frontArmhole(const Sizes& s) {
  return armhole(s, 1 - s[Field::BackShare], Field::CrossFront, Field::UnderarmFront,
                 Field::ScoopFront);
}

Bodice draftBodice(const Design& design, const Sizes& s) {
  Bodice b;
  b.back = backArmhole(s);
  b.front = frontArmhole(s);
  b.at.underarm = std::max(s.finished(Field::HemToUnderarm), kLeastBody);
  b.at.tip = b.at.underarm + b.back.depth;
  b.at.neckPoint = b.at.tip + s[Field::ShoulderDrop];
  b.at.nape = b.at.neckPoint - s[Field::BackNeckDrop];
  b.at.waist = b.at.nape - s[Field::BackWaistLength];
  b.at.hip = b.at.waist - hipBelowWaist(design.as<Figure>(Choice::Figure));
  b.at.hem = std::min(s[Field::HemDepth], 0.5 * b.at.underarm);
  const double band = s[Field::NeckBand];
  b.at.frontNeck = b.at.neckPoint - s[Field::FrontNeckDrop] - band;
  b.halfNeck = 0.5 * s[Field::NeckWidth] + band;

  const bool jacket = design.as<Garment>(Choice::Garment) == Garment::Jacket;
  if (jacket) {
    const double half = 0.5 * s[Field::ButtonBand];
    const bool knittedOn = design.as<BandMade>(Choice::BandMade) == BandMade::KnittedOn;
    b.bandInner = half;
    b.openingX = knittedOn ? -half : half;
  }

  const Neckline shape = design.as<Neckline>(Choice::Neckline);
  const NeckHalf back{0, b.halfNeck, b.at.nape, b.at.neckPoint};
  const NeckHalf front{b.bandInner, b.halfNeck, b.at.frontNeck, b.at.neckPoint};
  const double share = s[Field::BackShare];
  const Path backSide = sideSeam(design, s, b.at, share);
  const Path frontSide = sideSeam(design, s, b.at, 1 - share);
  b.hemGirth = 2 * (backSide.start().x() + frontSide.start().x());
  b.backHalf = halfPiece(b.back, backSide, 0, backNeck(back), b.at.underarm);
  Path neck = frontNeck(shape, front);
  if (jacket && b.openingX < b.bandInner) neck.lineTo(Vec2(b.openingX, neck.end().y()));
  b.frontHalf = halfPiece(b.front, frontSide, b.openingX, neck, b.at.underarm);
  if (jacket)
    b.frontHalf.push_back(
        {EdgeKind::Opening, Path(neck.end()).lineTo(Vec2(b.openingX, 0))});

  // The finished neck edge lies one band inside the knitted one.
  NeckHalf innerFront = front, innerBack = back;
  innerFront.halfWidth = innerBack.halfWidth = 0.5 * s[Field::NeckWidth];
  innerFront.low += band;
  innerFront.from = 0;
  b.neckEdge = 2 * (frontNeck(shape, innerFront).length() + backNeck(innerBack).length());
  return b;
}

std::vector<Piece> bodicePieces(const Design& design, const Bodice& b) {
  std::vector<Piece> pieces{mirrored(PieceId::Back, b.backHalf)};
  if (design.as<Garment>(Choice::Garment) == Garment::Pullover) {
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
