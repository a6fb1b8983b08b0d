#include "draft/complete.h"

#include "body/gauge.h"
#include "body/size_tables.h"
#include "draft/bodice.h"
#include "draft/starting.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

class Filler {
public:
  Filler(const Design& design, const Moments* population)
      : design_(design), population_(population), style_(sizes_.style) {
    sizes_.style = styleOf(design);
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
    widths();
    armhole();
    lengths();
    swatch();
    style();
    knitting();
    limits();
    return std::move(sizes_);
  }

private:
  [[nodiscard]] double at(Field f) const { return sizes_[f]; }
  [[nodiscard]] Figure figure() const { return style_.figure; }
  [[nodiscard]] bool small() const { return style_.small(); }
  void fill(Field f, double value, Origin origin = Origin::Rule) {
    if (design_.has(f) || filled_[std::size_t(f)]) return;
    filled_[std::size_t(f)] = true;
    sizes_.values[std::size_t(f)] = std::clamp(value, info(f).low, info(f).high);
    sizes_.origins[std::size_t(f)] = origin;
  }

  // An ease, or of what was measured on a garment no change to it.
  void fillEase(Field ease, double value) {
    sizes_.usualEase[std::size_t(ease)] = value;
    fill(ease, sizes_.fromGarment(*measurementOf(ease)) ? 0 : value);
  }

  // Starting ease: common practice; bust steps agree with the Craft Yarn Council's "standard" 5-10
  // cm.
  void ease() {
    double bust = 5, arm = 4;
    if (figure() == Figure::Child)
      bust = 8, arm = 5;
    else if (figure() != Figure::Baby && style_.jacket())
      bust = 8, arm = 5;
    // A wider sleeve has a shallower cap in the same armhole, a narrower one a higher cap.
    switch (style_.capRise) {
    case CapRise::Shallow:
      arm += figure() == Figure::Baby ? 1 : small() ? 1.5 : 3;
      break;
    case CapRise::High:
      arm -= 2;
      break;
    case CapRise::Usual:
      break;
    }
    fillEase(Field::EaseBust, bust);
    const double like = at(Field::EaseBust) + (sizes_.fromGarment(Field::Bust) ? bust : 0);
    fillEase(Field::EaseWaist, like);
    fillEase(Field::EaseHip, like);
    fillEase(Field::EaseUpperArm, arm);
    // A fitted forearm is close at the elbow, and widens as evenly below it as above (common
    // practice).
    fillEase(Field::EaseElbow, std::min(arm, 2.5));
    fillEase(Field::EaseWrist, 3);
    sizes_.usualEase[std::size_t(Field::EaseArmholeDepth)] = figure() == Figure::Child     ? 2.5
                                                             : !small() && style_.jacket() ? 3
                                                                                           : 2;
  }

  [[nodiscard]] DepthEase depthRule() const {
    return startingDepthEase(figure(), style_.jacket() ? Garment::Jacket : Garment::Pullover);
  }

  // What is known of the body; a garment's bust and upper arm tell of the body inside.
  [[nodiscard]] Body known() const {
    Body body = bodyMeasurements(design_);
    for (const Field f : {Field::Bust, Field::UpperArm})
      if (f == Field::Bust || design_.has(f)) body[f] = sizes_.body(f);
    return body;
  }

  // The drops hang the garment's armhole from its shoulder; a child's follows its shoulders.
  void drops(const Body& body) {
    double drop = 3;
    if (small()) {
      const auto given = design_.given(Field::CrossShoulder);
      const double shoulder = given ? *given : sizeAtBust(figure(), body.at(Field::Bust)).crossBack;
      drop = std::clamp(0.07 * shoulder, 1.5, 2.5);
    }
    fill(Field::ShoulderDrop, drop);
    fill(Field::BackNeckDrop, small() ? 1.5 : 2);
  }

  void measurements() {
    constexpr double kStartBust[] = {92, 102, 66, 46}; // a bare design still draws something
    fill(Field::Bust, kStartBust[int(figure())]);
    const Body body = known();
    drops(body);
    likely_ = likelyBody(figure(), style_.fillFrom, body,
                         at(Field::ShoulderDrop) - at(Field::BackNeckDrop), population_);
    sizes_.tableSize = likely_.tableSize;
    sizes_.beyondSurvey = likely_.beyondSurvey;
    for (const auto& [field, measure] : likely_.measures) {
      if (design_.has(field)) continue;
      sizes_.likely[std::size_t(field)] = measure.likely;
      fill(field, measure.value, measure.origin);
    }
    // Over the bust it is further to the waist; a child is alike before and behind.
    fill(Field::FrontWaistLength,
         at(Field::BackWaistLength) + (small() ? 1.5 : 2) + (figure() == Figure::Woman ? 2.5 : 0));
    fill(Field::CrossFront, sizes_.body(Field::CrossShoulder));
    fill(Field::HandGirth, 1.25 * sizes_.body(Field::Wrist), Origin::Estimate);
    fill(Field::HeadGirth, headGirth(sizes_.body(Field::Bust)));
  }

