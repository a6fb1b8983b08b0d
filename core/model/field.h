// The values a design is made of. Every number the knitter can set has one name here, used alike by
// the sliders, the design file, the command line, undo, findings and remedies. What a value means
// is told beside it; lengths are cm, shares are fractions, counts are whole numbers, weights are g,
// thicknesses of needles mm, lengths of yarn m.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace scye {

enum class Field : std::uint8_t {
  // Measurements, as taken: on the body, or flat on a garment that fits (there a girth is half).
  Bust,
  Waist,
  Hip,
  CrossShoulder,
  CrossFront,
  CrossBack,
  ArmholeDepth,  // on the body from the nape, down the middle of the back, to the underarm line; on
                 // a
                 // garment from the shoulder tip straight down to it
  TipToUnderarm, // the body's, plumb from the shoulder tip to the underarm line
  ScyeGirth,     // round the armhole: over the shoulder tip and through the armpit
  UpperArm,
  Elbow,
  Wrist,
  BackWaistLength,  // nape to waist
  FrontWaistLength, // side neck point over the bust to the waist
  HemToUnderarm,    // cast-on edge to underarm line
  SleeveToUnderarm, // wrist to underarm
  SleeveToShoulder, // wrist to shoulder tip
  NeckWidth,        // finished, inside the band
  ShoulderLength,   // on the body from the side of the neck, on a garment from the neckband, to the
                    // tip
  ShoulderDrop,     // of the garment: how far the tip lies below the neck point
  NeckBase,
  HeadGirth,
  HandGirth,
  // Ease: finished minus body, may be negative; of what was measured on a garment, how much more
  // the
  // new one is to measure than that garment.
  EaseBust,
  EaseWaist,
  EaseHip,
  EaseCrossShoulder,
  EaseCrossFront,
  EaseCrossBack,
  EaseArmholeDepth,
  EaseUpperArm,
  EaseElbow,
  EaseWrist,
  // The swatch, washed: counts over lengths.
  SwatchStitches,
  SwatchWidth,
  SwatchRows,
  SwatchHeight,
  SwatchWeight, // of that piece, g; 0: not weighed
  // Bodice.
  BackShare,     // of the bust girth that the back takes
  FrontNeckDrop, // finished, inside the band
  BackNeckDrop,
  NeckBand,
  BackOpening, // slit below the back neck, so that a head passes
  HemDepth,    // of the rib, or of the facing that is folded in
  WaistHeight, // of the narrowest place over the lower edge
  ButtonBand,  // width; the overlap is the same
  Buttons,     // how many
  BustDepth,
  BustReach, // short rows: how much longer the front's middle, how far in from the side
  UnderarmBack,
  UnderarmFront, // underarm bind-off of half a piece
  RiseShare,     // height of the armhole curve over the armhole depth
  ScoopBack,
  ScoopFront, // Bezier arm of the armhole curve, 0.5523 gives the quarter ellipse
  // Sleeve and cap.
  SleeveLength, // finished, edge to underarm
  CuffDepth,
  CuffGirth,   // CuffGirth: finished opening of a flared sleeve, or cuff of a full one
  FlareFrom,   // how far above its edge a flared sleeve begins to widen
  FullGirth,   // of a full sleeve above its cuff
  CapEase,     // cap edge minus armhole edge, gathers and pleats included
  GatherWidth, // of the armhole at the shoulder, over which gathers or pleats are drawn in
  Pleats,      // how many
  CapHeight,   // used when the cap height is pinned
  CrownWidth,
  LowerFullness,
  UpperFullness,
  // Knitting.
  Selvedge, // stitches a sewn edge carries beyond the seam line
  PatternMultiple,
  PatternExtra,
  Fidelity,    // 0 simplest directions, 1 closest to the curve
  RibMultiple, // stitches over which an own edge stitch repeats
  // Needles and yarn, as told above the directions; 0: not said.
  NeedleBody,
  NeedleRib,
  BallWeight,
  BallLength,  // of one ball, from its label
  YarnReserve, // how much more to buy than will be knitted
  // Where warnings begin.
  LimitUpperArm,
  LimitCapLow,
  LimitCapHigh,
  LimitCapEase,
  LimitShoulderLow,
  LimitShoulderHigh,
  LimitDepthEase,
  LimitUnderarm, // how far down the back waist length the underarm may lie
  LimitRoomLow,
  LimitRoomHigh, // of the armhole's edge over the girth that it goes round
  LimitNeckStretch,
  LimitHandStretch,
};
inline constexpr int kFieldCount = int(Field::LimitHandStretch) + 1;

