#include "body/doubt.h"

#include "body/doubt_search.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// An estimate in place of a measurement is given no finer than a tape is read.
constexpr double kEstimateStep = 0.5;

// The reading is of another measure, so the right value can only be estimated.
bool tellsOfAnother(Slip slip) {
  return slip == Slip::AtElbow || slip == Slip::ScyeGirth || slip == Slip::FromTip;
}

Doubt doubtOf(const SlipSearch& search, const std::vector<Assumed>& slips, const Assumed& slip) {
  const Taken& first = search.taken()[slip.at[0]];
  Doubt out{slip.slip, first.field, first.cm, 0, 0, 0, {}};
  const auto [mean, deviation] =
      Conditional(search.moments(), search.corrected(slips, slip.at[0])).at(first.measure);
  out.deviations = (std::log(first.cm) - mean) / deviation;
  const double reach = std::exp(kNinetyReach * deviation);
  out.low = std::exp(mean) / reach;
  out.high = std::exp(mean) * reach;
  if (tellsOfAnother(slip.slip)) {
    const double likely =
        std::exp(Conditional(search.moments(), search.corrected(slips)).at(first.measure).mean);
    const FieldInfo& field = info(first.field);
    out.changes.push_back(
        {first.field,
         std::clamp(std::round(likely / kEstimateStep) * kEstimateStep, field.low, field.high)});
  }
  for (std::size_t k = 0; k < slip.corrected.size(); ++k)
    out.changes.push_back({search.taken()[slip.at[k]].field, slip.corrected[k]});
  return out;
}

Param fieldParam(std::string name, Field f) {
  return phraseParam(std::move(name), "field." + std::string(info(f).key));
}

const char* remedyKey(Slip slip) {
  if (slip == Slip::AllOtherUnit) return "doubt.correctSet";
  if (slip == Slip::AllHalf) return "doubt.double";
  if (slip == Slip::Half) return "doubt.half";
  return tellsOfAnother(slip) ? "doubt.estimate" : "doubt.correct";
}

// A flat garment gives half girths, and its lengths as they are. Where all girths are half, all
// that was measured was measured there.
Remedy measuredOnGarment(const Doubt& doubt, const Design& design) {
  if (doubt.slip == Slip::Half) return {"doubt.onGarment", {}, {}, {}, {doubt.field}};
  Remedy out{"doubt.allOnGarment", {}, {}, {{Choice::TakenOn, int(Source::Garment)}}, {}};
  for (int i = 0; i < kFieldCount; ++i)
    if (const Field f = Field(i); design.has(f) && canTakeOn(f, Source::Garment))
      out.onGarment.push_back(f);
  return out;
}

Finding findingOf(const Doubt& doubt, const Design& design, LengthUnit typed) {
  Finding out{Severity::Warning, std::string(doubtCode(doubt.slip, typed)), {doubt.field}, {}, {}};
  out.params = {fieldParam("measure", doubt.field), lengthParam("given", doubt.given),
                lengthParam("low", doubt.low), lengthParam("high", doubt.high)};
  if (doubt.changes.empty()) return out;
  out.fields.clear();
  for (const auto& change : doubt.changes)
    out.fields.push_back(change.field);
  out.params.push_back(lengthParam("likely", doubt.changes.front().value));
  const bool both = doubt.changes.size() == 2;
  out.params.push_back(numberParam("count", double(doubt.changes.size())));
  out.params.push_back(phraseParam("all", both ? "doubt.both" : "doubt.all"));
  out.params.push_back(phraseParam("them", both ? "doubt.them.both" : "doubt.them.all"));
  if (doubt.slip == Slip::Half || doubt.slip == Slip::AllHalf)
    out.remedies.push_back(measuredOnGarment(doubt, design));
  out.remedies.push_back({remedyKey(doubt.slip), out.params, doubt.changes, {}});
  return out;
}

} // namespace

std::string_view doubtCode(Slip slip, LengthUnit typed) {
  const bool inches =
      typed == LengthUnit::Inch; // the field speaks inches, so the slip is centimetres
  switch (slip) {
  case Slip::Half:
    return "doubt.half";
  case Slip::OtherUnit:
    return inches ? "doubt.centimetres" : "doubt.inches";
  case Slip::Digits:
    return "doubt.digits";
  case Slip::AtElbow:
    return "doubt.elbow";
  case Slip::ScyeGirth:
    return "doubt.scyeGirth";
  case Slip::FromTip:
    return "doubt.fromTip";
  case Slip::AllOtherUnit:
    return inches ? "doubt.allCentimetres" : "doubt.allInches";
  case Slip::AllHalf:
    return "doubt.allHalf";
  case Slip::Unusual:
    break;
  }
  return "doubt.unusual";
}

std::vector<Doubt> doubted(const Body& given, const Moments& moments, LengthUnit typed) {
  const SlipSearch search(given, moments, typed);
  const std::vector<Assumed> slips = search.explain();
  std::vector<Doubt> out;
  for (const Assumed& slip : slips) {
    Doubt doubt = doubtOf(search, slips, slip);
    // An explanation may bend a sound value to suit the others; that is no reason to question it.
    const bool wholeSet = slip.at.size() > 1;
    if (wholeSet || std::abs(doubt.deviations) > kOut) out.push_back(std::move(doubt));
  }
  return out;
}

Findings doubts(const Design& design, LengthUnit typed) {
  const Moments* moments = surveyMoments(design.as<Figure>());
  if (!moments) return {};
  Findings out;
  Remedy all{"doubt.correctAll", {}, {}, {}};
  for (const Doubt& doubt : doubted(bodyMeasurements(design), *moments, typed)) {
    out.push_back(findingOf(doubt, design, typed));
    all.changes.insert(all.changes.end(), doubt.changes.begin(), doubt.changes.end());
  }
  const auto correctable =
      std::count_if(out.begin(), out.end(), [](const Finding& f) { return !f.remedies.empty(); });
  if (correctable < 2) return out;
  all.params = {numberParam("count", double(all.changes.size()))};
  for (Finding& finding : out)
    if (!finding.remedies.empty()) finding.remedies.push_back(all);
  return out;
}

} // namespace scye
