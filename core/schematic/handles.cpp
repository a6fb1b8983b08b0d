#include "schematic/handles.h"

#include "curve/cap_curve.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

class Finder {
public:
  Finder(const GarmentDraft& g, PieceId piece)
      : g_(g), piece_(piece), unknown_(workedField(g.sizes.style.workedOut)) {}

  std::vector<Handle> all() {
    if (piece_ == PieceId::Sleeve)
      sleeve();
    else
      bodice();
    return std::move(handles_);
  }

private:
  [[nodiscard]] bool moves(const HandleAxis& axis) const {
    if (axis.field == unknown_) return false;
    const auto ease = axis.finished ? easeOf(axis.field) : std::nullopt;
    return !ease || *ease != unknown_ || g_.sizes.fromGarment(axis.field);
  }
  void add(std::string_view key, const Vec2& at, std::optional<HandleAxis> level,
           std::optional<HandleAxis> upright) {
    if (level && !moves(*level)) level.reset();
    if (upright && !moves(*upright)) upright.reset();
    if (level || upright) handles_.push_back({key, at, level, upright});
  }
  // A width on both sides of the middle, taken at its end.
  [[nodiscard]] static HandleAxis width(Field f, bool finished, double side, double gain = 2) {
    return {f, finished, {side, 0}, gain, HandleSnap::WholeStitches};
  }
  [[nodiscard]] static HandleAxis height(Field f, bool finished, double up) {
    return {f, finished, {0, up}, 1, HandleSnap::WholeRows};
  }
  // A girth of which this piece has a part that ends at x.
  [[nodiscard]] HandleAxis girth(Field f, double x, double side) const {
    return width(f, true, side, g_.sizes.finished(f) / std::max(1.0, x));
  }

  // x of the outline at height y, on the side of `s`.
  [[nodiscard]] double sideAt(double y, double s) const {
    double x = 0;
    for (const PieceEdge& e : g_.piece(piece_)->edges)
      for (const Cubic& c : e.path.segments()) {
        const double y0 = c.start().y(), y1 = c.end().y();
        if (y0 == y1 || y < std::min(y0, y1) || y > std::max(y0, y1)) continue;
        x = std::max(x, s * c.at((y - y0) / (y1 - y0)).x());
      }
    return x;
  }

  void bodice() {
    const Bodice& b = g_.bodice;
    const bool back = piece_ == PieceId::Back, whole = back || piece_ == PieceId::Front;
    const BodiceHeights& at = back ? b.at : b.frontAt;
    const ArmholeShape& armhole = back ? b.back : b.front;
    const double s = piece_ == PieceId::RightFront ? -1 : 1;
    const double hem = sideAt(at.fold, s);
    add("hem", {s * hem, at.fold},
        at.hip >= 0 ? std::optional(girth(Field::Hip, hem, s)) : std::nullopt,
        height(Field::HemToUnderarm, true, -1));
    if (g_.sizes.style.waisted() && at.waist > at.hem && at.waist < at.underarm) {
      const double waist = sideAt(at.waist, s);
      add("waist", {s * waist, at.waist}, girth(Field::Waist, waist, s),
          HandleAxis{Field::WaistHeight, false, {0, 1}, 1, HandleSnap::WholeRows});
    }
    add("underarm", {s * armhole.halfBust, at.underarm}, girth(Field::Bust, armhole.halfBust, s),
        height(Field::ArmholeDepth, true, -1));
    add(back ? "crossBack" : "crossFront",
        {s * armhole.halfCross, at.underarm + std::max(0.5, armhole.rise) * armhole.depth},
        width(back ? Field::CrossBack : Field::CrossFront, true, s), std::nullopt);
    add("shoulderTip", {s * armhole.halfShoulder, at.tip}, width(Field::CrossShoulder, true, s),
        height(Field::ShoulderDrop, false, -1));
    add("neckPoint", {s * b.halfNeck, at.neckPoint}, width(Field::NeckWidth, false, s),
        std::nullopt);
    const Field drop = back ? Field::BackNeckDrop : Field::FrontNeckDrop;
    if (at.neckPoint - at.neckLow > 1e-9)
      add("neckDrop", {whole ? 0 : s * b.openingX, at.neckLow}, std::nullopt,
          height(drop, false, -1));
  }

  void sleeve() {
    const CapMatch& m = g_.cap;
    const SleeveBody& sl = g_.sleeve;
    const bool own = g_.sizes.style.sleeve().ownCuff;
    add("cuff", {sl.halfCuff, 0}, width(own ? Field::CuffGirth : Field::Wrist, !own, 1),
        height(Field::SleeveLength, false, -1));
    add("upperArm", {sl.halfWidth, sl.length}, width(Field::UpperArm, true, 1), std::nullopt);
    const CapShape& half = m.front;
    const double span = half.span();
    if (span > 0.5) {
      const Cubic curve = capCurve(half, m.height);
      // The curve's knobs, as they lie on the right half.
      const auto knob = [&](int i) { return Vec2(curve.p[i].x(), sl.length + curve.p[i].y()); };
      add("lowerFullness", knob(1),
          HandleAxis{Field::LowerFullness, false, {-1, 0}, 1 / span, HandleSnap::Free},
          std::nullopt);
      add("upperFullness", knob(2),
          HandleAxis{Field::UpperFullness, false, {1, 0}, 1 / span, HandleSnap::Free},
          std::nullopt);
    }
    add("crown", {m.lean + m.back.crownHalf, sl.length + m.height},
        width(Field::CrownWidth, false, 1), height(Field::CapHeight, false, 1));
  }

  const GarmentDraft& g_;
  PieceId piece_;
  Field unknown_;
  std::vector<Handle> handles_;
};

} // namespace

std::vector<Handle> pieceHandles(const GarmentDraft& draft, PieceId piece) {
  return draft.piece(piece) ? Finder(draft, piece).all() : std::vector<Handle>{};
}

double handleValue(const GarmentDraft& draft, const HandleAxis& axis) {
  return axis.finished ? draft.sizes.finished(axis.field) : draft.sizes[axis.field];
}

std::optional<Design> withHandleValue(const Design& design, const GarmentDraft& draft,
                                      const HandleAxis& axis, double value) {
  if (!axis.finished) {
    const Source where = whereTaken(design, axis.field);
    if (check(axis.field, value, where)) return std::nullopt;
    return Design(design).set(axis.field, value, where);
  }
  Design next = withFinished(design, draft.sizes, axis.field, value);
  const auto refused = [&](Field f) {
    const auto given = next.given(f);
    return given && check(f, *given, next.source(f));
  };
  const auto ease = easeOf(axis.field);
  if (refused(axis.field) || (ease && refused(*ease))) return std::nullopt;
  return next;
}

double snapped(const GarmentDraft& draft, const HandleAxis& axis, double value) {
  const StitchSize& size = draft.sizes.stitch;
  const double unit = axis.snap == HandleSnap::WholeStitches ? size.width
                      : axis.snap == HandleSnap::WholeRows   ? size.height
                                                             : 0;
  const double step = unit * axis.gain;
  return step > 0 ? step * std::round(value / step) : value;
}

} // namespace scye
