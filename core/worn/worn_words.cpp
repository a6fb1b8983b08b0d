#include "worn/worn_words.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

double toHalf(double cm) {
  return std::max(0.0, std::round(2 * cm) / 2);
}

} // namespace

std::string hemLiftText(double lift, std::optional<double> usual, const Phrases& phrases,
                        LengthUnit unit) {
  constexpr double kLeast = 0.25; // less than this is not seen
  std::string text = lift < kLeast
                         ? phrases.say("worn.lift.none")
                         : phrases.say("worn.lift", {lengthParam("lift", toHalf(lift))}, unit);
  if (usual && toHalf(*usual) != toHalf(lift))
    text += " " + phrases.say("worn.lift.usual", {lengthParam("lift", toHalf(*usual))}, unit);
  return text;
}

std::vector<std::string> wornCautions(const Derived& derived, const Phrases& phrases) {
  const GarmentDraft& draft = derived.draft;
  const Sizes& s = draft.sizes;
  const auto tight = [&](Field girth) {
    const auto ease = easeOf(girth);
    return ease && !s.fromGarment(girth) && s[*ease] < 0;
  };
  std::vector<std::string> lines;
  if (tight(Field::Bust) || tight(Field::Waist) || tight(Field::Hip) || tight(Field::UpperArm))
    lines.push_back(phrases.say("worn.caution.tight"));
  constexpr double kHeavyStitch = 0.6; // cm: about 17 stitches in 10 cm, a heavy yarn
  if (s.stitch.width >= kHeavyStitch) lines.push_back(phrases.say("worn.caution.heavy"));
  if (draft.sizes.style.hem().ribbed) lines.push_back(phrases.say("worn.caution.rib"));
  return lines;
}

Design withUsualCap(const Design& design) {
  Design usual = design;
  usual.choose(Choice::CapRise, CapRise::Usual);
  usual.choose(Choice::WorkedOut, WorkedOut::CapHeight);
  for (const Field f : {Field::CapHeight, Field::EaseUpperArm, Field::CrownWidth, Field::CapEase})
    usual.clear(f);
  return usual;
}

} // namespace scye
