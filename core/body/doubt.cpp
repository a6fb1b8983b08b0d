#include "body/doubt.h"

#include "body/doubt_search.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// An estimate in place of a measurement is given no finer than a tape is read.
constexpr double kEstimateStep = 0.5;

Doubt doubtOf(const SlipSearch& search, const std::vector<Assumed>& slips, const Assumed& slip) {
  const Taken& first = search.taken()[slip.at[0]];
  Doubt out{slip.slip, first.field, first.cm, 0, 0, 0, {}};
  // Its own slip stays in only where the reading tells of another measure.
  const bool elsewhere = slip.slip == Slip::AtElbow || slip.slip == Slip::ScyeGirth;
  const auto [mean, deviation] =
      Conditional(search.moments(), search.corrected(slips, slip.at[0])).at(first.measure);
  out.deviations = (std::log(first.cm) - mean) / deviation;
  const double reach = std::exp(kNinetyReach * deviation);
  out.low = std::exp(mean) / reach;
  out.high = std::exp(mean) * reach;
  if (elsewhere) {
    const double likely = std::exp(Conditional(search.moments(), search.corrected(slips)).at(first.measure).mean);
    out.changes.push_back({first.field, std::round(likely / kEstimateStep) * kEstimateStep});
  }
  for (std::size_t k = 0; k < slip.corrected.size(); ++k)
    out.changes.push_back({search.taken()[slip.at[k]].field, slip.corrected[k]});
  return out;
}

Param fieldParam(std::string name, Field f) {
  return phraseParam(std::move(name), "field." + std::string(info(f).key));
}

Finding findingOf(const Doubt& doubt, LengthUnit typed) {
  Finding out{Severity::Warning, std::string(doubtCode(doubt.slip, typed)), {doubt.field}, {}, {}};
  out.params = {fieldParam("measure", doubt.field), lengthParam("given", doubt.given),
                lengthParam("low", doubt.low), lengthParam("high", doubt.high)};
  if (doubt.changes.empty()) return out;
  out.fields.clear();
  for (const auto& change : doubt.changes) out.fields.push_back(change.field);
  out.params.push_back(lengthParam("likely", doubt.changes.front().value));
  Remedy remedy{"doubt.correct", {}, doubt.changes, {}};
  if (doubt.changes.size() > 1) remedy.key = "doubt.correctSet";
  remedy.params = {out.params.front(), out.params.back(), numberParam("count", double(doubt.changes.size()))};
  out.remedies.push_back(std::move(remedy));
  return out;
}

} // namespace

std::string_view doubtCode(Slip slip, LengthUnit typed) {
  const bool inches = typed == LengthUnit::Inch; // the field speaks inches, so the slip is centimetres
  switch (slip) {
  case Slip::Half: return "doubt.half";
  case Slip::OtherUnit: return inches ? "doubt.centimetres" : "doubt.inches";
  case Slip::Digits: return "doubt.digits";
  case Slip::AtElbow: return "doubt.elbow";
  case Slip::ScyeGirth: return "doubt.scyeGirth";
  case Slip::AllOtherUnit: return inches ? "doubt.allCentimetres" : "doubt.allInches";
  case Slip::AllHalf: return "doubt.allHalf";
  case Slip::Unusual: break;
  }
  return "doubt.unusual";
}

std::vector<Doubt> doubted(const Body& given, const Moments& moments, LengthUnit typed) {
  const SlipSearch search(given, moments, typed);
  const std::vector<Assumed> slips = search.explain();
  std::vector<Doubt> out;
  for (const Assumed& slip : slips) out.push_back(doubtOf(search, slips, slip));
  return out;
}

Findings doubts(const Design& design, LengthUnit typed) {
  const Moments* moments = surveyMoments(design.as<Figure>(Choice::Figure));
  if (!moments) return {};
  Findings out;
  Remedy all{"doubt.correctAll", {}, {}, {}};
  for (const Doubt& doubt : doubted(bodyMeasurements(design), *moments, typed)) {
    out.push_back(findingOf(doubt, typed));
    all.changes.insert(all.changes.end(), doubt.changes.begin(), doubt.changes.end());
  }
  const auto correctable = std::count_if(out.begin(), out.end(),
                                         [](const Finding& f) { return !f.remedies.empty(); });
  if (correctable < 2) return out;
  all.params = {numberParam("count", double(all.changes.size()))};
  for (Finding& finding : out)
    if (!finding.remedies.empty()) finding.remedies.push_back(all);
  return out;
}

} // namespace scye