  // One width for shoulders, back and front. Where a cross width was measured and needs less, it is
  // cut to that and a little room.
  void widths() {
    const Garment garment = style_.jacket() ? Garment::Jacket : Garment::Pullover;
    const double shoulder = sizes_[Field::CrossShoulder], back = sizes_[Field::CrossBack];
    const bool fits = sizes_.fromGarment(Field::CrossShoulder);
    const double room = style_.jacket() ? kJacketBackRoom : kBackRoom;
    const double held = sizes_.fromGarment(Field::CrossBack) ? back - room : back;
    // Slender and broad-shouldered: what the armhole is to take away must be left.
    constexpr double kLeastAway = 1.75, kMostInside = 1;
    if (!small() && !fits) bustFor(shoulder - kMostInside + 2 * kLeastAway);
    const double most = 0.5 * sizes_.finished(Field::Bust) - 2 * kLeastAway;
    const double wide = small() || fits
                            ? shoulder
                            : std::min(startingWidth(shoulder, held, garment, likely_.reach),
                                       std::max(shoulder - kMostInside, most));
    fillEase(Field::EaseCrossShoulder, wide - shoulder);
    const double cut = sizes_.finished(Field::CrossShoulder);
    for (const auto& [cross, ease] : {std::pair{Field::CrossBack, Field::EaseCrossBack},
                                      {Field::CrossFront, Field::EaseCrossFront}}) {
      const double spare = cut - sizes_[cross];
      fillEase(ease, !design_.has(cross) ? spare : small() ? 0 : std::min(spare, room));
    }
  }

  // A width of a piece that leaves an armhole something to take away: the usual ease is raised for
  // it where 3 cm do. What wants more contradicts itself, and is said to.
  void bustFor(double pieceWidth) {
    constexpr double kMost = 3;
    if (design_.has(Field::EaseBust) || sizes_.fromGarment(Field::Bust)) return;
    const double more = 2 * pieceWidth - sizes_.finished(Field::Bust);
    if (more <= 0 || more > kMost) return;
    for (const Field ease : {Field::EaseBust, Field::EaseWaist, Field::EaseHip})
      if (!design_.has(ease)) sizes_.values[std::size_t(ease)] += more;
  }

  // Of the back waist length. A man's published armholes are deep for the survey's short backs: his
  // limit lies lower.
  [[nodiscard]] double underarmLimit() const { return figure() == Figure::Man ? 0.75 : 2.0 / 3; }
  [[nodiscard]] double underarmShare() const { return small() ? 0.45 : 0.5; }

