#include "progress/refit.h"

#include "knit/piece_plan.h"
#include "progress/plan_ahead.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

bool isSleeve(PieceId id) {
  return id == PieceId::Sleeve || id == PieceId::LeftSleeve;
}

Stitches stitchesBelow(const KnitPiece& piece, Rows row) {
  for (const RowLine& line : piece.rows)
    if (line.section == SectionId::Undivided && line.row == row - Rows(1)) return line.stitches();
  return Stitches(0);
}

// Whether a row is knitted in the same stitch: of the lower edge, or above it.
bool sameStitch(const KnitPiece& a, const KnitPiece& b, Rows row) {
  const bool edge = row > Rows(0) && row <= a.hemRows;
  if (edge != (row > Rows(0) && row <= b.hemRows) || (row == a.foldRow) != (row == b.foldRow))
    return false;
  return !edge || (a.edge == b.edge && a.rib.kind == b.rib.kind);
}

// How many lines two pieces have in common from the cast-on.
int commonLines(const KnitPiece& a, const KnitPiece& b) {
  const auto same = [](const RowLine& x, const RowLine& y) {
    if (x.section != y.section || x.row != y.row || x.stitches() != y.stitches() ||
        x.waiting != y.waiting || x.acts.size() != y.acts.size())
      return false;
    for (std::size_t i = 0; i < x.acts.size(); ++i)
      if (x.acts[i].kind != y.acts[i].kind || x.acts[i].side != y.acts[i].side ||
          x.acts[i].stitches != y.acts[i].stitches || x.acts[i].from != y.acts[i].from)
        return false;
    return true;
  };
  const std::size_t most = std::min(a.rows.size(), b.rows.size());
  std::size_t n = 0;
  while (n < most && same(a.rows[n], b.rows[n]) && sameStitch(a, b, a.rows[n].row))
    ++n;
  return int(n);
}

// Sleeves planned for the armholes there are.
class Sleeves {
public:
  Sleeves(const GarmentDraft& draft, const KnitGarment& present, const Work& work)
      : work_(work), present_(present), draft_(draft) {}

  struct Planned {
    std::optional<KnitPiece> piece;
    int lines = 0; // of the old plan that stay
  };

  // Both of a pair that is not begun are planned together; a sleeve under way for itself.
  Planned plan(PieceId id) {
    const PieceWork* own = work_.find(id);
    const int worked = own ? own->worked : 0;
    if (worked == 0) return {fresh(id), 0};
    const int lines = fixedLines(own->plan, worked);
    return {ahead(id, own->plan, lines), lines};
  }

  // From which row of the plan there is a way, going back from `lines`.
  std::optional<std::pair<KnitPiece, int>> back(PieceId id, const KnitPiece& plan, int lines) {
    for (int n = lines - 2; n > 0; n -= 2) {
      if (plan.rows[std::size_t(n) - 1].rightSide()) --n;
      if (n <= 0) break;
      if (auto piece = ahead(id, plan, n)) return std::pair(std::move(*piece), n);
    }
    if (auto piece = fresh(id)) return std::pair(std::move(*piece), 0);
    return std::nullopt;
  }

  // Whether a sleeve as it is planned meets its armhole, in the fabric it is knitted in.
  [[nodiscard]] bool suits(PieceId id, const KnitPiece& plan) const {
    const StitchSize planned = plan.size.width > 0 ? plan.size : draft_.sizes.stitch;
    const StitchSize real = fabricOf(work_, id, draft_).size;
    const auto alike = [](double a, double b) { return std::abs(a - b) <= kSameFabric * b; };
    if (!alike(planned.width, real.width) || !alike(planned.height, real.height)) return false;
    return std::abs(off(id, plan, real)) <= CapBars::kSeam;
  }

  [[nodiscard]] std::optional<KnitPiece> likeTheOther(PieceId id, const KnitPiece& other) const {
    auto piece = mirroredSleeve(other);
    // That both are alike goes before the last millimetres of a seam.
    if (!piece || std::abs(off(id, *piece)) > CapBars::kSeamAtMost) return std::nullopt;
    return piece;
  }

