#include "schematic/knitted.h"
#include "schematic/schematic.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// Which edges of a piece a value shapes, so that they can be lit while it changes.
bool shapes(Field f, PieceId piece, EdgeKind edge) {
  const bool sleeve = piece == PieceId::Sleeve, back = piece == PieceId::Back;
  const Field m = measurementOf(f).value_or(f);
  switch (m) {
  case Field::Bust: case Field::BackShare:
    return !sleeve ? edge == EdgeKind::Side || edge == EdgeKind::Armhole || edge == EdgeKind::Underarm
                   : edge == EdgeKind::Cap;
  case Field::Waist: case Field::Hip: return !sleeve && edge == EdgeKind::Side;
  case Field::HemToUnderarm: case Field::BackWaistLength: case Field::HemDepth:
    return !sleeve && (edge == EdgeKind::Side || edge == EdgeKind::CastOn);
  case Field::CrossBack: case Field::ScoopBack: return (back && edge == EdgeKind::Armhole) || edge == EdgeKind::Cap;
  case Field::CrossFront: case Field::ScoopFront:
    return (!back && edge == EdgeKind::Armhole) || edge == EdgeKind::Cap;
  case Field::ArmholeDepth: case Field::RiseShare:
    return edge == EdgeKind::Armhole || edge == EdgeKind::Cap;
  case Field::UnderarmBack: case Field::UnderarmFront:
    return edge == EdgeKind::Underarm || edge == EdgeKind::Armhole || edge == EdgeKind::Cap;
  case Field::CrossShoulder: case Field::ShoulderDrop: case Field::ShoulderLength:
    return !sleeve && (edge == EdgeKind::Shoulder || edge == EdgeKind::Armhole);
  case Field::NeckWidth: case Field::NeckBand:
    return !sleeve && (edge == EdgeKind::Neck || edge == EdgeKind::Shoulder);
  case Field::FrontNeckDrop: return !sleeve && !back && edge == EdgeKind::Neck;
  case Field::BackNeckDrop: case Field::BackOpening: return back && edge == EdgeKind::Neck;
  case Field::ButtonBand: return edge == EdgeKind::Opening;
  case Field::UpperArm:
    return sleeve && (edge == EdgeKind::SleeveSeam || edge == EdgeKind::Cap || edge == EdgeKind::Underarm);
  case Field::Wrist: case Field::Elbow: case Field::CuffGirth: case Field::CuffDepth:
  case Field::SleeveToUnderarm: case Field::SleeveToShoulder: case Field::SleeveLength:
    return sleeve && (edge == EdgeKind::SleeveSeam || edge == EdgeKind::CastOn);
  case Field::CapEase: case Field::CapHeight: case Field::LowerFullness: case Field::UpperFullness:
    return edge == EdgeKind::Cap;
  case Field::CrownWidth: return edge == EdgeKind::Crown || edge == EdgeKind::Cap;
  default: return false;
  }
}

class PieceDrawer {
public:
  PieceDrawer(const GarmentDraft& g, const Phrases& phrases, const SchematicOptions& o)
      : g_(g), phrases_(phrases), o_(o), h_(o.textHeight), lane_(2.6 * o.textHeight) {}

  Group draw(const Piece& piece) {
    group_ = {};
    group_.id = pieceKey(piece.id);
    group_.title = phrases_.say("piece." + group_.id);
    group_.piece = piece.id;
    outline(piece);
    if (piece.id == PieceId::Sleeve) {
      sleeve(piece);
    } else {
      bodice(piece);
    }
    return std::move(group_);
  }

private:
  void dim(const Vec2& from, const Vec2& to, double offset, std::optional<Field> field) {
    if (!o_.dimensions || (to - from).norm() < 0.3) return;
    const Role role = field && o_.lit && related(*field, *o_.lit) ? Role::Lit : Role::Measure;
    addDimension(group_, from, to, offset, lengthText((to - from).norm(), o_.unit), h_, field, role);
  }
  [[nodiscard]] static bool related(Field a, Field b) {
    return measurementOf(a).value_or(a) == measurementOf(b).value_or(b);
  }

