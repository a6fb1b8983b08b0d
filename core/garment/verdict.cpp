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

KnittedFit knittedFit(const KnitGarment& k, const Phrases& phrases, LengthUnit unit) {
  KnittedFit fit{k.left.armhole.mean(), k.right.armhole.mean(), k.left.cap.mean(),
                 k.right.cap.mean(),    k.mismatch(),           {}};
  constexpr double kAlike = 0.05; // cm
  const bool one = std::abs(fit.armholeLeft - fit.armholeRight) < kAlike &&
                   std::abs(fit.capLeft - fit.capRight) < kAlike;
  // The side where it is worse is told.
  const bool left = fit.mismatch == k.left.mismatch(k.easeWanted);
  const ArmholeFit& side = left ? k.left : k.right;
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

FitVerdict fitVerdict(const Derived& derived, const Phrases& phrases, LengthUnit unit) {
  const GarmentDraft& g = derived.draft;
  FitVerdict v;
  v.armhole = g.cap.armhole(), v.cap = g.cap.cap(), v.ease = g.cap.ease();
  if (derived.knit.capKnitted) v.knitted = knittedFit(derived.knit, phrases, unit);
  if (const auto blocked = blockingText(derived.findings, phrases, unit)) {
    v.sentence = *blocked;
    return v;
  }
  const bool gathers = v.ease > 0 && g.sizes.style.capDrawnIn();
  const bool smooth = v.ease >= 0 && v.ease <= g.sizes[Field::LimitCapEase];
  v.fits = g.cap.found && (smooth || gathers);
  v.sentence = phrases.say(
      smooth       ? "fit.verdict.fits"
      : v.ease < 0 ? "fit.verdict.short"
      : gathers    ? g.sizes.style.pleated() ? "fit.verdict.pleats" : "fit.verdict.gathers"
                   : "fit.verdict.long",
      {lengthParam("ease", std::abs(v.ease)), lengthParam("height", g.cap.height)}, unit);
  return v;
}

} // namespace scye
