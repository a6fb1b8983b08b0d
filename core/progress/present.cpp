#include "progress/present.h"

#include "knit/rounded_sizes.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

bool isSleeve(PieceId id) {
  return id == PieceId::Sleeve || id == PieceId::LeftSleeve;
}

// Width or height of a stitch counted in a piece, blocked.
std::optional<double> counted(const PieceWork& p, Reading count, Reading over, bool across,
                              const GaugeReport& gauge) {
  const auto n = p.measured[count];
  if (!n || !(*n > 0)) return std::nullopt;
  return blocked(p.measured[over].value_or(kCountedOver), p.measured.as, across, gauge) / *n;
}

std::optional<double> meanOf(const Work& work, Reading count, Reading over, bool across,
                             const GaugeReport& gauge) {
  double sum = 0;
  int n = 0;
  for (const PieceWork& p : work.pieces)
    if (const auto size = counted(p, count, over, across, gauge)) sum += *size, ++n;
  return n > 0 ? std::optional(sum / n) : std::nullopt;
}

bool ofEdge(Shapes s) {
  return s == Shapes::Underarm || s == Shapes::Armhole || s == Shapes::Cap;
}

// The wearer's armhole and cap at one side.
struct Sides {
  const KnitPiece *back, *front, *sleeve;
  EdgeSide backEdge, frontEdge;
};

Sides sidesOf(const KnitGarment& k, bool left) {
  const bool pullover = k.piece(PieceId::Front) != nullptr;
  Sides s{};
  s.back = k.piece(PieceId::Back);
  s.front = k.piece(pullover ? PieceId::Front : left ? PieceId::LeftFront : PieceId::RightFront);
  s.sleeve = plannedPiece(k, left ? PieceId::LeftSleeve : PieceId::Sleeve);
  s.backEdge = left ? EdgeSide::Left : EdgeSide::Right;
  s.frontEdge = left ? EdgeSide::Right : EdgeSide::Left;
  return s;
}

// The schedule of the piece's edge, said as in `told` where it is the same.
Schedule asTold(const Schedule& told, const KnitPiece& piece, EdgeSide edge) {
  Schedule now = scheduleIn(piece, edge);
  const bool same = now.underarm == told.underarm && now.rows == told.rows &&
                    now.crown == told.crown &&
                    runEvents(now.runs, Rows(0), Rows(0)) == runEvents(told.runs, Rows(0), Rows(0));
  return same ? told : now;
}

void takeSide(KnitGarment& k, const Work& work, const GarmentDraft& draft, bool left) {
  const Sides s = sidesOf(k, left);
  ArmholeFit& fit = left ? k.left : k.right;
  if (s.back && s.front) {
    fit.armhole = realArmhole(*s.back, s.backEdge, work, draft) +
                  realArmhole(*s.front, s.frontEdge, work, draft);
    fit.backStitch = realArmholeStitch(*s.back, work, draft);
    fit.frontStitch = realArmholeStitch(*s.front, work, draft);
  }
  if (!s.sleeve || !k.capKnitted) return;
  fit.capRight = asTold(fit.capRight, *s.sleeve, EdgeSide::Right);
  fit.capLeft = asTold(fit.capLeft, *s.sleeve, EdgeSide::Left);
  const StitchSize size = fabricOf(work, left ? PieceId::LeftSleeve : PieceId::Sleeve, draft).size;
  const Stitches selvedge = k.lattice.selvedge;
  fit.capStitch = size;
  fit.cap = realCap(*s.sleeve, EdgeSide::Right, size, selvedge) +
            realCap(*s.sleeve, EdgeSide::Left, size, selvedge);
}

void takeLattice(KnitGarment& k) {
  Lattice& l = k.lattice;
  if (const KnitPiece* back = k.piece(PieceId::Back)) {
    l.underarmRow = back->underarmRow, l.shoulderRow = back->shoulderRow;
    const KnitPiece* front = k.piece(PieceId::Front);
    if (!front) front = k.piece(PieceId::RightFront);
    if (front) l.front.longer = front->underarmRow - back->underarmRow;
  }
  if (const KnitPiece* sleeve = k.piece(PieceId::Sleeve)) {
    l.sleeveUnderarmRow = sleeve->underarmRow;
    for (const RowLine& line : sleeve->rows)
      if (line.row == sleeve->underarmRow - Rows(1)) l.sleeveWidth = line.stitches();
  }
}

void takeSchedules(KnitGarment& k) {
  const auto take = [&](ArmholeShaping& shaping, const KnitPiece* piece, EdgeSide edge) {
    if (!piece) return;
    shaping.schedule = asTold(shaping.schedule, *piece, edge);
    shaping.right = edgeLength(shaping.schedule, EdgeSide::Right, k.lattice.size);
    shaping.left = edgeLength(shaping.schedule, EdgeSide::Left, k.lattice.size);
  };
  take(k.backArmhole, k.piece(PieceId::Back), EdgeSide::Right);
  const KnitPiece* front = k.piece(PieceId::Front);
  take(k.frontArmhole, front ? front : k.piece(PieceId::RightFront),
       front ? EdgeSide::Right : EdgeSide::Left);
  k.lattice.back.underarm = k.backArmhole.schedule.underarm;
  k.lattice.front.underarm = k.frontArmhole.schedule.underarm;
  const KnitPiece* sleeve = k.piece(PieceId::Sleeve);
  if (!sleeve || !k.capKnitted) return;
  const Stitches selvedge = k.lattice.selvedge;
  const StitchSize& size = k.lattice.size;
  k.cap.front = asTold(k.cap.front, *sleeve, EdgeSide::Right);
  k.cap.back = asTold(k.cap.back, *sleeve, EdgeSide::Left);
  k.cap.frontRight = edgeLength(k.cap.front, EdgeSide::Right, size, selvedge);
  k.cap.frontLeft = edgeLength(k.cap.front, EdgeSide::Left, size, selvedge);
  k.cap.backRight = edgeLength(k.cap.back, EdgeSide::Right, size, selvedge);
  k.cap.backLeft = edgeLength(k.cap.back, EdgeSide::Left, size, selvedge);
}

} // namespace