  void outline(const Piece& piece) {
    group_.strokes.push_back({piece.outline(), Role::Fabric, true});
    if (o_.ghost)
      if (const Piece* before = o_.ghost->piece(piece.id))
        group_.strokes.push_back({before->outline(), Role::Ghost, false});
    group_.strokes.push_back({piece.outline(), Role::Outline, false});
    if (o_.knitted)
      if (const KnitPiece* knitted = o_.knitted->piece(piece.id))
        group_.strokes.push_back({knittedOutline(*knitted, o_.knitted->lattice.size, edgeFinish(g_, *o_.knitted)),
                                  Role::Knitted, false});
    if (!o_.lit) return;
    for (const PieceEdge& e : piece.edges)
      if (shapes(*o_.lit, piece.id, e.kind)) group_.strokes.push_back({e.path, Role::Lit, false});
  }

  void guide(const Vec2& a, const Vec2& b) {
    group_.strokes.push_back({Path::polyline({a, b}), Role::Guide, false});
  }
  void caption(const Vec2& at) {
    group_.labels.push_back({at, group_.title, Role::Caption, 1.25 * h_, Anchor::Middle, 0});
  }

  // x of the piece's left and right edge at height y on its side seam.
  [[nodiscard]] static std::pair<double, double> across(const Piece& piece, double y) {
    double left = 0, right = 0;
    for (const PieceEdge& e : piece.edges)
      for (const Cubic& c : e.path.segments()) {
        const double y0 = c.start().y(), y1 = c.end().y();
        if (y0 == y1 || y < std::min(y0, y1) || y > std::max(y0, y1)) continue;
        const double x = c.at((y - y0) / (y1 - y0)).x();
        left = std::min(left, x), right = std::max(right, x);
      }
    return {left, right};
  }

  void bodice(const Piece& piece) {
    const Bodice& b = g_.bodice;
    const bool back = piece.id == PieceId::Back, whole = back || piece.id == PieceId::Front;
    const BodiceHeights& at = b.at;
    const ArmholeShape& armhole = back ? b.back : b.front;
    const Box box = piece.box();
    const double left = box.low.x(), right = box.high.x();
    // The armhole side of a half front; a whole piece is dimensioned as if from its right.
    const double s = piece.id == PieceId::RightFront ? -1 : 1;
    const double tip = s * armhole.halfShoulder, neck = s * b.halfNeck;

    const auto [hemLeft, hemRight] = across(piece, 0);
    guide({across(piece, at.hem).first, at.hem}, {across(piece, at.hem).second, at.hem});
    dim({hemLeft, 0}, {hemRight, 0}, -lane_, at.hip >= 0 ? Field::Hip : Field::EaseHip);
    const double centre = whole ? -1 : 0;
    const double start = whole ? -armhole.halfBust : s * b.openingX;
    // Inside, each at a height of its own.
    dim({std::min(start, s * armhole.halfBust), at.underarm},
        {std::max(start, s * armhole.halfBust), at.underarm}, -1.2 * h_, Field::Bust);
    if (g_.design.as<Side>(Choice::Side) == Side::Shaped && at.waist > at.hem + 3 * h_ &&
        at.waist < at.underarm - 5 * h_) {
      const auto [l, r] = across(piece, at.waist);
      dim({l, at.waist}, {r, at.waist}, 0, Field::Waist);
    }
    const double crossY = at.underarm + std::max(0.5, armhole.rise) * armhole.depth;
    if (whole && at.frontNeck > crossY - h_ && !back)
      dim({-armhole.halfCross, crossY - 2 * h_}, {armhole.halfCross, crossY - 2 * h_}, 0, Field::CrossFront);
    else if (back)
      dim({-armhole.halfCross, crossY}, {armhole.halfCross, crossY}, 0, Field::CrossBack);
    // Above.
    if (whole) {
      dim({-b.halfNeck, at.neckPoint}, {b.halfNeck, at.neckPoint}, lane_ * 0.8, Field::NeckWidth);
      dim({-armhole.halfShoulder, at.tip}, {armhole.halfShoulder, at.tip},
          at.neckPoint - at.tip + 1.8 * lane_, Field::CrossShoulder);
    } else {
      const Vec2 a(tip, at.tip), c(neck, at.neckPoint);
      dim(s > 0 ? c : a, s > 0 ? a : c, lane_ * 0.7, Field::ShoulderLength);
    }
    // Heights on the outer side, total on the other.
    const double out = s > 0 && !whole ? right : left, dir = out == right ? -1 : 1;
    const double x = out;
    dim({x, 0}, {x, at.underarm}, dir * 1.6 * lane_, Field::HemToUnderarm);
    dim({x, 0}, {x, at.hem}, dir * 0.7 * lane_, Field::HemDepth);
    dim({x, at.underarm}, {x, at.tip}, dir * 1.6 * lane_, Field::ArmholeDepth);
    if (whole) {
      dim({right, 0}, {right, at.neckPoint}, -1.6 * lane_, std::nullopt);
      dim({right, at.tip}, {right, at.neckPoint}, -0.7 * lane_, Field::ShoulderDrop);
    }
    const double low = back ? at.nape : at.frontNeck;
    const double nx = whole ? 0 : s * std::max(b.bandInner, 0.0) + s * 0.45 * (b.halfNeck - b.bandInner);
    if (!back) dim({nx, low}, {nx, at.neckPoint}, 0, Field::FrontNeckDrop);
    if (back && g_.sizes[Field::BackOpening] > 0)
      guide({0, at.nape}, {0, at.nape - g_.sizes[Field::BackOpening]});
    caption({centre < 0 ? 0 : 0.5 * (left + right), 0.45 * at.underarm + 0.5 * at.hem});
  }

