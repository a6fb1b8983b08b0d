#include "body/complete.h"

#include "body/estimate.h"
#include "body/gauge.h"
#include "body/size_tables.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

struct Line {
  double at0, slope;
  [[nodiscard]] double operator()(double x) const { return at0 + slope * x; }
};

// Regressions of the 1988 U.S. Army survey (tests/data), cm. Boys and girls: the women's line, an
// extrapolation, and so marked as an estimate.
constexpr Line kElbowWoman{11.08, 0.438}, kElbowMan{12.55, 0.454};
constexpr Line kWristWoman{10.6, 0.156}, kWristMan{11.4, 0.182};
constexpr Line kNeckWoman{20.43, 0.1567}, kNeckMan{21.47, 0.1959};
constexpr Line kBackWaistMan{33.09, 0.0815};

class Filler {
public:
  explicit Filler(const Design& design) : design_(design) {
    for (int i = 0; i < kFieldCount; ++i) {
      const Field f = Field(i);
      if (const auto v = design.given(f)) {
        sizes_.values[i] = *v;
        sizes_.origins[i] = !isMeasurement(f)                     ? Origin::Set
                            : design.source(f) == Source::Garment ? Origin::GivenGarment
                                                                  : Origin::GivenBody;
      }
    }
  }

  Sizes run() {
    ease();
    measurements();
    swatch();
    style();
    knitting();
    limits();
    return std::move(sizes_);
  }

private:
  [[nodiscard]] double at(Field f) const { return sizes_[f]; }
  [[nodiscard]] Figure figure() const { return design_.as<Figure>(Choice::Figure); }
  [[nodiscard]] bool jacket() const {
    return design_.as<Garment>(Choice::Garment) == Garment::Jacket;
  }
  [[nodiscard]] bool small() const { return figure() == Figure::Child || figure() == Figure::Baby; }
  void fill(Field f, double value, Origin origin = Origin::Rule) {
    if (design_.has(f) || filled_[std::size_t(f)]) return;
    filled_[std::size_t(f)] = true;
    sizes_.values[std::size_t(f)] = std::clamp(value, info(f).low, info(f).high);
    sizes_.origins[std::size_t(f)] = origin;
  }

  // Starting ease: common practice; bust steps agree with the Craft Yarn Council's "standard" 5-10
  // cm.
  void ease() {
    double bust = 5, arm = 4, depth = 2;
    if (figure() == Figure::Child)
      bust = 8, arm = 5, depth = 2.5;
    else if (figure() != Figure::Baby && jacket())
      bust = 8, arm = 6, depth = 3;
    // A wider sleeve has a shallower cap in the same armhole, a narrower one a higher cap.
    switch (design_.as<CapRise>(Choice::CapRise)) {
    case CapRise::Shallow:
      arm += figure() == Figure::Baby ? 1 : small() ? 1.5 : 3;
      break;
    case CapRise::High:
      arm -= 2;
      break;
    case CapRise::Usual:
      break;
    }
    fill(Field::EaseBust, bust);
    fill(Field::EaseWaist, at(Field::EaseBust));
    fill(Field::EaseHip, at(Field::EaseBust));
    for (Field f : {Field::EaseCrossShoulder, Field::EaseCrossFront, Field::EaseCrossBack})
      fill(f, 0);
    fill(Field::EaseArmholeDepth, depth);
    fill(Field::EaseUpperArm, arm);
    // A fitted forearm is close at the elbow, and widens as evenly below it as above (common
    // practice).
    fill(Field::EaseElbow, std::min(arm, 2.5));
    fill(Field::EaseWrist, 3);
  }

  void measurements() {
    constexpr double kStartBust[] = {92, 102, 66, 46}; // a bare design still draws something
    fill(Field::Bust, kStartBust[int(figure())]);
    const double bust = sizes_.body(Field::Bust);
    survey();
    const TableSize table = sizeAtBust(figure(), bust);
    sizes_.tableSize = table.name;
    const auto fromTable = [&](Field f, double value) { fill(f, value, Origin::Table); };
    fromTable(Field::Waist, table.waist);
    fromTable(Field::Hip, table.hip);
    fromTable(Field::CrossShoulder, table.crossBack);
    fromTable(Field::ArmholeDepth, table.armholeDepth);
    fromTable(Field::UpperArm, table.upperArm);
    fromTable(Field::SleeveToUnderarm, table.armToUnderarm);
    if (figure() == Figure::Man)
      fill(Field::BackWaistLength, kBackWaistMan(bust), Origin::Estimate);
    else
      fromTable(Field::BackWaistLength, table.backLength);
    // Over the bust it is further to the waist; a child is alike before and behind.
    fill(Field::FrontWaistLength,
         at(Field::BackWaistLength) + (small() ? 1.5 : 2) + (figure() == Figure::Woman ? 2.5 : 0));
    const double shoulder = sizes_.body(Field::CrossShoulder);
    fill(Field::CrossFront, shoulder);
    fill(Field::CrossBack, shoulder);
    const bool man = figure() == Figure::Man;
    const double arm = sizes_.body(Field::UpperArm);
    // A small arm has a small elbow and wrist: below the survey's range both scale with the arm.
    const double scale = std::min(1.0, arm / 22);
    fill(Field::Elbow, scale * (man ? kElbowMan : kElbowWoman)(std::max(arm, 22.0)),
         Origin::Estimate);
    fill(Field::Wrist, scale * (man ? kWristMan : kWristWoman)(std::max(arm, 22.0)),
         Origin::Estimate);
    fill(Field::HandGirth, 1.25 * sizes_.body(Field::Wrist), Origin::Estimate);
    fill(Field::NeckBase, (man ? kNeckMan : kNeckWoman)(bust), Origin::Estimate);
    fill(Field::HeadGirth, headGirth(bust));
    lengths();
  }

