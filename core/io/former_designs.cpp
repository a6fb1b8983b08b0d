#include "io/former_designs.h"

#include "draft/complete.h"
#include "draft/starting.h"

#include <algorithm>

namespace scye {
namespace {

bool anyMeasured(const Design& design) {
  for (int i = 0; i < kFieldCount; ++i)
    if (isMeasurement(Field(i)) && design.has(Field(i))) return true;
  return false;
}

class Converter {
public:
  explicit Converter(const Design& before) : design_(before) {
    const auto figure = design_.as<Figure>();
    small_ = isSmall(figure);
    child_ = figure == Figure::Child;
    jacket_ = design_.as<Garment>() == Garment::Jacket;
  }

  Design run() {
    garments();
    hips();
    depth();
    if (!small_ && jacket_) {
      const auto rise = design_.as<CapRise>();
      keep(Field::EaseUpperArm, rise == CapRise::Shallow ? 9 : rise == CapRise::High ? 4 : 6);
    }
    if (!small_) {
      widths();
      curves();
    }
    neck();
    return design_;
  }

private:
  // Sets what the design starts with otherwise now. Not as the body's: it is the garment's.
  void keep(Field f, double value) {
    if (design_.has(f) || check(f, value)) return;
    if (const auto m = measurementOf(f); m && onGarment(*m)) return;
    design_.set(f, value, Source::Garment);
  }
  [[nodiscard]] bool onGarment(Field f) const {
    return design_.has(f) && design_.source(f) == Source::Garment;
  }

  // An ease beside a garment's measurement did nothing to it, but told of the body inside.
  void garments() {
    if (onGarment(Field::Bust) && design_.has(Field::EaseBust))
      inside_ = 2 * *design_.given(Field::Bust) - *design_.given(Field::EaseBust);
    for (int i = 0; i < kFieldCount; ++i)
      if (const auto ease = easeOf(Field(i)); ease && onGarment(Field(i))) design_.clear(*ease);
  }

  // As the measurements that nobody took were filled in.
  [[nodiscard]] Sizes filled() const {
    Design body = design_;
    if (inside_ && !check(Field::Bust, *inside_)) body.set(Field::Bust, *inside_);
    return complete(body);
  }

  void hips() {
    if (!inside_) return;
    const Sizes then = filled(), now = complete(design_);
    const double held = 2 * *design_.given(Field::Bust) - *inside_;
    for (const Field f : {Field::Waist, Field::Hip})
      if (!design_.has(f)) keep(*easeOf(f), then[f] + held - now[f]);
  }

  void depth() {
    keep(Field::EaseArmholeDepth, child_ ? 2.5 : !small_ && jacket_ ? 3 : 2);
    if (!small_) keep(Field::ShoulderDrop, 2.5);
    const Field f = Field::ArmholeDepth;
    if (!design_.has(f) || onGarment(f)) return;
    const Sizes s = complete(design_);
    const double value = *design_.given(f) + s[Field::ShoulderDrop] - s[Field::BackNeckDrop];
    design_.set(f, std::clamp(value, info(f).low, info(f).high));
  }

  // Shoulders as the published size or the tape says, the other widths like them, without ease.
  void widths() {
    const Sizes s = complete(design_);
    const double shoulder = filled().body(Field::CrossShoulder);
    for (const Field cross : {Field::CrossShoulder, Field::CrossBack, Field::CrossFront})
      keep(*easeOf(cross), design_.has(cross) ? 0 : shoulder - s[cross]);
  }

  void curves() {
    const Sizes s = complete(design_);
    const double bust = s.finished(Field::Bust), share = s[Field::BackShare];
    const double back = 0.5 * (bust * share - s.finished(Field::CrossBack));
    const double front = 0.5 * (bust * (1 - share) - s.finished(Field::CrossFront));
    constexpr double kShare = 0.45;
    if (!design_.has(Field::UnderarmBack) && !design_.has(Field::UnderarmFront))
      for (const Field f : {Field::UnderarmBack, Field::UnderarmFront})
        keep(f, startingUnderarm(std::min(back, front), kShare));
    for (const Field f : {Field::ScoopBack, Field::ScoopFront})
      if (s[f] != 0.55) keep(f, 0.55);
  }

  // A share of the back, or what a shoulder seam as long as the measured shoulder left.
  void neck() {
    if (design_.has(Field::NeckWidth)) return;
    const Sizes s = complete(design_);
    if (design_.has(Field::ShoulderLength)) {
      const double run = shoulderRun(s[Field::ShoulderLength], s[Field::ShoulderDrop]);
      const double wide = s.finished(Field::CrossShoulder) - 2 * run - 2 * bandInNeck(s);
      keep(Field::NeckWidth,
           std::clamp(wide, info(Field::NeckWidth).low, info(Field::NeckWidth).high));
      return;
    }
    const auto neckline = design_.as<Neckline>();
    const bool straight = design_.as<BackNeck>() == BackNeck::Straight;
    const double share = neckline == Neckline::Boat   ? (small_ ? 0.5 : 0.62)
                         : neckline == Neckline::High ? 0.4
                         : straight                   ? 0.39
                                                      : 0.36;
    keep(Field::NeckWidth, share * s.finished(Field::CrossBack));
  }

  Design design_;
  std::optional<double> inside_; // bust of the body in a garment
  bool small_ = false, child_ = false, jacket_ = false;
};

// Where nobody has set it.
Design withFullness(Design design, double lower, double upper) {
  if (!design.has(Field::LowerFullness)) design.set(Field::LowerFullness, lower);
  if (!design.has(Field::UpperFullness)) design.set(Field::UpperFullness, upper);
  return design;
}

} // namespace

Design fromVersion1(const Design& before, bool fillFromSaid) {
  if (!anyMeasured(before)) return before;
  Design design = before;
  if (!fillFromSaid) design.choose(Choice::FillFrom, FillFrom::Size);
  return Converter(design).run();
}

Design withCapOfVersion3(Design design) {
  if (!anyMeasured(design)) return design;
  const auto rise = design.as<CapRise>();
  const bool high = rise == CapRise::High;
  return withFullness(std::move(design),
                      rise == CapRise::Shallow ? 0.5
                      : high                   ? 0.4
                                               : 0.45,
                      high ? 0.5 : 0.55);
}

// A shallow cap, a high one and a child's start as they did.
Design withCapOfVersion5(Design design) {
  if (!anyMeasured(design) || design.as<CapRise>() != CapRise::Usual ||
      isSmall(design.as<Figure>()))
    return design;
  return withFullness(std::move(design), 0.35, 0.45);
}

Design withArmholeOfVersion4(Design design) {
  const auto figure = design.as<Figure>();
  if (!anyMeasured(design) || isSmall(figure)) return design;
  Design today = design;
  today.clear(Field::ScoopBack).clear(Field::ScoopFront);
  const Sizes s = complete(today);
  const double beyond = (kScoop - s[Field::ScoopBack]) / (kScoop - kScoopBeyond);
  const double back = 0.55 - 0.13 * beyond;
  // The front's share grew twice as fast, and to twice as much.
  const double more = 2 * (s[Field::ScoopFront] - s[Field::ScoopBack]);
  if (!design.has(Field::ScoopBack)) design.set(Field::ScoopBack, back);
  if (!design.has(Field::ScoopFront)) design.set(Field::ScoopFront, back + more);
  return design;
}

} // namespace scye
