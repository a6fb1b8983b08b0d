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

// The drafted armhole with its measures on the lattice.
ArmholeShaping armholeOf(const Lattice& l, const BodiceLattice& counts, const ShapingStyle& style) {
  ArmholeShape a = counts.drafted;
  const double w = l.size.width;
  a.halfBust = counts.right * w;
  a.underarm = counts.underarm * w;
  a.halfCross = (counts.right - counts.underarm - counts.taken) * w;
  a.halfShoulder = a.halfCross + counts.grown * w;
  a.depth = l.armholeRows() * l.size.height;
  return shapeArmhole({.curve = armholeCurve(a),
                       .size = l.size,
                       .underarm = Stitches(counts.underarm),
                       .taken = Stitches(counts.taken),
                       .grown = Stitches(counts.grown),
                       .rows = Rows(l.armholeRows()),
                       .style = style});
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

// Whether there are stitches in every row and none at the end of each side.
bool worksOut(const KnitPiece& piece) {
  for (const Section& s : piece.sections) {
    const bool splits = s.id == SectionId::Body && piece.sections.size() > 1;
    for (const RowLine& line : piece.rows) {
      if (line.section != s.id) continue;
      const double stitches = line.rightEdge - line.leftEdge;
      const bool last = line.row == s.last && !splits;
      if (last ? std::abs(stitches) > 1e-9 : stitches < 0.5) return false;
      if (!last && !canBeShaped(line)) return false;
    }
  }
  return true;
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
    k_.backArmhole = armholeOf(l, l.back, style);
    const bool alike = l.front.drafted == l.back.drafted && l.front.taken == l.back.taken &&
                       l.front.grown == l.back.grown && l.front.underarm == l.back.underarm;
    k_.frontArmhole = alike ? k_.backArmhole : armholeOf(l, l.front, style);
    k_.left.armhole = k_.backArmhole.left + k_.frontArmhole.right;
    k_.right.armhole = k_.backArmhole.right + k_.frontArmhole.left;
    bodice(style);
    sleeves(style);
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
    if (g_.design.as<Garment>(Choice::Garment) == Garment::Pullover) {
      add(wholePiece(plan, PieceId::Front, k_.lattice.front, k_.frontArmhole.schedule));
      return;
    }
    for (const PieceId id : {PieceId::LeftFront, PieceId::RightFront})
      add(jacketFront(plan, id, k_.frontArmhole.schedule));
  }

  void sleeves(const ShapingStyle& style) {
    const Lattice& l = k_.lattice;
    CapRequest request{.size = l.size,
                       .width = Stitches(l.sleeveWidth),
                       .underarm = Stitches(l.back.underarm),
                       .selvedge = Stitches(l.selvedge),
                       .crown = g_.sizes[Field::CrownWidth],
                       .lowerFullness = g_.cap.back.lowerFullness,
                       .upperFullness = g_.cap.back.upperFullness,
                       .target = 0.5 * (k_.left.armhole + k_.right.armhole) + k_.easeWanted,
                       .armhole = k_.backArmhole.schedule.runs,
                       .style = style};
    const bool halvesDiffer = g_.cap.lean != 0 || l.back.underarm != l.front.underarm;
    if (halvesDiffer ? !twoSleeves(request) : !oneSleeve(request)) add(caplessSleeve(l));
  }

  bool oneSleeve(const CapRequest& request) {
    k_.cap = shapeCap(request);
    if (!k_.cap.knittable()) return false;
    k_.capKnitted = true;
    for (ArmholeFit* fit : {&k_.left, &k_.right}) {
      fit->cap = k_.cap.right + k_.cap.left;
      fit->capRight = fit->capLeft = k_.cap.schedule;
    }
    add(sleevePiece(k_.lattice, PieceId::Sleeve, k_.cap.schedule, k_.cap.schedule));
    return true;
  }

  // Right sleeve: its right edge is sewn to the front. Left sleeve: its left edge.
  bool twoSleeves(const CapRequest& base) {
    const Lattice& l = k_.lattice;
    const double ease = k_.easeWanted, total = g_.cap.capBack + g_.cap.capFront;
    const double backShare = total > 0 ? g_.cap.capBack / total : 0.5;
    const auto request = [&](const ArmholeFit& fit, double back, double front, bool right) {
      HalvesRequest h{base, 0, 0, right ? -g_.cap.lean : g_.cap.lean, {}};
      const bool leans = g_.cap.lean != 0;
      // A leaning cap fits each half to its own side; an upright one moves only the shoulder mark.
      const double backTarget =
          leans ? back + ease * back / (back + front) : backShare * (fit.armhole + ease);
      const double frontTarget = fit.armhole + ease - backTarget;
      h.rightTarget = right ? frontTarget : backTarget;
      h.leftTarget = right ? backTarget : frontTarget;
      h.cap.underarm = Stitches(right ? l.front.underarm : l.back.underarm);
      h.leftUnderarm = Stitches(right ? l.back.underarm : l.front.underarm);
      return h;
    };
    const HalvesShaping r =
        shapeCapHalves(request(k_.right, k_.backArmhole.right, k_.frontArmhole.left, true));
    const HalvesShaping s =
        shapeCapHalves(request(k_.left, k_.backArmhole.left, k_.frontArmhole.right, false));
    k_.cap = r.right;
    if (!r.knittable() || !s.knittable()) return false;
    k_.capKnitted = true;
    k_.cap.deviation =
        std::max({r.right.deviation, r.left.deviation, s.right.deviation, s.left.deviation});
    k_.right.cap = r.right.right + r.left.left;
    k_.left.cap = s.right.right + s.left.left;
    k_.right.capRight = r.right.schedule, k_.right.capLeft = r.left.schedule;
    k_.left.capRight = s.right.schedule, k_.left.capLeft = s.left.schedule;
    add(sleevePiece(l, PieceId::Sleeve, r.right.schedule, r.left.schedule));
    add(sleevePiece(l, PieceId::LeftSleeve, s.right.schedule, s.left.schedule));
    return true;
  }

  const GarmentDraft& g_;
  KnitGarment k_;
};

} // namespace

const KnitPiece* KnitGarment::piece(PieceId id) const {
  const auto at =
      std::find_if(pieces.begin(), pieces.end(), [&](const KnitPiece& p) { return p.id == id; });
  return at == pieces.end() ? nullptr : &*at;
}

double KnitGarment::mismatch() const {
  const double l = left.mismatch(easeWanted), r = right.mismatch(easeWanted);
  return std::abs(l) > std::abs(r) ? l : r;
}

KnitGarment knitGarment(const GarmentDraft& draft) {
  return Knitting(draft).run();
}

} // namespace scye