  // Where other bodies with her measurements lie; and if she wants, the estimates fill in what she
  // has not taken. The survey's cross widths and neck are other measures than ours (body/survey.h):
  // those stay with table and rules.
  void survey() {
    if (figure() != Figure::Woman && figure() != Figure::Man) return;
    Body body = bodyMeasurements(design_);
    if (!body.contains(Field::Bust)) body[Field::Bust] = sizes_.body(Field::Bust);
    const bool fills = design_.as<FillFrom>(Choice::FillFrom) == FillFrom::Survey;
    for (const auto& [f, estimate] : estimates(body, figure())) {
      if (f == Field::CrossShoulder || f == Field::CrossBack || f == Field::ShoulderLength ||
          f == Field::NeckBase || design_.has(f))
        continue;
      sizes_.likely[std::size_t(f)] = Likely{estimate.low, estimate.high};
      if (fills) fill(f, estimate.value, Origin::Estimate);
    }
    sizes_.beyondSurvey = scye::beyondSurvey(body, figure());
  }

  [[nodiscard]] double headGirth(double bust) const { // common practice
    switch (figure()) {
    case Figure::Man:
      return 58;
    case Figure::Child:
      return std::clamp(50 + 4 * (bust - 53) / 29, 50.0, 54.0);
    case Figure::Baby:
      return std::clamp(40 + 8 * (bust - 40) / 12, 38.0, 50.0); // from memory
    case Figure::Woman:
      break;
    }
    return 56;
  }

  void lengths() {
    fill(Field::ShoulderDrop,
         small() ? std::clamp(0.07 * at(Field::CrossShoulder), 1.5, 2.5) : 2.5);
    fill(Field::BackNeckDrop, small() ? 1.5 : 2);
    // The body reaches this far below the waist (common practice), by body length and figure.
    constexpr double kBelowWaist[][4] = {
        {16, 20, 10, 6}, {-5, -4, -3, -2}, {3, 4, 2, 2}, {22, 26, 14, 10}};
    fill(Field::HemToUnderarm, kBelowWaist[design_.option(Choice::BodyLength)][int(figure())] +
                                   at(Field::BackWaistLength) + at(Field::BackNeckDrop) -
                                   sizes_.body(Field::ArmholeDepth) - at(Field::ShoulderDrop));
    fill(Field::SleeveToShoulder,
         at(Field::SleeveToUnderarm) + 0.65 * sizes_.body(Field::ArmholeDepth));
    const bool high = design_.as<Neckline>(Choice::Neckline) == Neckline::High;
    const bool straight = design_.as<BackNeck>(Choice::BackNeck) == BackNeck::Straight;
    // A high neck stays wide enough for the head, as its band stands up; one that is straight
    // behind lacks the length of the back neck's curve.
    const double neck = (high ? 0.4 : straight ? 0.39 : 0.36) * sizes_.finished(Field::CrossBack);
    fill(Field::NeckBand, high ? (small() ? 4 : 6) : small() ? 2 : 2.5);
    const double band = bandInNeck(design_, sizes_), drop = at(Field::ShoulderDrop);
    if (design_.has(Field::ShoulderLength)) {
      const double run =
          std::sqrt(std::max(0.0, std::pow(at(Field::ShoulderLength), 2) - drop * drop));
      fill(Field::NeckWidth, sizes_.finished(Field::CrossShoulder) - 2 * run - 2 * band);
    } else if (design_.as<Neckline>(Choice::Neckline) == Neckline::Boat) {
      // Common practice: wide, but a small shoulder keeps its seam.
      fill(Field::NeckWidth, (small() ? 0.5 : 0.62) * sizes_.finished(Field::CrossBack));
    } else {
      fill(Field::NeckWidth, neck);
    }
    const double half =
        0.5 * (sizes_.finished(Field::CrossShoulder) - at(Field::NeckWidth) - 2 * band);
    fill(Field::ShoulderLength, std::hypot(half, drop));
  }