enum class FieldKind : std::uint8_t { Girth, Length, Share, Count, Weight, Needle, Run };

enum class FieldGroup : std::uint8_t { Measure, Ease, Swatch, Bodice, Sleeve, Knitting, Limits };

struct GarmentStyle;

struct FieldInfo {
  Field id;
  std::string_view key; // "ease.bust"; the label is the phrase "field.<key>"
  FieldKind kind;
  FieldGroup group;
  double low, high; // outside of these a value is refused
  double span;      // a slider shows this much to either side of the filled-in value
  bool (*matters)(const GarmentStyle&) = nullptr; // for which garments; absent: for all
};

[[nodiscard]] const FieldInfo& info(Field f);
[[nodiscard]] std::optional<Field> fieldByKey(std::string_view key);
[[nodiscard]] inline bool isMeasurement(Field f) {
  return info(f).group == FieldGroup::Measure;
}
// A weight, a needle or a yarn's length that nobody has told: 0.
[[nodiscard]] inline bool isUnsaid(Field f, double value) {
  const FieldKind kind = info(f).kind;
  return value == 0 &&
         (kind == FieldKind::Weight || kind == FieldKind::Needle || kind == FieldKind::Run);
}
// The ease that belongs to a measurement, if it has one.
[[nodiscard]] std::optional<Field> easeOf(Field measurement);
// The measurement an ease belongs to.
[[nodiscard]] std::optional<Field> measurementOf(Field ease);

// Things to choose between, by the same rules.
enum class Choice : std::uint8_t {
  Figure,
  Garment,
  Neckline,
  SideSeam,
  SleeveLine,
  SleeveFrom,
  CapLean,
  WorkedOut,
  BandMade,
  Washed,
  CapTop,
  EveryRow,
  BackNeck,
  ShoulderWork,
  Hem,
  BodyLength,
  BustShaping,
  ButtonSide,
  CapRise,
  FillFrom,     // what fills in an adult's measurements that were not taken
  YarnClass,    // as printed on the label
  Rib,          // what the edges are knitted in
  RibChange,    // whether stitches are added or taken away between an edge and what it belongs to
  PlainEdge,    // whether a plain edge is kept from curling
  ShoulderJoin, // of shoulders by short rows
  TakenOn,      // where measurements are taken, unless a row says otherwise
};
inline constexpr int kChoiceCount = int(Choice::TakenOn) + 1;

struct ChoiceInfo {
  Choice id;
  std::string_view key;
  std::initializer_list<std::string_view> options; // option 0 is the start
  bool (*matters)(const GarmentStyle&) = nullptr;  // for which garments; absent: for all
};
[[nodiscard]] const ChoiceInfo& info(Choice c);
[[nodiscard]] std::optional<Choice> choiceByKey(std::string_view key);
[[nodiscard]] std::optional<int> optionByKey(Choice c, std::string_view option);