  // cm, by which its cap is longer than armhole and ease, in the fabric it is knitted in.
  [[nodiscard]] double off(PieceId id, const KnitPiece& plan) const {
    return off(id, plan, fabricOf(work_, id, draft_).size);
  }

private:
  static constexpr double kSameFabric = 0.002; // a share; what counting cannot tell apart
  static bool left(PieceId id) { return id == PieceId::LeftSleeve; }
  [[nodiscard]] EdgeLength armhole(PieceId id) const {
    return (left(id) ? present_.left : present_.right).armhole;
  }

  // The garment's lattice in the sleeve's own fabric, on the bodice's counts.
  [[nodiscard]] Lattice latticeIn(const StitchSize& size, GarmentDraft& draft) const {
    draft.sizes.stitch = size;
    Lattice l = latticeOf(draft);
    l.back.underarm = present_.lattice.back.underarm;
    l.front.underarm = present_.lattice.front.underarm;
    return l;
  }

  [[nodiscard]] CapRequest ask(const Lattice& l, const GarmentDraft& draft) const {
    CapRequest r = capRequest(draft, l);
    r.back.underarm = l.back.underarm, r.front.underarm = l.front.underarm;
    r.armholes = {present_.left.armhole, present_.right.armhole};
    const double back = present_.backArmhole.left.mean() + present_.backArmhole.right.mean();
    const double front = present_.frontArmhole.left.mean() + present_.frontArmhole.right.mean();
    r.back.share = uprightBackShare(draft).value_or(back / (back + front));
    r.front.share = 1 - r.back.share;
    return r;
  }

  // A sleeve that is measured from the shoulder is the shorter below, the higher its cap.
  static void lengthFor(Lattice& l, const GarmentDraft& draft, double capHeight) {
    if (draft.sizes.style.sleeveFrom != SleeveFrom::Shoulder) return;
    const double length = draft.sleeve.length + draft.cap.height - capHeight;
    l.sleeveUnderarmRow = std::max(Rows(2), nearestEven(length / l.size.height)) + Rows(1);
    l.cuffRows = std::min(l.cuffRows, l.sleeveUnderarmRow - Rows(1));
  }

  [[nodiscard]] KnitPiece piece(const Lattice& l, PieceId id, const CapShaping& cap) const {
    KnitPiece p = left(id) ? sleevePiece(l, id, cap.back, cap.front)
                           : sleevePiece(l, id, cap.front, cap.back);
    p.size = l.size;
    return p;
  }

  // cm, by which its cap is longer than armhole and ease.
  [[nodiscard]] double off(PieceId id, const KnitPiece& p, const StitchSize& size) const {
    const Stitches selvedge = present_.lattice.selvedge;
    const EdgeLength cap =
        realCap(p, EdgeSide::Right, size, selvedge) + realCap(p, EdgeSide::Left, size, selvedge);
    return (cap - armhole(id)).mean() - draft_.cap.easeWanted;
  }
  [[nodiscard]] bool near(PieceId id, const KnitPiece& p, const StitchSize& size) const {
    return std::abs(off(id, p, size)) <= kRefitNear;
  }

  // The seam counts for less than the drawn shape where a cap is searched. Where it comes out too
  // far off, so much more or less is asked for, later half of it, and the nearest is taken.
  template <class Plan>
  [[nodiscard]] std::optional<KnitPiece> nearest(PieceId id, CapRequest r, const StitchSize& size,
                                                 Plan&& plan) const {
    constexpr int kTries = 6;
    std::optional<KnitPiece> best;
    double least = 0;
    for (int i = 0; i < kTries; ++i) {
      const CapShaping cap = shapeCap(r);
      if (!cap.knittable()) break;
      auto piece = plan(cap);
      if (!piece) break;
      const double miss = off(id, *piece, size);
      if (!best || std::abs(miss) < least) least = std::abs(miss), best = std::move(piece);
      if (least <= CapBars::kSeam) break;
      r.ease -= i < 2 ? miss : 0.5 * miss;
    }
    return best;
  }