double blocked(double cm, MeasuredAs as, bool across, const GaugeReport& gauge) {
  if (as == MeasuredAs::Blocked) return cm;
  return cm * (1 + (across ? gauge.washedAcross() : gauge.washedAlong()).value_or(0));
}

PieceFabric fabricOf(const Work& work, PieceId piece, const GarmentDraft& draft) {
  const GaugeReport gauge = gaugeReport(draft.design);
  PieceFabric fabric{draft.sizes.stitch};
  const PieceWork* own = work.find(piece);
  const auto take = [&](double& size, bool& isCounted, Reading count, Reading over, bool across) {
    std::optional<double> found;
    if (own) found = counted(*own, count, over, across, gauge);
    isCounted = found.has_value();
    if (!found) found = meanOf(work, count, over, across, gauge);
    if (found) size = *found, fabric.known = true;
  };
  take(fabric.size.width, fabric.stitchesCounted, Reading::StitchCount, Reading::Across, true);
  take(fabric.size.height, fabric.rowsCounted, Reading::RowCount, Reading::Along, false);
  return fabric;
}

Schedule scheduleIn(const KnitPiece& piece, EdgeSide edge) {
  Schedule schedule;
  const bool sleeve = isSleeve(piece.id);
  Rows at;
  for (const Section& section : piece.sections)
    for (const Act& a : section.acts) {
      if (a.kind == ActKind::Close && sleeve) schedule.crown = a.stitches;
      if (a.side != edge || !ofEdge(a.shapes)) continue;
      if (a.shapes == Shapes::Underarm) {
        schedule.underarm = a.stitches;
        continue;
      }
      // Bind-offs at the left come a row later, and are told as those at the right.
      const bool off = a.kind == ActKind::BindOff;
      const Rows row = a.row - piece.underarmRow - Rows(off && edge == EdgeSide::Left ? 1 : 0);
      schedule.runs.push_back({off                           ? ShapingKind::BindOff
                               : a.kind == ActKind::Increase ? ShapingKind::Increase
                                                             : ShapingKind::Decrease,
                               a.stitches, row - at, 1, Rows(0)});
      at = row;
    }
  schedule.runs = joined(std::move(schedule.runs));
  schedule.rows = (sleeve ? piece.crownRow : piece.shoulderRow) - piece.underarmRow;
  return schedule;
}

EdgeLength realCap(const KnitPiece& sleeve, EdgeSide edge, const StitchSize& size,
                   Stitches selvedge) {
  return edgeLength(scheduleIn(sleeve, edge), edge, size, selvedge);
}

StitchSize realArmholeStitch(const KnitPiece& piece, const Work& work, const GarmentDraft& draft) {
  const StitchSize size = fabricOf(work, piece.id, draft).size;
  const PieceWork* p = work.find(piece.id);
  const auto measured = p ? p->measured[Reading::Armhole] : std::nullopt;
  if (!measured) return size;
  const auto alongRows = [&](EdgeSide side) {
    return edgeLength(scheduleIn(piece, side), side, size).mean();
  };
  // Of a piece with two armholes it is either of them: they differ by the row that bind-offs force.
  const double planned = piece.id == PieceId::RightFront ? alongRows(EdgeSide::Left)
                         : piece.id == PieceId::LeftFront
                             ? alongRows(EdgeSide::Right)
                             : 0.5 * (alongRows(EdgeSide::Right) + alongRows(EdgeSide::Left));
  if (!(planned > 0)) return size;
  // An edge runs up the piece more than across it.
  const double cm = blocked(*measured, p->measured.as, false, gaugeReport(draft.design));
  return {size.width * cm / planned, size.height * cm / planned};
}

EdgeLength realArmhole(const KnitPiece& piece, EdgeSide edge, const Work& work,
                       const GarmentDraft& draft) {
  return edgeLength(scheduleIn(piece, edge), edge, realArmholeStitch(piece, work, draft));
}

KnitGarment presentGarment(const GarmentDraft& draft, KnitGarment k, const Work& work) {
  if (work.pieces.empty() || !k.gaugeUsable) return k;
  for (const PieceWork& p : work.pieces) {
    KnitPiece* there = nullptr;
    for (KnitPiece& piece : k.pieces)
      if (piece.id == p.piece) there = &piece;
    if (there)
      *there = p.plan;
    else if (p.piece == PieceId::LeftSleeve && k.capKnitted)
      k.pieces.push_back(p.plan);
  }
  // Two sleeves that are knitted alike are one piece of the directions.
  if (const KnitPiece* left = k.piece(PieceId::LeftSleeve)) {
    const KnitPiece* right = k.piece(PieceId::Sleeve);
    if (right && right->rows == left->rows && right->size == left->size)
      std::erase_if(k.pieces, [](const KnitPiece& p) { return p.id == PieceId::LeftSleeve; });
  }
  takeLattice(k);
  takeSchedules(k);
  takeSide(k, work, draft, false);
  takeSide(k, work, draft, true);
  k.rounded = roundedSizes(draft, k);
  return k;
}

} // namespace scye
