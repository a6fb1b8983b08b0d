#include "model/field.h"

#include "model/garment_style.h"

#include <algorithm>
#include <array>

namespace scye {
namespace {

using enum FieldKind;
using enum FieldGroup;

// The garments for which a value matters.
using Style = const GarmentStyle&;
constexpr auto pullovers = [](Style s) { return !s.jacket(); };
constexpr auto jackets = [](Style s) { return s.jacket(); };
constexpr auto grown = [](Style s) { return !s.small(); };
constexpr auto waisted = [](Style s) { return s.waisted(); };
constexpr auto deepHems = [](Style s) { return s.hem().hasDepth(); };
constexpr auto bustRows = [](Style s) { return s.bustShortRows(); };
constexpr auto ownCuffs = [](Style s) { return s.sleeve().ownCuff; };
constexpr auto flared = [](Style s) { return s.sleeve().flares; };
constexpr auto gathered = [](Style s) { return s.sleeve().gathered; };
constexpr auto drawnIn = [](Style s) { return s.capDrawnIn(); };
constexpr auto pleated = [](Style s) { return s.pleated(); };
constexpr auto ownRib = [](Style s) { return s.rib == RibKind::Own; };
constexpr auto plainHems = [](Style s) { return s.hemMade == HemMade::Plain; };
constexpr auto shortShoulders = [](Style s) { return s.shoulderWork == ShoulderWork::ShortRows; };

constexpr std::array<FieldInfo, kFieldCount> kFields{{
    {Field::Bust, "bust", Girth, Measure, 20, 220, 30},
    {Field::Waist, "waist", Girth, Measure, 20, 220, 30},
    {Field::Hip, "hip", Girth, Measure, 20, 240, 30},
    {Field::CrossShoulder, "crossShoulder", Length, Measure, 12, 70, 8},
    {Field::CrossFront, "crossFront", Length, Measure, 12, 70, 8},
    {Field::CrossBack, "crossBack", Length, Measure, 12, 70, 8},
    {Field::ArmholeDepth, "armholeDepth", Length, Measure, 5, 50, 6},
    {Field::TipToUnderarm, "tipToUnderarm", Length, Measure, 3, 40, 4},
    {Field::ScyeGirth, "scyeGirth", Girth, Measure, 10, 110, 12},
    {Field::UpperArm, "upperArm", Girth, Measure, 6, 80, 10},
    {Field::Elbow, "elbow", Girth, Measure, 6, 70, 10},
    {Field::Wrist, "wrist", Girth, Measure, 6, 40, 6},
    {Field::BackWaistLength, "backWaistLength", Length, Measure, 10, 70, 10},
    {Field::FrontWaistLength, "frontWaistLength", Length, Measure, 10, 80, 10},
    {Field::HemToUnderarm, "hemToUnderarm", Length, Measure, 3, 100, 20},
    {Field::SleeveToUnderarm, "sleeveToUnderarm", Length, Measure, 3, 70, 15},
    {Field::SleeveToShoulder, "sleeveToShoulder", Length, Measure, 8, 90, 15},
    {Field::NeckWidth, "neckWidth", Length, Measure, 4, 40, 8},
    {Field::ShoulderLength, "shoulderLength", Length, Measure, 2, 30, 6},
    {Field::ShoulderDrop, "shoulderDrop", Length, Measure, 0, 10, 3},
    {Field::NeckBase, "neckBase", Girth, Measure, 15, 70, 10},
    {Field::HeadGirth, "headGirth", Girth, Measure, 30, 75, 10},
    {Field::HandGirth, "handGirth", Girth, Measure, 6, 40, 6},
    {Field::EaseBust, "ease.bust", Length, Ease, -40, 80, 15},
    {Field::EaseWaist, "ease.waist", Length, Ease, -40, 80, 20},
    {Field::EaseHip, "ease.hip", Length, Ease, -40, 80, 20},
    {Field::EaseCrossShoulder, "ease.crossShoulder", Length, Ease, -15, 25, 6},
    {Field::EaseCrossFront, "ease.crossFront", Length, Ease, -15, 25, 6},
    {Field::EaseCrossBack, "ease.crossBack", Length, Ease, -15, 25, 6},
    {Field::EaseArmholeDepth, "ease.armholeDepth", Length, Ease, -10, 25, 5},
    {Field::EaseUpperArm, "ease.upperArm", Length, Ease, -20, 60, 10},
    {Field::EaseElbow, "ease.elbow", Length, Ease, -20, 60, 10},
    {Field::EaseWrist, "ease.wrist", Length, Ease, -15, 50, 8},
    {Field::SwatchStitches, "swatch.stitches", Count, Swatch, 1, 400, 12},
    {Field::SwatchWidth, "swatch.width", Length, Swatch, 2, 60, 10},
    {Field::SwatchRows, "swatch.rows", Count, Swatch, 1, 600, 16},
    {Field::SwatchHeight, "swatch.height", Length, Swatch, 2, 60, 10},
    {Field::SwatchWeight, "swatch.weight", Weight, Swatch, 0, 2000, 20},
    {Field::BackShare, "backShare", Share, Bodice, 0.35, 0.65, 0.1},
    {Field::FrontNeckDrop, "frontNeckDrop", Length, Bodice, 0, 60, 8},
    {Field::BackNeckDrop, "backNeckDrop", Length, Bodice, 0, 15, 3},
    {Field::NeckBand, "neckBand", Length, Bodice, 0, 20, 5},
    {Field::BackOpening, "backOpening", Length, Bodice, 0, 40, 10, pullovers},
    {Field::HemDepth, "hemDepth", Length, Bodice, 0, 30, 8, deepHems},
    {Field::WaistHeight, "waistHeight", Length, Bodice, -60, 100, 10, waisted},
    {Field::ButtonBand, "buttonBand", Length, Bodice, 0.5, 15, 3, jackets},
    {Field::Buttons, "buttons", Count, Bodice, 1, 40, 5, jackets},
    {Field::BustDepth, "bust.depth", Length, Bodice, 0, 15, 4, bustRows},
    {Field::BustReach, "bust.reach", Length, Bodice, 1, 50, 8, bustRows},
    {Field::UnderarmBack, "underarm.back", Length, Bodice, 0, 12, 3},
    {Field::UnderarmFront, "underarm.front", Length, Bodice, 0, 12, 3},
    {Field::RiseShare, "riseShare", Share, Bodice, 0.1, 0.9, 0.25},
    {Field::ScoopBack, "scoop.back", Share, Bodice, 0.3, 0.9, 0.25},
    {Field::ScoopFront, "scoop.front", Share, Bodice, 0.3, 0.9, 0.25},
    {Field::SleeveLength, "sleeveLength", Length, Sleeve, 0.5, 80, 30},
    {Field::CuffDepth, "cuffDepth", Length, Sleeve, 0, 40, 8},
    {Field::CuffGirth, "cuffGirth", Length, Sleeve, 6, 120, 20, ownCuffs},
    {Field::FlareFrom, "flareFrom", Length, Sleeve, 0.5, 80, 20, flared},
    {Field::FullGirth, "fullGirth", Length, Sleeve, 6, 200, 30, gathered},
    {Field::CapEase, "capEase", Length, Sleeve, -5, 25, 3},
    {Field::GatherWidth, "gatherWidth", Length, Sleeve, 2, 40, 8, drawnIn},
    {Field::Pleats, "pleats", Count, Sleeve, 2, 20, 6, pleated},
    {Field::CapHeight, "capHeight", Length, Sleeve, 1, 40, 8},
    {Field::CrownWidth, "crownWidth", Length, Sleeve, 0.5, 30, 5},
    {Field::LowerFullness, "lowerFullness", Share, Sleeve, 0.1, 0.9, 0.3},
    {Field::UpperFullness, "upperFullness", Share, Sleeve, 0.1, 0.9, 0.3},
    {Field::Selvedge, "selvedge", Count, Knitting, 0, 2, 2},
    {Field::PatternMultiple, "pattern.multiple", Count, Knitting, 1, 60, 12},
    {Field::PatternExtra, "pattern.extra", Count, Knitting, 0, 59, 12},
    {Field::Fidelity, "fidelity", Share, Knitting, 0, 1, 0.5},
    {Field::RibMultiple, "rib.multiple", Count, Knitting, 1, 24, 6, ownRib},
    {Field::NeedleBody, "needle.body", Needle, Knitting, 0, 25, 2},
    {Field::NeedleRib, "needle.rib", Needle, Knitting, 0, 25, 2},
    {Field::BallWeight, "ball.weight", Weight, Knitting, 0, 2000, 50},
    {Field::BallLength, "ball.length", Run, Knitting, 0, 5000, 100},
    {Field::YarnReserve, "yarn.reserve", Share, Knitting, 0, 1, 0.15},
    {Field::LimitUpperArm, "limit.upperArm", Length, Limits, 0, 10, 3},
    {Field::LimitCapLow, "limit.capLow", Share, Limits, 0.1, 0.9, 0.3},
    {Field::LimitCapHigh, "limit.capHigh", Share, Limits, 0.5, 1.5, 0.3},
    {Field::LimitCapEase, "limit.capEase", Length, Limits, 0, 15, 3},
    {Field::LimitShoulderLow, "limit.shoulderLow", Length, Limits, 0, 20, 4},
    {Field::LimitShoulderHigh, "limit.shoulderHigh", Length, Limits, 5, 30, 6},
    {Field::LimitDepthEase, "limit.depthEase", Length, Limits, 0, 20, 4},
    {Field::LimitUnderarm, "limit.underarm", Share, Limits, 0.4, 1, 0.2},
    {Field::LimitRoomLow, "limit.roomLow", Length, Limits, -10, 20, 4},
    {Field::LimitRoomHigh, "limit.roomHigh", Length, Limits, 0, 60, 6},
    {Field::LimitNeckStretch, "limit.neckStretch", Share, Limits, 1, 2.5, 0.5},
    {Field::LimitHandStretch, "limit.handStretch", Share, Limits, 1, 2.5, 0.5},
}};

const std::array<ChoiceInfo, kChoiceCount>& choices() {
  static const std::array<ChoiceInfo, kChoiceCount> table{{
      {Choice::Figure, "figure", {"woman", "man", "child", "baby"}},
      {Choice::Garment, "garment", {"pullover", "jacket"}},
      {Choice::Neckline, "neckline", {"round", "vee", "square", "boat", "high"}},
      {Choice::SideSeam, "side", {"straight", "shaped"}},
      {Choice::SleeveLine, "sleeveLine", {"tapered", "straight", "flared", "fitted", "full"}},
      {Choice::SleeveFrom, "sleeveFrom", {"underarm", "shoulder"}},
      {Choice::CapLean, "capLean", {"upright", "leaning"}},
      {Choice::WorkedOut,
       "workedOut",
       {"capHeight", "upperArmEase", "armholeDepth", "crownWidth", "capEase"}},
      {Choice::BandMade, "bandMade", {"knittedOn", "pickedUp"}, jackets},
      {Choice::Washed, "washed", {"no", "yes"}},
      {Choice::CapTop, "capTop", {"smooth", "gathered", "pleated"}},
      {Choice::EveryRow, "everyRow", {"no", "yes"}},
      {Choice::BackNeck, "backNeck", {"shaped", "straight"}},
      {Choice::ShoulderWork, "shoulderWork", {"steps", "shortRows"}},
      {Choice::Hem, "hem", {"ribbed", "plain", "faced"}},
      {Choice::BodyLength, "bodyLength", {"highHip", "cropped", "waist", "hip"}},
      {Choice::BustShaping, "bustShaping", {"none", "shortRows"}},
      {Choice::ButtonSide, "buttonSide", {"usual", "right", "left"}, jackets},
      {Choice::CapRise, "capRise", {"usual", "shallow", "high"}},
      {Choice::FillFrom, "fillFrom", {"survey", "size"}, grown},
      {Choice::YarnClass,
       "yarnClass",
       {"notNamed", "lace", "superFine", "fine", "light", "medium", "bulky", "superBulky",
        "jumbo"}},
      {Choice::Rib, "rib", {"twoTwo", "oneOne", "threeOne", "garter", "seed", "plain", "own"}},
      {Choice::RibChange, "ribChange", {"evenly", "none"}},
      {Choice::PlainEdge, "plainEdge", {"curls", "garter"}, plainHems},
      {Choice::ShoulderJoin, "shoulderJoin", {"sewn", "threeNeedles"}, shortShoulders},
      {Choice::TakenOn, "takenOn", {"body", "garment"}},
  }};
  return table;
}

constexpr bool inOrder() {
  for (int i = 0; i < kFieldCount; ++i)
    if (int(kFields[i].id) != i) return false;
  return true;
}
static_assert(inOrder(), "kFields must list the fields in the order of the enum");

constexpr std::array<std::pair<Field, Field>, 10> kEases{{
    {Field::Bust, Field::EaseBust},
    {Field::Waist, Field::EaseWaist},
    {Field::Hip, Field::EaseHip},
    {Field::CrossShoulder, Field::EaseCrossShoulder},
    {Field::CrossFront, Field::EaseCrossFront},
    {Field::CrossBack, Field::EaseCrossBack},
    {Field::ArmholeDepth, Field::EaseArmholeDepth},
    {Field::UpperArm, Field::EaseUpperArm},
    {Field::Elbow, Field::EaseElbow},
    {Field::Wrist, Field::EaseWrist},
}};

} // namespace

const FieldInfo& info(Field f) {
  return kFields[std::size_t(f)];
}

std::optional<Field> fieldByKey(std::string_view key) {
  for (const FieldInfo& i : kFields)
    if (i.key == key) return i.id;
  return std::nullopt;
}

std::optional<Field> easeOf(Field measurement) {
  for (const auto& [m, e] : kEases)
    if (m == measurement) return e;
  return std::nullopt;
}

std::optional<Field> measurementOf(Field ease) {
  for (const auto& [m, e] : kEases)
    if (e == ease) return m;
  return std::nullopt;
}

const ChoiceInfo& info(Choice c) {
  return choices()[std::size_t(c)];
}

std::optional<Choice> choiceByKey(std::string_view key) {
  for (const ChoiceInfo& c : choices())
    if (c.key == key) return c.id;
  return std::nullopt;
}

std::optional<int> optionByKey(Choice c, std::string_view option) {
  const auto& all = info(c).options;
  const auto at = std::find(all.begin(), all.end(), option);
  if (at == all.end()) return std::nullopt;
  return int(at - all.begin());
}

} // namespace scye