  [[nodiscard]] std::optional<KnitPiece> fresh(PieceId id) const {
    GarmentDraft draft = draft_;
    const Lattice l = latticeIn(fabricOf(work_, id, draft_).size, draft);
    CapRequest r = ask(l, draft);
    // A pair is mirror images; beside a sleeve that is begun only its own armhole matters.
    const PieceWork* other = work_.find(left(id) ? PieceId::Sleeve : PieceId::LeftSleeve);
    if (other && other->begun()) r.armholes = {armhole(id), armhole(id)};
    return nearest(id, r, l.size, [&](const CapShaping& cap) -> std::optional<KnitPiece> {
      Lattice own = l;
      lengthFor(own, draft, cap.referenceHeight);
      setSleeveWidth(own, draft, cap.width);
      return piece(own, id, cap);
    });
  }

  [[nodiscard]] std::optional<KnitPiece> ahead(PieceId id, const KnitPiece& plan, int lines) const {
    GarmentDraft draft = draft_;
    Lattice l = latticeIn(fabricOf(work_, id, draft_).size, draft);
    CapRequest r = ask(l, draft);
    r.armholes = {armhole(id), armhole(id)};
    if (lines >= int(plan.rows.size())) return std::nullopt;
    const Rows row = plan.rows[std::size_t(lines) - 1].row;
    if (row >= plan.underarmRow) {
      auto cap = capAhead(plan, lines, r, armhole(id).mean() + r.ease, !left(id));
      if (!cap || !near(id, cap->piece, l.size)) return std::nullopt;
      return std::move(cap->piece);
    }
    if (const CapShaping trial = shapeCap(r); trial.knittable())
      lengthFor(l, draft, trial.referenceHeight);
    for (Stitches& width : r.widths)
      width = reachableWidth(plan, lines, l.sleeveUnderarmRow, width);
    r.widths.erase(std::unique(r.widths.begin(), r.widths.end()), r.widths.end());
    auto found = nearest(id, r, l.size, [&](const CapShaping& cap) {
      Lattice own = l;
      setSleeveWidth(own, draft, cap.width);
      auto led = continued(plan, lines, piece(own, id, cap));
      if (led) led->size = l.size;
      return led;
    });
    return found && near(id, *found, l.size) ? std::move(found) : std::nullopt;
  }

  const Work& work_;
  const KnitGarment& present_;
  const GarmentDraft& draft_;
};

std::array<SeamNow, 2> seamsOf(const KnitGarment& k) {
  const auto of = [](const ArmholeFit& fit) { return SeamNow{fit.armhole.mean(), fit.cap.mean()}; };
  return {of(k.right), of(k.left)};
}

// The design's piece for a physical one; a left sleeve may be its right one's.
KnitPiece designPiece(const KnitGarment& design, PieceId id) {
  KnitPiece piece = *plannedPiece(design, id);
  piece.id = id;
  return piece;
}

std::optional<KnitPiece> keptPlan(const GarmentDraft& draft, const KnitGarment& design,
                                  const Work& work, const PieceWork& p) {
  if (!isSleeve(p.piece))
    return continued(p.plan, fixedLines(p.plan, p.worked), designPiece(design, p.piece));
  const KnitGarment present = presentGarment(draft, design, work);
  return Sleeves(draft, present, work).plan(p.piece).piece;
}

void addRipBack(Refit& refit, Sleeves& sleeves, const PieceWork& own, int lines) {
  const auto back = sleeves.back(own.piece, own.plan, lines);
  if (!back) return;
  const int kept = back->second;
  const RowLine& last = own.plan.rows[std::size_t(std::max(0, kept - 1))];
  refit.ripBack.push_back({own.piece, last.section, last.row.value(), kept, own.finished()});
}

} // namespace

