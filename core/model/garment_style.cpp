#include "model/garment_style.h"

#include "model/enum_keys.h"

namespace scye {
namespace {

constexpr EnumTable<Neckline, Neckline::High, NecklineTraits> kNecklines{{
    {Neckline::Round, {.dropShare = {0.35, 0}, .drop = {0, 7.5}, .band = {2, 2.5}}},
    {Neckline::Vee,
     {.straight = true, .withFronts = true, .dropShare = {0.85, 0.85}, .band = {2, 2.5}}},
    {Neckline::Square,
     {.corner = true, .dropShare = {0.35, 0}, .drop = {0, 7.5}, .band = {2, 2.5}}},
    // Wide, but a small shoulder keeps its seam.
    {Neckline::Boat,
     {.ofCrossSmall = {0.5, 0.5}, .ofCrossGrown = 0.62, .drop = {2, 3}, .band = {2, 2.5}}},
    // Wide enough for the head, as its band stands up.
    {Neckline::High,
     {.stands = true,
      .ofGirth = {0.42, 0.42},
      .ofCrossSmall = {0.4, 0.4},
      .dropShare = {0.35, 0},
      .drop = {0, 7.5},
      .band = {4, 6}}},
}};

constexpr EnumTable<HemMade, HemMade::Faced, EdgeTraits> kEdges{{
    {HemMade::Ribbed, {.ribbed = true, .depth = {3.5, 5}}},
    {HemMade::Plain, {.depth = {3.5, 5}}},
    {HemMade::Faced, {.folded = true, .depth = {2, 3}}},
}};

constexpr EnumTable<SleeveLine, SleeveLine::Full, SleeveTraits> kSleeves{{
    {SleeveLine::Tapered, {}},
    {SleeveLine::Straight, {}},
    {SleeveLine::Flared, {.ownCuff = true, .flares = true}},
    {SleeveLine::Fitted, {.atElbow = true}},
    {SleeveLine::Full, {.ownCuff = true, .gathered = true}},
}};

} // namespace

const NecklineTraits& traitsOf(Neckline neckline) {
  return kNecklines[neckline];
}
const EdgeTraits& traitsOf(HemMade edge) {
  return kEdges[edge];
}
const SleeveTraits& traitsOf(SleeveLine line) {
  return kSleeves[line];
}

GarmentStyle styleOf(const Design& d) {
  return {
      .figure = d.as<Figure>(),
      .garment = d.as<Garment>(),
      .neckline = d.as<Neckline>(),
      .backNeck = d.as<BackNeck>(),
      .sideSeam = d.as<SideSeam>(),
      .sleeveLine = d.as<SleeveLine>(),
      .sleeveFrom = d.as<SleeveFrom>(),
      .capLean = d.as<CapLean>(),
      .capTop = d.as<CapTop>(),
      .capRise = d.as<CapRise>(),
      .workedOut = d.as<WorkedOut>(),
      .bandMade = d.as<BandMade>(),
      .shoulderWork = d.as<ShoulderWork>(),
      .hemMade = d.as<HemMade>(),
      .bodyLength = d.as<BodyLength>(),
      .bustShaping = d.as<BustShaping>(),
      .buttonSide = d.as<ButtonSide>(),
      .fillFrom = d.as<FillFrom>(),
  };
}

bool matters(Field field, const GarmentStyle& style) {
  return info(field).matters == nullptr || info(field).matters(style);
}

bool matters(Choice choice, const GarmentStyle& style) {
  return info(choice).matters == nullptr || info(choice).matters(style);
}

} // namespace scye