enum class Figure : int { Woman, Man, Child, Baby };
enum class Garment : int { Pullover, Jacket };
enum class Neckline : int { Round, Vee, Square, Boat, High }; // high: its band stands up
enum class SideSeam : int { Straight, Shaped };
enum class SleeveLine : int {
  Tapered,
  Straight,
  Flared,
  Fitted,
  Full
}; // full: gathered into a cuff
enum class SleeveFrom : int { Underarm, Shoulder };
enum class CapLean : int { Upright, Leaning };
enum class WorkedOut : int { CapHeight, UpperArmEase, ArmholeDepth, CrownWidth, CapEase };
enum class BandMade : int { KnittedOn, PickedUp };
enum class CapTop : int { Smooth, Gathered, Pleated };
enum class BackNeck : int { Shaped, Straight };
enum class ShoulderWork : int { Steps, ShortRows };
enum class HemMade : int { Ribbed, Plain, Faced };
enum class BodyLength : int { HighHip, Cropped, Waist, Hip };
enum class BustShaping : int { None, ShortRows };
enum class ButtonSide : int { Usual, Right, Left }; // of the wearer; usual: women right, men left
enum class CapRise : int { Usual, Shallow, High };  // what the starting values aim at
enum class RibKind : int { TwoTwo, OneOne, ThreeOne, Garter, Seed, Plain, Own };
enum class RibChange : int { Evenly, None };
enum class PlainEdge : int { Curls, Garter };
enum class ShoulderJoin : int { Sewn, ThreeNeedles };
enum class YesNo : int { No, Yes };
enum class FillFrom : int { Survey, Size };

// Which choice the options of an enum belong to.
template <Choice choice>
struct OfChoice {
  static constexpr Choice kChoice = choice;
};
template <class E>
struct OptionsOf;
template <>
struct OptionsOf<Figure> : OfChoice<Choice::Figure> {};
template <>
struct OptionsOf<Garment> : OfChoice<Choice::Garment> {};
template <>
struct OptionsOf<Neckline> : OfChoice<Choice::Neckline> {};
template <>
struct OptionsOf<SideSeam> : OfChoice<Choice::SideSeam> {};
template <>
struct OptionsOf<SleeveLine> : OfChoice<Choice::SleeveLine> {};
template <>
struct OptionsOf<SleeveFrom> : OfChoice<Choice::SleeveFrom> {};
template <>
struct OptionsOf<CapLean> : OfChoice<Choice::CapLean> {};
template <>
struct OptionsOf<WorkedOut> : OfChoice<Choice::WorkedOut> {};
template <>
struct OptionsOf<BandMade> : OfChoice<Choice::BandMade> {};
template <>
struct OptionsOf<CapTop> : OfChoice<Choice::CapTop> {};
template <>
struct OptionsOf<BackNeck> : OfChoice<Choice::BackNeck> {};
template <>
struct OptionsOf<ShoulderWork> : OfChoice<Choice::ShoulderWork> {};
template <>
struct OptionsOf<HemMade> : OfChoice<Choice::Hem> {};
template <>
struct OptionsOf<BodyLength> : OfChoice<Choice::BodyLength> {};
template <>
struct OptionsOf<BustShaping> : OfChoice<Choice::BustShaping> {};
template <>
struct OptionsOf<ButtonSide> : OfChoice<Choice::ButtonSide> {};
template <>
struct OptionsOf<CapRise> : OfChoice<Choice::CapRise> {};
template <>
struct OptionsOf<RibKind> : OfChoice<Choice::Rib> {};
template <>
struct OptionsOf<RibChange> : OfChoice<Choice::RibChange> {};
template <>
struct OptionsOf<PlainEdge> : OfChoice<Choice::PlainEdge> {};
template <>
struct OptionsOf<ShoulderJoin> : OfChoice<Choice::ShoulderJoin> {};
template <>
struct OptionsOf<FillFrom> : OfChoice<Choice::FillFrom> {};

// Choice::YarnClass: option 0 is "not named", option n + 1 the published class n
// (body/yarn_classes.h).
[[nodiscard]] inline std::optional<int> namedYarnClass(int option) {
  return option > 0 ? std::optional(option - 1) : std::nullopt;
}

} // namespace scye
