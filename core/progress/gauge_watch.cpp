#include "progress/gauge_watch.h"

#include "progress/plan_ahead.h"
#include "progress/refit.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace scye {
namespace {

bool isSleeve(PieceId id) {
  return id == PieceId::Sleeve || id == PieceId::LeftSleeve;
}

// What was counted in a piece, as a swatch of its own, blocked.
std::optional<SwatchGauge> countedIn(const PieceWork& p, bool across, const GaugeReport& gauge) {
  const auto n = p.measured[across ? Reading::StitchCount : Reading::RowCount];
  if (!n || !(*n > 0)) return std::nullopt;
  const double over = p.measured[across ? Reading::Across : Reading::Along].value_or(kCountedOver);
  const std::array counts{SwatchCount{*n, blocked(over, p.measured.as, across, gauge)}};
  return gaugeOf(counts);
}

Rows lastWorkedRow(const PieceWork& p) {
  return p.worked > 0 ? p.plan.rows[std::size_t(p.worked) - 1].row : Rows(0);
}

// The other bodice pieces, whose seams meet this one's.
bool othersPastUnderarm(const Work& work, PieceId piece) {
  return std::any_of(work.pieces.begin(), work.pieces.end(), [&](const PieceWork& p) {
    return p.piece != piece && !isSleeve(p.piece) && lastWorkedRow(p) >= p.plan.underarmRow;
  });
}

class Watch {
public:
  Watch(const GarmentDraft& draft, const KnitGarment& design, const Work& work)
      : draft_(draft), design_(design), work_(work), gauge_(gaugeReport(draft.design)) {}

  std::vector<GaugeWarning> all() {
    for (const PieceWork& p : work_.pieces)
      if (p.begun())
        for (const bool across : {true, false})
          look(p, across);
    return std::move(out_);
  }

private:
  void look(const PieceWork& p, bool across) {
    const auto here = countedIn(p, across, gauge_);
    const auto& swatch = across ? gauge_.across : gauge_.along;
    if (!here || !swatch) return;
    if (fabricOf(work_, p.piece, draft_).size.up(lastWorkedRow(p)) < kWatchedFrom) return;
    const UncertainSize a = here->size, b = swatch->size;
    if (a.low() <= b.high() && b.low() <= a.high()) return;
    GaugeWarning w{.piece = p.piece, .across = across};
    w.perTen = 10 / a.value, w.swatchPerTen = 10 / b.value;
    w.share = a.value / b.value - 1;
    w.largerNeedles = w.share < 0;
    const bool sleeve = isSleeve(p.piece);
    w.where = across   ? (sleeve ? Field::UpperArm : Field::Bust)
              : sleeve ? Field::SleeveLength
                       : Field::HemToUnderarm;
    w.wanted = across   ? draft_.sizes.finished(w.where)
               : sleeve ? draft_.sleeve.length
                        : draft_.bodice.at.underarm - draft_.bodice.at.fold;
    w.comesTo = w.wanted * (1 + w.share);
    w.canRecount = !p.finished() && recounted(draft_, design_, work_, p.piece).has_value();
    out_.push_back(w);
  }

  const GarmentDraft& draft_;
  const KnitGarment& design_;
  const Work& work_;
  GaugeReport gauge_;
  std::vector<GaugeWarning> out_;
};

} // namespace

bool isLongEnough(const PieceWork& piece, const GarmentDraft& draft) {
  return draft.sizes.stitch.up(lastWorkedRow(piece)) >= kWatchedFrom;
}

std::vector<GaugeWarning> gaugeWarnings(const GarmentDraft& draft, const KnitGarment& design,
                                        const Work& work) {
  return Watch(draft, design, work).all();
}

std::optional<Work> recounted(const GarmentDraft& draft, const KnitGarment& design,
                              const Work& work, PieceId piece) {
  if (isSleeve(piece)) {
    const Refit again = refit(draft, design, work);
    const bool stuck = std::any_of(again.ripBack.begin(), again.ripBack.end(),
                                   [&](const RipBack& r) { return r.piece == piece; });
    return stuck ? std::nullopt : std::optional(again.work);
  }
  const PieceWork* p = work.find(piece);
  if (!p || p->finished() || othersPastUnderarm(work, piece)) return std::nullopt;
  GarmentDraft real = draft;
  real.sizes.stitch = fabricOf(work, piece, draft).size;
  const KnitGarment target = knitGarment(real);
  const KnitPiece* to = plannedPiece(target, piece);
  if (!to) return std::nullopt;
  auto plan = continued(p->plan, fixedLines(p->plan, p->worked), *to);
  if (!plan) return std::nullopt;
  Work out = work;
  PieceWork* own = out.find(piece);
  own->plan = std::move(*plan), own->plan.size = real.sizes.stitch, own->ownPlan = true;
  const Rows underarm = own->plan.underarmRow; // pieces that are begun below move `own`
  // What is sewn to it follows, in the same fabric and with as many rows.
  const KnitGarment present = presentGarment(draft, design, work);
  for (const PieceId other : piecesToKnit(present)) {
    const KnitPiece* next = plannedPiece(target, other);
    if (other == piece || isSleeve(other) || !next) continue;
    PieceWork* o = workOn(out, present, design, other);
    if (!o) continue;
    auto same = continued(o->plan, fixedLines(o->plan, o->worked), *next);
    if (!same) return std::nullopt;
    if (const Rows more = underarm - same->underarmRow - (to->underarmRow - next->underarmRow);
        more != Rows(0)) {
      // Just below its own underarm: a front with short rows is longer.
      same = strayed(*same, same->underarmRow - Rows(1) + std::min(Rows(0), more), more);
      if (!same) return std::nullopt;
    }
    o->plan = std::move(*same), o->plan.size = real.sizes.stitch, o->ownPlan = true;
  }
  return out;
}

} // namespace scye