  void sleeve(const Piece& piece) {
    const CapMatch& m = g_.cap;
    const SleeveBody& sl = g_.sleeve;
    const double W = sl.halfWidth, L = sl.length, H = m.height, T = m.back.crownHalf;
    const Box box = piece.box();
    if (sl.cuff > 0) {
      const auto [l, r] = across(piece, sl.cuff);
      guide({l, sl.cuff}, {r, sl.cuff});
    }
    const Field cuff = g_.design.as<SleeveLine>(Choice::SleeveLine) == SleeveLine::Flared
                           ? Field::CuffGirth : Field::Wrist;
    dim({-sl.halfCuff, 0}, {sl.halfCuff, 0}, -lane_, cuff);
    dim({-W, L}, {W, L}, -1.2 * h_, Field::UpperArm);
    dim({m.lean - T, L + H}, {m.lean + T, L + H}, lane_ * 0.8, Field::CrownWidth);
    const double x = box.low.x();
    dim({x, 0}, {x, L}, 1.6 * lane_, Field::SleeveLength);
    dim({x, L}, {x, L + H}, 1.6 * lane_, Field::CapHeight);
    if (sl.cuff > 0) dim({x, 0}, {x, sl.cuff}, 0.7 * lane_, Field::CuffDepth);
    dim({box.high.x(), 0}, {box.high.x(), L + H}, -1.6 * lane_, Field::SleeveToShoulder);
    // The shoulder mark.
    const double mark = m.crownMark;
    group_.strokes.push_back(
        {Path::polyline({{mark, L + H + 0.3 * h_}, {mark, L + H - 0.9 * h_}}), Role::Notch, false});
    caption({0, 0.5 * L});
  }

  const GarmentDraft& g_;
  const Phrases& phrases_;
  const SchematicOptions& o_;
  double h_, lane_;
  Group group_;
};

} // namespace

Picture pieceSchematic(const GarmentDraft& draft, const Phrases& phrases, const SchematicOptions& o) {
  Picture picture;
  picture.title = draft.design.title;
  picture.textHeight = o.textHeight;
  PieceDrawer drawer(draft, phrases, o);
  std::vector<Group> groups;
  // The right front lies on the left, as the garment is seen from the front.
  std::vector<const Piece*> order;
  for (const PieceId id : {PieceId::Back, PieceId::Sleeve, PieceId::Front, PieceId::RightFront, PieceId::LeftFront})
    if (const Piece* p = draft.piece(id)) order.push_back(p);
  if (o.perRow == 0) // in one row the sleeve comes last
    std::rotate(order.begin() + 1, order.begin() + 2, order.end());
  const std::size_t perRow = o.perRow == 0 ? order.size() : std::size_t(o.perRow);
  const double gap = 2.0 * o.textHeight;
  double top = 0;
  for (std::size_t first = 0; first < order.size(); first += perRow) {
    const std::size_t last = std::min(first + perRow, order.size());
    std::vector<Group> row;
    double high = 0, low = 0, x = 0;
    for (std::size_t i = first; i < last; ++i) row.push_back(drawer.draw(*order[i]));
    for (Group& g : row) { // cast-on edges on one line
      const Box box = g.box();
      moveGroup(g, Vec2(x - box.low.x(), 0));
      x += box.size().x() + gap;
      high = std::max(high, box.high.y()), low = std::min(low, box.low.y());
    }
    for (Group& g : row) {
      moveGroup(g, Vec2(-0.5 * (x - gap), top - high));
      picture.groups.push_back(std::move(g));
    }
    top += low - high - gap;
  }
  return picture;
}

} // namespace scye