  void swatch() {
    fill(Field::SwatchStitches, 22);
    fill(Field::SwatchWidth, kSwatchSide);
    fill(Field::SwatchHeight, kSwatchSide);
    fill(Field::SwatchWeight, 0);
    const GaugeReport gauge = gaugeReport(design_);
    const double width = gauge.across ? gauge.across->size.value
                                      : at(Field::SwatchWidth) / at(Field::SwatchStitches);
    // Rows to stitches in stockinette 1.2-1.4 (printed patterns).
    fill(Field::SwatchRows, 1.36 / width * at(Field::SwatchHeight), Origin::Estimate);
    sizes_.stitch = {width, gauge.along ? gauge.along->size.value
                                        : at(Field::SwatchHeight) / at(Field::SwatchRows)};
  }

  void style() {
    fill(Field::BackShare, 0.5);
    const double depth = sizes_.finished(Field::ArmholeDepth);
    switch (design_.as<Neckline>(Choice::Neckline)) {
    case Neckline::Vee:
      fill(Field::FrontNeckDrop, 0.85 * depth);
      break;
    case Neckline::Boat:
      fill(Field::FrontNeckDrop, small() ? 2 : 3);
      break;
    default:
      fill(Field::FrontNeckDrop, small() ? 0.35 * depth : 7.5);
      break;
    }
    // A small pullover opens at the back neck, or no head would pass (common practice).
    fill(Field::BackOpening, !small() || jacket() ? 0 : figure() == Figure::Baby ? 10 : 6);
    const bool faced = design_.as<HemMade>(Choice::Hem) == HemMade::Faced;
    fill(Field::HemDepth, faced ? (small() ? 2 : 3) : small() ? 3.5 : 5);
    fill(Field::CuffDepth, small() ? 3.5 : 5);
    constexpr double kLeastBand = 4; // stitches
    fill(Field::ButtonBand, std::max(small() ? 2 : 2.5, kLeastBand * sizes_.stitch.width));
    front(depth);

    const double bust = sizes_.finished(Field::Bust), share = at(Field::BackShare);
    const double awayBack = 0.5 * (bust * share - sizes_.finished(Field::CrossBack));
    const double awayFront = 0.5 * (bust * (1 - share) - sizes_.finished(Field::CrossFront));
    const double away = std::min(awayBack, awayFront);
    fill(Field::UnderarmBack,
         startingUnderarm(design_.has(Field::UnderarmFront) ? awayBack : away));
    fill(Field::UnderarmFront,
         design_.has(Field::UnderarmBack) ? at(Field::UnderarmBack) : startingUnderarm(away));
    fill(Field::RiseShare, startingRise(away, at(Field::UnderarmBack), depth));
    fill(Field::ScoopBack, 0.55);
    fill(Field::ScoopFront, 0.55);

    sleeve(depth);
  }

  void front(double depth) {
    const double underarm = sizes_.finished(Field::HemToUnderarm),
                 neckPoint = underarm + depth + at(Field::ShoulderDrop);
    fill(Field::WaistHeight, neckPoint - at(Field::BackNeckDrop) - at(Field::BackWaistLength));
    const double longer =
        at(Field::FrontWaistLength) - at(Field::BackWaistLength) - at(Field::BackNeckDrop);
    fill(Field::BustDepth, std::max(0.0, longer));
    // Common practice: short rows end a good 2.5 cm before the bust point, which lies about a tenth
    // of the bust girth from the middle.
    const double half = 0.5 * (1 - at(Field::BackShare)) * sizes_.finished(Field::Bust);
    fill(Field::BustReach, half - 0.105 * sizes_.body(Field::Bust) - 2.5);
    const double hem =
        design_.as<HemMade>(Choice::Hem) == HemMade::Ribbed ? at(Field::HemDepth) : 0;
    // Short rows lift underarm and neck of the front.
    const bool lifted = design_.as<BustShaping>(Choice::BustShaping) == BustShaping::ShortRows;
    const double lift = lifted ? at(Field::BustDepth) : 0;
    const double neck = neckPoint - at(Field::FrontNeckDrop) - bandInNeck(design_, sizes_) + lift;
    fill(Field::Buttons, startingButtons(hem + kButtonInset, underarm + lift, neck - kButtonInset));
  }

