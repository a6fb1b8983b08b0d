#include "garment/knit_checks.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

class KnitChecks {
public:
  KnitChecks(const GarmentDraft& g, const KnitGarment& k, const PickUps& pickUps)
      : g_(g), k_(k), pickUps_(pickUps) {}

  Findings run() {
    if (!k_.gaugeUsable) {
      say(Severity::Blocking, "gauge.tooFine", {Field::SwatchStitches, Field::SwatchRows},
          {numberParam("stitches", std::round(10 / g_.sizes.stitch.width)),
           numberParam("most", kFinestGauge)});
      return std::move(out_);
    }
    const double ratio = g_.sizes.stitch.width / g_.sizes.stitch.height; // rows to stitches
    if (ratio < 1 || ratio > 2)
      say(Severity::Warning, "gauge.ratio", {Field::SwatchRows, Field::SwatchStitches},
          {numberParam("ratio", std::round(100 * ratio) / 100)});
    for (const PieceId id : k_.impossible)
      say(Severity::Blocking, "knit.impossible", {Field::EaseBust, Field::NeckWidth},
          {phraseParam("piece", "piece." + std::string(pieceKey(id)))});
    fit();
    shaping();
    front();
    point();
    sleeve();
    gatheredCuff();
    rounding();
    parts();
    return std::move(out_);
  }

private:
  void say(Severity severity, std::string code, std::vector<Field> fields, Params params = {}) {
    out_.push_back({severity, std::move(code), std::move(fields), std::move(params), {}});
  }

  void fit() {
    if (!k_.capKnitted) {
      // Where the draft has no match that has been said already.
      if (!g_.cap.found) return;
      say(Severity::Blocking,
          k_.cap.status == CapStatus::NoStitches ? "knit.noCapStitches" : "knit.noCap",
          {Field::EaseUpperArm, Field::CrownWidth});
      return;
    }
    constexpr double kTolerated = 0.2; // cm
    if (std::abs(k_.mismatch()) > kTolerated)
      say(Severity::Warning, "knit.mismatch", {Field::CapEase, Field::CrownWidth},
          {lengthParam("off", std::abs(k_.mismatch())),
           phraseParam("longer", k_.mismatch() > 0 ? "knit.longer" : "knit.shorter")});
    if (k_.cap.beyondStyle)
      say(Severity::Note, "knit.wideSteps", {Field::EaseUpperArm, Field::CrownWidth},
          {numberParam("stitches", widestStep())});
    constexpr double kFarOff = 1.5; // stitches
    if (k_.deviation > kFarOff)
      say(Severity::Note, "knit.deviation", {Field::Fidelity},
          {numberParam("stitches", std::round(10 * k_.deviation) / 10)});
  }

  [[nodiscard]] int widestStep() const {
    int widest = 0;
    for (const Schedule* half : {&k_.cap.front, &k_.cap.back})
      for (const Run& run : half->runs)
        if (run.kind == ShapingKind::BindOff) widest = std::max(widest, run.stitches.value());
    return widest;
  }

  void shaping() {
    if (k_.backArmhole.status == ShapingStatus::TooFewRows ||
        k_.frontArmhole.status == ShapingStatus::TooFewRows)
      say(Severity::Blocking, "knit.armholeRows", {Field::EaseArmholeDepth, Field::UnderarmBack});
  }

  // A V is decreased on right-side rows alone; what finds no row is bound off at its point, which
  // then is none.
  void point() {
    if (!g_.sizes.style.neck().straight) return;
    const KnitPiece* piece = k_.piece(PieceId::Front);
    if (!piece) piece = k_.piece(PieceId::RightFront);
    if (!piece) return;
    Stitches off = -k_.lattice.band; // a band that is knitted on ends there
    for (const Section& s : piece->sections)
      for (const Act& a : s.acts)
        if (a.kind == ActKind::BindOff && a.shapes == Shapes::Neck) off += a.stitches;
    constexpr Stitches kPoint{4}; // hardly to be seen
    if (off > kPoint)
      say(Severity::Warning, "knit.blunt", {Field::FrontNeckDrop, Field::NeckWidth},
          {numberParam("stitches", off.value())});
  }

  void front() {
    if (g_.bodice.bust.depth > 0 && k_.lattice.front.longer == Rows(0))
      say(Severity::Warning, "bust.noRoom", {Field::BustDepth, Field::HemToUnderarm});
    const Buttonholes& holes = k_.buttonholes;
    if (holes.wanted > 0 && k_.lattice.band < kLeastBand)
      say(Severity::Warning, "buttonholes.narrow", {Field::ButtonBand},
          {numberParam("stitches", k_.lattice.band.value())});
    else if (holes.crowded())
      say(Severity::Warning, "buttonholes.crowded", {Field::Buttons, Field::FrontNeckDrop},
          {numberParam("holes", double(holes.rows.size())), numberParam("wanted", holes.wanted)});
    if (const BandButtonholes& band = pickUps_.buttonholes; band.count < band.wanted)
      say(Severity::Warning, "buttonholes.crowded", {Field::Buttons, Field::FrontNeckDrop},
          {numberParam("holes", band.count), numberParam("wanted", band.wanted)});
  }

