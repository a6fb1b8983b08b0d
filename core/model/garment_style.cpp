#include "model/garment_style.h"

namespace scye {

// Switches, so that an option without its entry does not compile.
const NecklineTraits& traitsOf(Neckline neckline) {
  static constexpr NecklineTraits kRound{
      .dropShare = {0.35, 0}, .drop = {0, 7.5}, .band = {2, 2.5}};
  static constexpr NecklineTraits kVee{
      .straight = true, .withFronts = true, .dropShare = {0.85, 0.85}, .band = {2, 2.5}};
  static constexpr NecklineTraits kSquare{
      .corner = true, .dropShare = {0.35, 0}, .drop = {0, 7.5}, .band = {2, 2.5}};
  // Wide, but a small shoulder keeps its seam.
  static constexpr NecklineTraits kBoat{
      .ofCrossSmall = {0.5, 0.5}, .ofCrossGrown = 0.62, .drop = {2, 3}, .band = {2, 2.5}};
  // Wide enough for the head, as its band stands up.
  static constexpr NecklineTraits kHigh{.stands = true,
                                        .ofGirth = {0.42, 0.42},
                                        .ofCrossSmall = {0.4, 0.4},
                                        .dropShare = {0.35, 0},
                                        .drop = {0, 7.5},
                                        .band = {4, 6}};
  switch (neckline) {
  case Neckline::Round:
    return kRound;
  case Neckline::Vee:
    return kVee;
  case Neckline::Square:
    return kSquare;
  case Neckline::Boat:
    return kBoat;
  case Neckline::High:
    return kHigh;
  }
  return kRound;
}

const EdgeTraits& traitsOf(HemMade edge) {
  static constexpr EdgeTraits kRibbed{.ribbed = true, .depth = {3.5, 5}};
  static constexpr EdgeTraits kPlain{.depth = {3.5, 5}};
  static constexpr EdgeTraits kFaced{.folded = true, .depth = {2, 3}};
  switch (edge) {
  case HemMade::Ribbed:
    return kRibbed;
  case HemMade::Plain:
    return kPlain;
  case HemMade::Faced:
    return kFaced;
  }
  return kRibbed;
}

const SleeveTraits& traitsOf(SleeveLine line) {
  static constexpr SleeveTraits kEven{};
  static constexpr SleeveTraits kFlared{.ownCuff = true, .flares = true};
  static constexpr SleeveTraits kFitted{.atElbow = true};
  static constexpr SleeveTraits kFull{.ownCuff = true, .gathered = true};
  switch (line) {
  case SleeveLine::Tapered:
  case SleeveLine::Straight:
    return kEven;
  case SleeveLine::Flared:
    return kFlared;
  case SleeveLine::Fitted:
    return kFitted;
  case SleeveLine::Full:
    return kFull;
  }
  return kEven;
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
      .rib = d.as<RibKind>(),
      .ribChange = d.as<RibChange>(),
      .plainEdge = d.as<PlainEdge>(),
      .shoulderJoin = d.as<ShoulderJoin>(),
  };
}

bool matters(Field field, const GarmentStyle& style) {
  return info(field).matters == nullptr || info(field).matters(style);
}

bool matters(Choice choice, const GarmentStyle& style) {
  return info(choice).matters == nullptr || info(choice).matters(style);
}

} // namespace scye