  // Underarm, rise and scoop, and a depth that gives the girth round the armhole its room.
  void armhole() {
    const double bust = sizes_.finished(Field::Bust);
    fill(Field::BackShare, 0.5);
    const double share = at(Field::BackShare);
    const double awayBack = 0.5 * (bust * share - sizes_.finished(Field::CrossBack));
    const double awayFront = 0.5 * (bust * (1 - share) - sizes_.finished(Field::CrossFront));
    const double away = std::min(awayBack, awayFront);
    const bool adult = !small();
    const double beyond = adult ? 1 - likely_.reach : 0;
    const double most = 5 - beyond;
    fill(Field::UnderarmBack, startingUnderarm(design_.has(Field::UnderarmFront) ? awayBack : away,
                                               underarmShare(), most));
    fill(Field::UnderarmFront, design_.has(Field::UnderarmBack)
                                   ? at(Field::UnderarmBack)
                                   : startingUnderarm(away, underarmShare(), most));
    const double scoop = adult ? startingScoop(beyond) : kSmallScoop;
    fill(Field::ScoopBack, scoop);
    const double frontCurve = awayFront - at(Field::UnderarmFront);
    fill(Field::ScoopFront,
         scoop + (figure() == Figure::Woman ? startingFrontScoop(frontCurve) : 0));
    const auto rise = [&](double depth) {
      return startingRise(away, at(Field::UnderarmBack), depth, beyond);
    };

    DepthEase rule = depthRule();
    rule.low -= likely_.depthHolds;
    // Not so deep that it would be found fault with.
    const double deepest =
        design_.given(Field::LimitUnderarm).value_or(underarmLimit()) * at(Field::BackWaistLength);
    rule.high = std::clamp(deepest - sizes_.body(Field::ArmholeDepth), rule.low, rule.high);
    Sizes trial = sizes_;
    trial.values[std::size_t(Field::EaseArmholeDepth)] = rule.first;
    const double depth = trial.finished(Field::ArmholeDepth);
    if (!design_.has(Field::RiseShare)) trial.values[std::size_t(Field::RiseShare)] = rise(depth);
    const double edge = armholeEdge(backArmhole(trial)) + armholeEdge(frontArmhole(trial));
    const bool half = design_.has(Field::ArmholeDepth) && !design_.has(Field::ScyeGirth);
    fill(Field::EaseArmholeDepth, sizes_.fromGarment(Field::ArmholeDepth)
                                      ? 0
                                      : depthEaseFor(rule, edge, at(Field::ScyeGirth), half));
    fill(Field::RiseShare, rise(sizes_.finished(Field::ArmholeDepth)));
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
    // The body reaches this far below the waist (common practice), by body length and figure.
    constexpr double kBelowWaist[][4] = {
        {16, 20, 10, 6}, {-5, -4, -3, -2}, {3, 4, 2, 2}, {22, 26, 14, 10}};
    fill(Field::HemToUnderarm, kBelowWaist[int(style_.bodyLength)][int(figure())] +
                                   at(Field::BackWaistLength) - sizes_.body(Field::ArmholeDepth));
    fill(Field::NeckBand, style_.neck().band.of(small()));
    frontNeckDrop();
    neckWidth();
    const double half =
        0.5 * (sizes_.finished(Field::CrossShoulder) - at(Field::NeckWidth)) - bandInNeck(sizes_);
    sizes_.shoulderSeam = std::hypot(half, at(Field::ShoulderDrop));
  }

  void frontNeckDrop() {
    const double depth = sizes_.finished(Field::ArmholeDepth);
    const NecklineTraits& neck = style_.neck();
    fill(Field::FrontNeckDrop, neck.dropShare.of(small()) * depth + neck.drop.of(small()));
    // A small pullover opens at the back neck, or no head would pass (common practice).
    fill(Field::BackOpening, !small() || style_.jacket() ? 0 : figure() == Figure::Baby ? 10 : 6);
  }

  void neckWidth() {
    if (design_.has(Field::NeckWidth)) return;
    const double band = bandInNeck(sizes_), drop = at(Field::ShoulderDrop);
    const double shoulders = sizes_.finished(Field::CrossShoulder) - 2 * band;
    if (sizes_.fromGarment(Field::ShoulderLength)) { // that garment's seam, as it is
      fill(Field::NeckWidth, shoulders - 2 * shoulderRun(at(Field::ShoulderLength), drop));
      return;
    }
    NeckAsk ask{figure(),
                style_.neckline,
                style_.backNeck,
                at(Field::NeckBase),
                sizes_.finished(Field::CrossBack),
                sizes_.body(Field::CrossShoulder),
                design_.given(Field::ShoulderLength),
                likely_.shoulderFall};
    const double asked = startingNeck(ask);
    double width = asked;
    if (ask.shoulderLength) {
      // No wider than leaves a shoulder; no narrower than the neck, nor than a head.
      const double seam = shoulderRun(figure() == Figure::Baby ? 3 : small() ? 4 : 5, drop);
      width = std::min(width, std::max(0.0, shoulders - 2 * seam));
      width = std::max(width, bodyNeckShare(figure()) * ask.neckBase);
    }
    fill(Field::NeckWidth, std::max(width, headPasses(width, shoulders)));
    sizes_.neckAsked = ask.shoulderLength ? asked : at(Field::NeckWidth);
  }

