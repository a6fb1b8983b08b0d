#include "knit/knit_garment.h"

#include "knit/piece_plan.h"
#include "knit/rounded_sizes.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

ShapingStyle styleOf(const GarmentDraft& g) {
  ShapingStyle style;
  style.fidelity = g.sizes[Field::Fidelity];
  style.everyRow = g.design.yes(Choice::EveryRow);
  return style;
}

ArmholeRequest armholeRequest(const Lattice& l, const BodiceLattice& counts,
                              const ShapingStyle& style) {
  return {.curves = {armholeCurve(armholeOnStitches(l, counts)),
                     armholeCurve(armholeOnStitches(l, counts, CrossWidths::Whole))},
          .size = l.size,
          .underarm = counts.underarm,
          .taken = counts.taken,
          .grown = counts.grown,
          .rows = l.armholeRows(),
          .style = style};
}

// Whether a row's shaping finds its stitches: two for each decrease, one for each increase.
bool canBeShaped(const RowLine& line) {
  double needed = 0, there = line.rightEdge - line.leftEdge;
  for (const Act& a : line.acts) {
    if (a.kind == ActKind::Decrease) needed += 2, there += a.stitches.value();
    if (a.kind == ActKind::Increase) needed += 1, there -= a.stitches.value();
  }
  return there >= needed;
}

// Whether what is bound off to close a piece is what is on the needle.
bool closesAll(const RowLine& line, double before) {
  return std::none_of(line.acts.begin(), line.acts.end(), [&](const Act& a) {
    return a.kind == ActKind::Close && line.acts.size() == 1 &&
           std::abs(a.stitches.value() - before) > 1e-9;
  });
}

class Knitting {
public:
  explicit Knitting(const GarmentDraft& g) : g_(g) {
    k_.gaugeUsable =
        10 / g.sizes.stitch.width <= kFinestGauge && 10 / g.sizes.stitch.height <= 2 * kFinestGauge;
    if (!k_.gaugeUsable) return;
    k_.lattice = latticeOf(g);
    k_.easeWanted = g.cap.easeWanted;
  }

  KnitGarment run() {
    if (!k_.gaugeUsable) return std::move(k_);
    const Lattice& l = k_.lattice;
    const ShapingStyle style = styleOf(g_);
    shape(style);
    k_.left.armhole = k_.backArmhole.left + k_.frontArmhole.right;
    k_.right.armhole = k_.backArmhole.right + k_.frontArmhole.left;
    bodice(style);
    sleeves();
    k_.deviation =
        std::max({k_.backArmhole.deviation, k_.frontArmhole.deviation, k_.cap.deviation});
    if (const KnitPiece* front = k_.piece(PieceId::RightFront))
      k_.buttonholes = scye::buttonholes(g_, l, front->neckRow);
    k_.rounded = roundedSizes(g_, k_);
    return std::move(k_);
  }

private:
  void add(KnitPiece piece) {
    if (worksOut(piece))
      k_.pieces.push_back(std::move(piece));
    else
      k_.impossible.push_back(piece.id);
  }

  void bodice(const ShapingStyle& style) {
    const BodicePlan plan{g_, k_.lattice, style};
    add(wholePiece(plan, PieceId::Back, k_.lattice.back, k_.backArmhole.schedule));
    if (!g_.sizes.style.jacket()) {
      add(wholePiece(plan, PieceId::Front, k_.lattice.front, k_.frontArmhole.schedule));
      return;
    }
    for (const PieceId id : {PieceId::LeftFront, PieceId::RightFront})
      add(jacketFront(plan, id, k_.frontArmhole.schedule));
  }

  // How far the underarm bind-off may be from the drafted one, in stitches: by one, for
  // neighbouring designs shall hardly differ; by two where stitches are fine or much is taken away,
  // unless it was set.
  [[nodiscard]] double underarmWithin() const {
    constexpr double kOne = 1.25, kTwo = 2.25, kFine = 10.0 / 27; // cm a stitch
    const Lattice& l = k_.lattice;
    const bool deep = l.size.across(std::max(l.back.away, l.front.away)) > kMuchTaken;
    const bool set = g_.sizes.origin(Field::UnderarmBack) == Origin::Set ||
                     g_.sizes.origin(Field::UnderarmFront) == Origin::Set;
    return (deep || l.size.width <= kFine) && !set ? kTwo : kOne;
  }