std::vector<PlanChange> planChanges(PieceId id, const KnitPiece& before, const KnitPiece& after) {
  std::vector<PlanChange> changes;
  using What = PlanChange::What;
  const auto add = [&](What what, int was, int is) {
    if (was != is) changes.push_back({id, what, was, is});
  };
  add(What::CastOn, before.castOn().value(), after.castOn().value());
  add(What::Length, before.underarmRow.value() - 1, after.underarmRow.value() - 1);
  add(What::Width, stitchesBelow(before, before.underarmRow).value(),
      stitchesBelow(after, after.underarmRow).value());
  const Schedule was = scheduleIn(before, EdgeSide::Right), is = scheduleIn(after, EdgeSide::Right);
  add(What::Underarm, was.underarm.value(), is.underarm.value());
  add(isSleeve(id) ? What::Cap : What::Armhole, was.rows.value(), is.rows.value());
  if (isSleeve(id)) add(What::Crown, was.crown.value(), is.crown.value());
  if (const int same = commonLines(before, after);
      changes.empty() && same < int(std::max(before.rows.size(), after.rows.size()))) {
    const std::size_t at = std::min(std::size_t(same), after.rows.size() - 1);
    const int row = after.rows[at].row.value();
    changes.push_back({id, What::Shaping, row, row});
  }
  return changes;
}

Refit refit(const GarmentDraft& draft, const KnitGarment& design, const Work& work) {
  Refit out;
  out.work = work, out.easeWanted = design.easeWanted;
  const KnitGarment present = presentGarment(draft, design, work);
  out.before = out.after = seamsOf(present);
  if (!design.capKnitted) return out;
  Sleeves sleeves(draft, present, work);
  const auto begun = [&](PieceId id) {
    const PieceWork* p = work.find(id);
    return p && p->begun();
  };
  std::array order{PieceId::Sleeve, PieceId::LeftSleeve};
  if (begun(order[1]) && !begun(order[0])) std::swap(order[0], order[1]);
  for (const PieceId id : order) {
    const PieceWork* own = work.find(id);
    if (own && own->finished()) {
      if (std::abs(sleeves.off(id, own->plan)) > kFinishedNear)
        addRipBack(out, sleeves, *own, int(own->plan.rows.size()));
      continue;
    }
    KnitPiece before = own ? own->plan : *plannedPiece(present, id);
    if (sleeves.suits(id, before)) continue;
    // A pair is a pair where both armholes want it.
    Sleeves::Planned planned;
    if (id == order[1] && begun(order[0]) && !begun(id))
      planned.piece = sleeves.likeTheOther(id, out.work.find(order[0])->plan);
    if (!planned.piece) planned = sleeves.plan(id);
    if (!planned.piece && own && own->begun()) {
      addRipBack(out, sleeves, *own, planned.lines);
      continue;
    }
    if (!planned.piece) continue;
    if (planned.piece->rows == before.rows) continue;
    PieceWork* to = workOn(out.work, present, design, id);
    to->plan = std::move(*planned.piece);
    to->ownPlan = true;
    for (PlanChange& change : planChanges(id, before, to->plan))
      out.changes.push_back(change);
  }
  out.after = seamsOf(presentGarment(draft, design, out.work));
  return out;
}

std::vector<WorkedConflict> conflicts(const GarmentDraft& draft, const KnitGarment& design,
                                      const Work& work) {
  std::vector<WorkedConflict> out;
  for (const PieceWork& p : work.pieces) {
    const KnitPiece* now = plannedPiece(design, p.piece);
    if (!p.begun() || !now || markOf(*now) == p.answers) continue;
    const int same = commonLines(p.plan, *now);
    if (same >= p.worked) continue;
    const RowLine& worked = p.plan.rows[std::size_t(same)];
    WorkedConflict c{p.piece, worked.section, worked.row.value(), worked.stitches().value()};
    if (std::size_t(same) < now->rows.size())
      c.stitchesDesigned = now->rows[std::size_t(same)].stitches().value();
    c.lines = same;
    c.canKeep = !p.finished() && keptPlan(draft, design, work, p).has_value();
    out.push_back(c);
  }
  return out;
}