  // Every neck goes round the neck's base, and a pullover's passes the head: the width that does.
  [[nodiscard]] double headPasses(double width, double most) const {
    if (figure() == Figure::Baby || (small() && !style_.jacket())) return width;
    NeckOpening neck{style_.neckline, style_.backNeck, width, at(Field::FrontNeckDrop),
                     at(Field::BackNeckDrop)};
    constexpr double kSpare = 0.5; // cm
    const double stretch = design_.given(Field::LimitNeckStretch).value_or(kNeckStretch);
    const double slit = style_.jacket() ? 0 : 2 * at(Field::BackOpening);
    const double head = style_.jacket() ? 0 : at(Field::HeadGirth) / stretch;
    const double edge = std::max(head, at(Field::NeckBase)) + kSpare - slit;
    if (neckEdge(neck) >= edge) return width;
    return widthForEdge(neck, edge, std::max(width, 0.6 * most));
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
    const double depth = sizes_.finished(Field::ArmholeDepth);
    fill(Field::HemDepth, style_.hem().depth.of(small()));
    fill(Field::CuffDepth, small() ? 3.5 : 5);
    constexpr double kLeastBand = 4; // stitches
    fill(Field::ButtonBand, std::max(small() ? 2 : 2.5, kLeastBand * sizes_.stitch.width));
    front(depth);
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
    const double hem = style_.hem().ribbed ? at(Field::HemDepth) : 0;
    // Short rows lift underarm and neck of the front.
    const double lift = style_.bustShortRows() ? at(Field::BustDepth) : 0;
    const double neck = neckPoint - at(Field::FrontNeckDrop) - bandInNeck(sizes_) + lift;
    fill(Field::Buttons, startingButtons(hem + kButtonInset, underarm + lift, neck - kButtonInset));
  }

  void sleeve(double depth) {
    const double arm = sizes_.finished(Field::UpperArm), wrist = sizes_.finished(Field::Wrist);
    const CapTop top = style_.capTop;
    fill(Field::CapEase, top == CapTop::Smooth ? 1 : small() ? 5 : top == CapTop::Gathered ? 9 : 8);
    // Half of what is drawn in widens the crown, the other half lifts it (common practice: a puff
    // does both).
    const double drawnIn = drawnInAtCrown(style_, at(Field::CapEase));
    fill(Field::CrownWidth,
         std::clamp(0.20 * arm, figure() == Figure::Baby ? 3.0 : 4.0, 10.0) + 0.5 * drawnIn);
    fill(Field::GatherWidth, std::clamp(0.5 * depth, 5.0, 12.0));
    fill(Field::Pleats, small() ? 2 : 4);
    const StartingFullness fullness = startingFullness(style_.capRise, style_.figure);
    fill(Field::LowerFullness, fullness.lower);
    fill(Field::UpperFullness, fullness.upper);
    fill(Field::CapHeight, 0.65 * depth);
    const double armLength = sizes_.finished(Field::SleeveToUnderarm);
    fill(Field::SleeveLength, armLength);
    fill(Field::FlareFrom, at(Field::SleeveLength));
    // The cuff of a full sleeve lies about the arm where it ends.
    const double down = std::clamp(at(Field::SleeveLength) / std::max(armLength, 1.0), 0.0, 1.0);
    fill(Field::CuffGirth, style_.sleeve().gathered ? arm + down * (wrist - arm) : 1.15 * arm);
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
    fill(Field::RibMultiple, 4);
    fill(Field::NeedleBody, 0);
    // Half a millimetre thinner for the rib (common practice).
    fill(Field::NeedleRib, std::max(0.0, at(Field::NeedleBody) - 0.5));
    fill(Field::BallWeight, 0);
    fill(Field::BallLength, 0);
    fill(Field::YarnReserve, 0.1); // common practice
  }

  void limits() { // common practice
    fill(Field::LimitUpperArm, 1);
    fill(Field::LimitRoomLow, 1);
    fill(Field::LimitRoomHigh, style_.jacket() ? 16 : 14);
    fill(Field::LimitCapLow, 0.5);
    fill(Field::LimitCapHigh, 0.85);
    fill(Field::LimitCapEase, 2.5);
    fill(Field::LimitShoulderLow, figure() == Figure::Baby ? 3 : figure() == Figure::Child ? 4 : 5);
    fill(Field::LimitShoulderHigh, std::max(16.0, 0.3 * sizes_.body(Field::CrossShoulder)));
    fill(Field::LimitDepthEase, 5);
    fill(Field::LimitUnderarm, underarmLimit());
    fill(Field::LimitNeckStretch, kNeckStretch);
    fill(Field::LimitHandStretch, 1.4);
  }

  static constexpr double kNeckStretch = 1.5; // common practice

  const Design& design_;
  const Moments* population_;
  LikelyBody likely_;
  Sizes sizes_;
  const GarmentStyle& style_;
  std::array<bool, kFieldCount> filled_{}; // the first to fill a field has the say
};

} // namespace

double bandInNeck(const Sizes& sizes) {
  return sizes.style.neck().stands ? 0 : sizes[Field::NeckBand];
}

double drawnInAtCrown(const GarmentStyle& style, double capEase) {
  return style.capDrawnIn() ? std::max(0.0, capEase - kSmoothEase) : 0;
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
  return complete(design, surveyMoments(design.as<Figure>()));
}

Sizes complete(const Design& design, const Moments* population) {
  return Filler(design, population).run();
}

} // namespace scye