  // Armholes and cap together; they settle the underarm bind-off and the sleeve's width.
  void shape(const ShapingStyle& style) {
    Lattice& l = k_.lattice;
    ScyeRequest request{.oneSchedule = l.oneArmhole};
    const double drafted = g_.sizes[Field::UnderarmBack] / l.size.width;
    const double within = underarmWithin();
    for (const int by : {0, 1, -1, 2, -2}) {
      const Stitches moved(by);
      if (by != 0 && std::abs((l.back.underarm + moved).value() - drafted) > within) continue;
      Lattice other = l;
      moveUnderarm(other, moved);
      const Stitches least = std::min(l.back.underarm, l.front.underarm);
      if (by != 0 && (least == Stitches(0) || least + moved < Stitches(1) ||
                      other.back.underarm >= l.back.away || other.front.underarm >= l.front.away))
        continue;
      UnderarmOption option{moved, armholeRequest(other, other.back, style),
                            armholeRequest(other, other.front, style)};
      option.back.printedAlone = option.front.printedAlone = by == 0;
      if (l.oneArmhole)
        option.back.curves.insert(option.back.curves.end(), option.front.curves.begin(),
                                  option.front.curves.end());
      request.options.push_back(std::move(option));
    }
    request.cap = capRequest(g_, l);
    request.backShare = uprightBackShare(g_);
    ScyeShaping shaping = shapeScye(request);
    k_.backArmhole = std::move(shaping.back), k_.frontArmhole = std::move(shaping.front);
    k_.cap = std::move(shaping.cap);
    moveUnderarm(l, request.options[shaping.option].moved);
    if (k_.cap.knittable()) setSleeveWidth(l, g_, k_.cap.width);
  }

  // The left sleeve is the right one's mirror image; where front and back half are alike they are
  // the same piece.
  void sleeves() {
    const Lattice& l = k_.lattice;
    k_.capKnitted = k_.cap.knittable();
    if (!k_.capKnitted) return add(caplessSleeve(l));
    k_.left.cap = k_.cap.leftSleeve(), k_.right.cap = k_.cap.rightSleeve();
    k_.right.capRight = k_.left.capLeft = k_.cap.front;
    k_.right.capLeft = k_.left.capRight = k_.cap.back;
    add(sleevePiece(l, PieceId::Sleeve, k_.cap.front, k_.cap.back));
    if (k_.cap.front != k_.cap.back)
      add(sleevePiece(l, PieceId::LeftSleeve, k_.cap.back, k_.cap.front));
  }

  const GarmentDraft& g_;
  KnitGarment k_;
};

} // namespace

bool worksOut(const KnitPiece& piece) {
  for (const Section& s : piece.sections) {
    const bool splits = s.id == SectionId::Undivided && piece.sections.size() > 1;
    double before = s.rightEdge - s.leftEdge;
    for (const RowLine& line : piece.rows) {
      if (line.section != s.id) continue;
      if (!closesAll(line, before)) return false;
      before = line.rightEdge - line.leftEdge;
      const double stitches = line.rightEdge - line.leftEdge;
      const bool last = line.row == s.last && !splits;
      if (last ? std::abs(stitches) > 1e-9 : stitches < 0.5) return false;
      if (!last && !canBeShaped(line)) return false;
    }
  }
  return true;
}

const KnitPiece* KnitGarment::piece(PieceId id) const {
  const auto at =
      std::find_if(pieces.begin(), pieces.end(), [&](const KnitPiece& p) { return p.id == id; });
  return at == pieces.end() ? nullptr : &*at;
}

double KnitGarment::mismatch() const {
  const double l = left.mismatch(easeWanted), r = right.mismatch(easeWanted);
  return std::abs(l) > std::abs(r) ? l : r;
}

CapRequest capRequest(const GarmentDraft& g, const Lattice& l) {
  return {.size = l.size,
          .widths = sleeveWidths(l, g),
          .selvedge = l.selvedge,
          .crown = 2 * g.cap.back.crownHalf,
          .height = g.cap.height,
          .lowerFullness = g.cap.back.lowerFullness,
          .upperFullness = g.cap.back.upperFullness,
          .front = {.lean = -g.cap.lean},
          .back = {.lean = g.cap.lean},
          .ease = g.cap.easeWanted,
          .style = styleOf(g)};
}

std::optional<double> uprightBackShare(const GarmentDraft& g) {
  const double total = g.cap.cap();
  if (g.cap.lean != 0 || !(total > 0)) return std::nullopt;
  return (g.cap.capBack - g.cap.crownMark) / total;
}

KnitGarment knitGarment(const GarmentDraft& draft) {
  return Knitting(draft).run();
}

} // namespace scye