  void sleeve() {
    const KnitPiece* sleeve = k_.piece(PieceId::Sleeve);
    if (!sleeve) return;
    std::optional<Rows> before;
    Rows closest{1000};
    for (const Act& a : sleeve->sections.front().acts) {
      if (a.kind != ActKind::Increase || a.side != EdgeSide::Right || a.shapes != Shapes::Sleeve)
        continue;
      if (before) closest = std::min(closest, a.row - *before);
      before = a.row;
    }
    if (closest < Rows(4))
      say(Severity::Warning, "knit.sleeveFast", {Field::EaseUpperArm, Field::EaseWrist},
          {numberParam("rows", closest.value())});
  }

  // A full sleeve has the rows between its cuff and its underarm to be gathered in. Where they are
  // too few, its cuff is not as wide as wanted, and no rounding is to blame.
  void gatheredCuff() {
    if (!g_.sizes.style.sleeve().gathered) return;
    const Rounded* cuff = nullptr;
    for (const Rounded& r : k_.rounded)
      if (r.field == Field::CuffGirth) cuff = &r;
    constexpr double kLeastOff =
        0.04; // of the cuff: a stitch or two in any gauge is rounding, as is its rib
    if (!cuff || std::abs(cuff->knitted - cuff->wanted) <=
                     std::max(cuff->grain + 1.5 * g_.sizes.stitch.width, kLeastOff * cuff->wanted))
      return;
    cuffMissed_ = true;
    say(Severity::Blocking, "sleeve.cuffReach",
        {Field::FullGirth, Field::SleeveLength, Field::CuffDepth, Field::CuffGirth},
        {lengthParam("above", g_.sleeve.length - g_.sleeve.cuff),
         lengthParam("full", 2 * g_.sleeve.halfFull), lengthParam("cuff", cuff->wanted),
         lengthParam("knitted", cuff->knitted), lengthParam("arm", 2 * g_.sleeve.halfWidth)});
  }

  // What follows from others that it shares stitches or rows with: it may be told, but is no fault.
  static bool givesWay(Field f) {
    switch (f) {
    case Field::BackNeckDrop:
    case Field::NeckWidth:
    case Field::CrossFront:
    case Field::UnderarmBack:
    case Field::UnderarmFront:
    case Field::CapHeight:
    case Field::CrownWidth:
      return true;
    default:
      return false;
    }
  }

  // By itself or by the measurement that it is added to.
  [[nodiscard]] bool wasSet(Field f) const {
    const auto measurement = measurementOf(f);
    return g_.design.has(f) || (measurement && g_.design.has(*measurement));
  }

  // What is no size of the garment, but may have been set.
  void parts() {
    const Lattice& l = k_.lattice;
    const double h = l.size.height;
    const auto part = [&](Field f, double knitted, double grain) {
      const double wanted = g_.sizes[f];
      if (!g_.design.has(f) || std::abs(knitted - wanted) <= grain + 1e-6) return;
      say(Severity::Note, "knit.rounded", {f},
          {phraseParam("what", "field." + std::string(info(f).key)), lengthParam("wanted", wanted),
           lengthParam("knitted", knitted)});
    };
    if (l.foldRow < Rows(0)) part(Field::HemDepth, l.size.up(l.hemRows), h);
    part(Field::CuffDepth, l.size.up(l.cuffRows), h);
    part(Field::ShoulderDrop, 2 * l.shoulderSteps * h, h);
    if (l.band > Stitches(0)) part(Field::ButtonBand, l.size.across(l.band), l.size.width);
  }

  // What blocks a garment is to blame for more than rounding.
  [[nodiscard]] bool blocked() const {
    const auto blocks = [](const Finding& f) { return f.severity == Severity::Blocking; };
    return std::any_of(g_.findings.begin(), g_.findings.end(), blocks) ||
           std::any_of(out_.begin(), out_.end(), blocks);
  }

  // Knitted against wanted: a note where something that was set is off by more than a stitch or a
  // row, a warning where anything is by more than rounding asks for and nothing worse is the cause.
  void rounding() {
    constexpr double kNeverWrong = 1e9; // cm
    const double multiple = g_.sizes[Field::PatternMultiple];
    const double w = k_.lattice.size.width, h = k_.lattice.size.height;
    const bool mayWarn = !blocked();
    for (const Rounded& r : k_.rounded) {
      if (r.grain == 0 ||
          (cuffMissed_ && (r.field == Field::CuffGirth || r.field == Field::FullGirth)))
        continue;
      const double off = std::abs(r.knitted - r.wanted);
      const bool byPattern = multiple > 1 && r.grain == w;
      const double allowed = givesWay(r.field) ? kNeverWrong
                             : byPattern       ? w * std::max(1.0, 0.5 * multiple)
                             : r.grain == h    ? 2 * h // right-side rows are every other
                                               : r.grain;
      // A row or a stitch; across two fronts one of each.
      const double once = r.field == Field::CrossFront || r.grain == h ? r.grain : w;
      constexpr double kRounding = 1e-6;
      const bool warns = mayWarn && off > allowed + kRounding;
      if (!warns && !(wasSet(r.field) && off > std::min(allowed, once) + kRounding)) continue;
      say(warns ? Severity::Warning : Severity::Note, "knit.rounded", {r.field},
          {phraseParam("what", "knitted." + r.key), lengthParam("wanted", r.wanted),
           lengthParam("knitted", r.knitted)});
    }
  }

  const GarmentDraft& g_;
  const KnitGarment& k_;
  const PickUps& pickUps_;
  bool cuffMissed_ = false;
  Findings out_;
};

} // namespace

Findings checkKnitting(const GarmentDraft& draft, const KnitGarment& knit, const PickUps& pickUps) {
  return KnitChecks(draft, knit, pickUps).run();
}

} // namespace scye