Work settled(const GarmentDraft& draft, const KnitGarment& design, const Work& work, PieceId piece,
             Settle how) {
  Work out = work;
  PieceWork* p = out.find(piece);
  const KnitPiece* now = plannedPiece(design, piece);
  if (!p || !now) return out;
  switch (how) {
  case Settle::Keep:
    if (auto plan = keptPlan(draft, design, work, *p)) p->plan = std::move(*plan);
    p->ownPlan = true;
    break;
  case Settle::Rip:
    p->worked = std::min(p->worked, commonLines(p->plan, *now));
    p->plan = designPiece(design, piece);
    p->ownPlan = false;
    break;
  case Settle::AsWas:
    p->ownPlan = true;
    break;
  }
  p->answers = markOf(*now);
  return out;
}

Work followed(const GarmentDraft& draft, const KnitGarment& design, const Work& work) {
  Work out = work;
  bool refitAgain = false;
  // A piece that is gone from the garment and was never begun is forgotten.
  std::erase_if(out.pieces, [&](const PieceWork& p) {
    return !p.begun() && !p.measured.any() && !plannedPiece(design, p.piece);
  });
  for (PieceWork& p : out.pieces) {
    const KnitPiece* now = plannedPiece(design, p.piece);
    if (!now || markOf(*now) == p.answers) continue;
    if (p.begun() && commonLines(p.plan, *now) < p.worked) continue; // a conflict
    refitAgain |= p.ownPlan && isSleeve(p.piece);
    p.plan = designPiece(design, p.piece);
    p.ownPlan = false;
    p.answers = markOf(*now);
  }
  return refitAgain ? refit(draft, design, out).work : out;
}

std::optional<Work> withStrayedRows(const KnitGarment& present, const KnitGarment& design,
                                    const Work& work, PieceId id, Rows after, Rows more) {
  Work out = work;
  PieceWork* p = workOn(out, present, design, id);
  if (!p) return std::nullopt;
  auto plan = strayed(p->plan, after, more);
  if (!plan) return std::nullopt;
  const bool below = after < p->plan.underarmRow;
  const Rows up = after - p->plan.underarmRow;
  p->plan = std::move(*plan);
  p->ownPlan = true;
  // The row after which it strayed is worked, and with it the rows that are told of. Up to there a
  // line of the plan is a row.
  const int last = after.value(), added = more.value();
  if (const int line = last + 1 + std::max(0, added); p->worked > last) {
    p->worked = std::max(p->worked + added, std::min(line, int(p->plan.rows.size())));
  }
  if (isSleeve(id)) return out;
  // What is sewn to it has as many rows, wherever it has not come so far.
  for (const PieceId other : piecesToKnit(present)) {
    if (other == id || isSleeve(other)) continue;
    PieceWork* o = workOn(out, present, design, other);
    if (!o || o->finished()) continue;
    const Rows there = below ? after : o->plan.underarmRow + up;
    if (o->worked > there.value() + 1) continue;
    if (auto same = strayed(o->plan, there, more)) o->plan = std::move(*same), o->ownPlan = true;
  }
  return out;
}

Work ripped(const Work& work, PieceId piece, int lines) {
  Work out = work;
  if (PieceWork* p = out.find(piece)) {
    p->worked = std::clamp(lines, 0, p->worked);
    std::erase_if(p->notes, [&](const RowNote& note) {
      for (int i = 0; i < p->worked; ++i)
        if (p->plan.rows[std::size_t(i)].section == note.section &&
            p->plan.rows[std::size_t(i)].row.value() == note.row)
          return false;
      return true;
    });
  }
  return out;
}

} // namespace scye
