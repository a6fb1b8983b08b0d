#include "garment/derived.h"

#include "body/advice.h"
#include "draft/complete.h"
#include "garment/knit_checks.h"

#include <bit>
#include <cmath>
#include <iterator>

namespace scye {
namespace {

void append(Findings& to, Findings more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

Findings findingsOf(const GarmentDraft& draft, const KnitGarment& knit, const PickUps& picked) {
  Findings all = draft.findings;
  append(all, checkKnitting(draft, knit, picked));
  return all;
}

bool sameMeasured(const Design& a, const Design& b) {
  for (int f = 0; f < kFieldCount; ++f) {
    const FieldGroup group = info(Field(f)).group;
    if ((group == FieldGroup::Measure || group == FieldGroup::Swatch) &&
        (a.given(Field(f)) != b.given(Field(f)) || a.source(Field(f)) != b.source(Field(f))))
      return false;
  }
  return a.option(Choice::TakenOn) == b.option(Choice::TakenOn);
}

// What stands at the head of the directions: without it they cannot be trusted.
bool mustBeMet(const Finding& f) {
  return f.severity != Severity::Note || f.code == "gauge.rowsMissing" ||
         f.code == "gauge.unwashed";
}

// One number for what is knitted and sewn (FNV-1a over the row tables and what is made of them).
class Mark {
public:
  void add(std::uint64_t x) { mark_ = (mark_ ^ x) * 0x100000001b3; }
  void add(double x) { add(std::bit_cast<std::uint64_t>(x)); }
  void add(int x) { add(std::uint64_t(x)); }
  [[nodiscard]] std::uint64_t value() const { return mark_; }

private:
  std::uint64_t mark_ = 0xcbf29ce484222325;
};

std::uint64_t markOf(const GarmentDraft& g, const KnitGarment& k, const PickUps& picked) {
  Mark mark;
  for (const KnitPiece& piece : k.pieces) {
    mark.add(int(piece.id));
    for (const RowLine& line : piece.rows) {
      mark.add(line.leftEdge), mark.add(line.rightEdge);
      for (const Act& a : line.acts)
        mark.add(int(a.kind)), mark.add(a.stitches.value());
    }
  }
  for (const Rows row : k.buttonholes.rows)
    mark.add(row.value());
  mark.add(picked.neck.total()), mark.add(picked.band.stitches);
  mark.add(picked.buttonholes.count), mark.add(picked.buttonholes.before);
  for (const int between : picked.buttonholes.between)
    mark.add(between);
  // How a cap is drawn in is told where it is sewn.
  const int top = g.design.option(Choice::CapTop);
  mark.add(top);
  // To a millimetre: less is not drawn in otherwise.
  if (CapTop(top) != CapTop::Smooth) mark.add(int(std::lround(10 * g.sizes[Field::GatherWidth])));
  if (CapTop(top) == CapTop::Pleated) mark.add(g.sizes[Field::Pleats]);
  // Where nothing can be knitted as yet, the drafted shape counts.
  if (k.pieces.empty() || !k.capKnitted)
    for (const Piece& piece : g.pieces)
      for (const PieceEdge& edge : piece.edges)
        mark.add(edge.path.end().x()), mark.add(edge.path.end().y());
  return mark.value();
}

} // namespace

Derived derive(const Design& design, LengthUnit typed, const Work& work) {
  Derived d;
  d.typed = typed;
  d.draft = draftGarment(design);
  d.knit = knitGarment(d.draft);
  d.work = work;
  if (!work.pieces.empty()) {
    d.work = followed(d.draft, d.knit, work);
    d.conflicts = conflicts(d.draft, d.knit, d.work);
    d.designed = d.knit;
    d.knit = presentGarment(d.draft, std::move(d.knit), d.work);
  }
  d.makingUp = makingUp(d.draft, d.knit);
  d.directions = directionsFor(d.draft, d.knit, d.makingUp);
  d.gauge = gaugeReport(design);
  d.gaugeEffect = gaugeEffect(d.draft, d.knit, d.gauge);
  append(d.findings, adviceOn(design, d.draft.sizes, d.typed));
  append(d.findings, findingsOf(d.draft, d.knit, d.makingUp.pickUps));
  for (const Finding& f : d.findings)
    if (mustBeMet(f)) d.directions.unmet.push_back(f);
  return d;
}

Findings findingsOf(const Design& design) {
  const GarmentDraft draft = draftGarment(design);
  const KnitGarment knit = knitGarment(draft);
  return findingsOf(draft, knit, knit.gaugeUsable ? pickUps(draft, knit) : PickUps{});
}

Chain remedyChain(const Design& design, LengthUnit typed) {
  const Findings advice = adviceOn(design, complete(design), typed);
  return {[](const Design& d) { return draftGarment(d).findings; },
          [design, typed, advice](const Design& d) {
            const GarmentDraft draft = draftGarment(d);
            const KnitGarment knit = knitGarment(draft);
            const PickUps picked = knit.gaugeUsable ? pickUps(draft, knit) : PickUps{};
            // Advice looks at measurements and swatches alone.
            Outcome out{sameMeasured(d, design) ? advice : adviceOn(d, draft.sizes, typed),
                        markOf(draft, knit, picked)};
            append(out.findings, findingsOf(draft, knit, picked));
            return out;
          }};
}

bool deriveRemedies(const Design& design, Derived& d, const RemedyWatch& watch) {
  return addRemedies(design, d.draft.sizes, remedyChain(design, d.typed), d.findings, watch);
}

} // namespace scye
