#include "garment/verdict.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// The first thing that forbids the garment, in words.
std::optional<std::string> blockingText(const Findings& findings, const Phrases& phrases,
                                        LengthUnit unit) {
  for (const Finding& f : findings)
    if (f.severity == Severity::Blocking) return phrases.say("finding." + f.code, f.params, unit);
  return std::nullopt;
}

// The side of the wearer where cap and armhole are worse.
const ArmholeFit& worseSide(const KnitGarment& k) {
  return k.mismatch() == k.left.mismatch(k.easeWanted) ? k.left : k.right;
}

// What is knitted, and beside it what was wanted where they are further apart than `tolerated`.
Param knittedParam(const char* name, double knitted, double wanted, double tolerated,
                   const Phrases& phrases, LengthUnit unit) {
  if (std::abs(knitted - wanted) <= tolerated + 1e-9) return lengthParam(name, knitted);
  return textParam(
      name, phrases.say("fit.verdict.wanted",
                        {lengthParam("knitted", knitted), lengthParam("wanted", wanted)}, unit));
}

KnittedFit knittedFit(const KnitGarment& k, const Phrases& phrases, LengthUnit unit) {
  KnittedFit fit{k.left.armhole.mean(), k.right.armhole.mean(), k.left.cap.mean(),
                 k.right.cap.mean(),    k.mismatch(),           {}};
  constexpr double kAlike = 0.05; // cm
  const bool one = std::abs(fit.armholeLeft - fit.armholeRight) < kAlike &&
                   std::abs(fit.capLeft - fit.capRight) < kAlike;
  // The side where it is worse is told.
  const ArmholeFit& side = worseSide(k);
  const bool left = &side == &k.left;
  fit.sentence =
      phrases.say(one    ? "fit.knitted"
                  : left ? "fit.knitted.left"
                         : "fit.knitted.right",
                  {lengthParam("armhole", side.armhole.mean()), lengthParam("cap", side.cap.mean()),
                   lengthParam("ease", (side.cap - side.armhole).mean())},
                  unit);
  return fit;
}

} // namespace

double toldCapHeight(const Derived& derived) {
  const KnitGarment& k = derived.knit;
  return k.capKnitted && derived.draft.cap.found ? k.cap.front.rows.value() * k.lattice.size.height
                                                 : derived.draft.cap.height;
}

FitVerdict fitVerdict(const Derived& derived, const Phrases& phrases, LengthUnit unit) {
  const GarmentDraft& g = derived.draft;
  FitVerdict v;
  v.armhole = g.cap.armhole(), v.cap = g.cap.cap(), v.ease = g.cap.ease();
  // The match is exact to far less; a cap asked for without ease is not too short.
  constexpr double kRounding = 1e-6; // cm
  if (std::abs(v.ease) < kRounding) v.ease = 0;
  if (derived.knit.capKnitted) v.knitted = knittedFit(derived.knit, phrases, unit);
  if (const auto blocked = blockingText(derived.findings, phrases, unit)) {
    v.sentence = *blocked;
    return v;
  }
  const bool gathers = v.ease > 0 && g.sizes.style.capDrawnIn();
  const bool smooth = v.ease >= 0 && v.ease <= g.sizes[Field::LimitCapEase];
  v.fits = g.cap.found && (smooth || gathers);
  Param ease = lengthParam("ease", std::abs(v.ease)), height = lengthParam("height", g.cap.height);
  if (derived.knit.capKnitted && g.cap.found) {
    const KnitGarment& k = derived.knit;
    const ArmholeFit& side = worseSide(k);
    constexpr double kSeam = 0.2; // cm
    const double rowHeight = k.lattice.size.height, knitted = (side.cap - side.armhole).mean();
    if (knitted * v.ease > 0)
      ease = knittedParam("ease", std::abs(knitted), std::abs(k.easeWanted), kSeam, phrases, unit);
    const double rows = toldCapHeight(derived);
    // A height that is worked out follows from the rest: nobody wanted it otherwise.
    const bool workedOut = g.cap.unknown == WorkedOut::CapHeight;
    height =
        knittedParam("height", rows, workedOut ? rows : g.cap.height, rowHeight, phrases, unit);
  }
  v.sentence =
      phrases.say(smooth       ? "fit.verdict.fits"
                  : v.ease < 0 ? "fit.verdict.short"
                  : gathers ? g.sizes.style.pleated() ? "fit.verdict.pleats" : "fit.verdict.gathers"
                            : "fit.verdict.long",
                  {ease, height}, unit);
  return v;
}

} // namespace scye