  void sleeve(double depth) {
    const double arm = sizes_.finished(Field::UpperArm), wrist = sizes_.finished(Field::Wrist);
    const CapTop top = design_.as<CapTop>(Choice::CapTop);
    fill(Field::CapEase, top == CapTop::Smooth ? 1 : small() ? 5 : top == CapTop::Gathered ? 9 : 8);
    // Half of what is drawn in widens the crown, the other half lifts it (common practice: a puff
    // does both).
    const double drawnIn = drawnInAtCrown(design_, at(Field::CapEase));
    fill(Field::CrownWidth,
         std::clamp(0.20 * arm, figure() == Figure::Baby ? 3.0 : 4.0, 10.0) + 0.5 * drawnIn);
    fill(Field::GatherWidth, std::clamp(0.5 * depth, 5.0, 12.0));
    fill(Field::Pleats, small() ? 2 : 4);
    const CapRise rise = design_.as<CapRise>(Choice::CapRise);
    // A fuller curve is longer and so needs less height, a leaner one more.
    fill(Field::LowerFullness, rise == CapRise::Shallow ? 0.5 : rise == CapRise::High ? 0.4 : 0.45);
    fill(Field::UpperFullness, rise == CapRise::High ? 0.5 : 0.55);
    fill(Field::CapHeight, 0.65 * depth);
    const double armLength = sizes_.finished(Field::SleeveToUnderarm);
    fill(Field::SleeveLength, armLength);
    fill(Field::FlareFrom, at(Field::SleeveLength));
    // The cuff of a full sleeve lies about the arm where it ends.
    const double down = std::clamp(at(Field::SleeveLength) / std::max(armLength, 1.0), 0.0, 1.0);
    const bool full = design_.as<SleeveLine>(Choice::SleeveLine) == SleeveLine::Full;
    fill(Field::CuffGirth, full ? arm + down * (wrist - arm) : 1.15 * arm);
    // Common practice: one and a half to two and a half times the cuff is gathered into it.
    const double cuff = at(Field::CuffGirth);
    fill(Field::FullGirth, std::clamp(1.3 * arm, 1.5 * cuff, 2.4 * cuff));
  }

  void knitting() {
    const double perTen = 10 * at(Field::SwatchStitches) / at(Field::SwatchWidth);
    fill(Field::Selvedge, perTen < 7 ? 0 : 1);
    fill(Field::PatternMultiple, 1);
    fill(Field::PatternExtra, 0);
    fill(Field::Fidelity, 0.5);
  }

  void limits() { // common practice
    fill(Field::LimitUpperArm, 1);
    fill(Field::LimitCapLow, 0.5);
    fill(Field::LimitCapHigh, 0.85);
    fill(Field::LimitCapEase, 2.5);
    fill(Field::LimitShoulderLow, figure() == Figure::Baby ? 3 : figure() == Figure::Child ? 4 : 5);
    fill(Field::LimitShoulderHigh, 16);
    fill(Field::LimitDepthEase, 5);
    // A man's published armholes are deep for the survey's short backs: his limit lies lower.
    fill(Field::LimitUnderarm, figure() == Figure::Man ? 0.75 : 2.0 / 3);
    fill(Field::LimitNeckStretch, 1.5);
    fill(Field::LimitHandStretch, 1.4);
  }

  const Design& design_;
  Sizes sizes_;
  std::array<bool, kFieldCount> filled_{}; // the first to fill a field has the say
};

} // namespace

double startingUnderarm(double away) {
  const double low = std::min(1.0, 0.6 * away);
  return std::max(0.0, std::clamp(0.45 * away, std::max(0.0, low), 5.0));
}

double startingRise(double away, double underarm, double depth) {
  return std::clamp(1.4 * (away - underarm) / depth, 0.35, 0.65);
}

double bandInNeck(const Design& design, const Sizes& sizes) {
  return design.as<Neckline>(Choice::Neckline) == Neckline::High ? 0 : sizes[Field::NeckBand];
}

double drawnInAtCrown(const Design& design, double capEase) {
  return design.as<CapTop>(Choice::CapTop) == CapTop::Smooth ? 0
                                                             : std::max(0.0, capEase - kSmoothEase);
}

int startingButtons(double first, double bust, double last) {
  constexpr double kClosest = 5, kUsual = 7.5, kWidest = 9.5; // cm apart, common practice
  const double length = last - first;
  if (length < kClosest) return length < kClosest / 2 ? 1 : 2;
  int best = 2;
  double least = 1e300;
  for (int n = 2; n <= info(Field::Buttons).high; ++n) {
    const double apart = length / (n - 1);
    if (apart < kClosest) break;
    const double off = std::remainder(bust - first, apart);
    const bool reaches = bust < last;
    const double cost = (reaches ? std::abs(off) : 0) + 0.25 * std::abs(apart - kUsual) +
                        (apart > kWidest ? 5 * (apart - kWidest) : 0);
    if (cost < least) least = cost, best = n;
  }
  return best;
}

Sizes complete(const Design& design) {
  return Filler(design).run();
}

} // namespace scye
