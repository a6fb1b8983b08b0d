#include "body/likely_body.h"

#include "body/size_tables.h"

#include <algorithm>
#include <cmath>

namespace scye {
namespace {

// In standard deviations of a known measure.
constexpr double kReach = 3, kFarBeyond = 6;

struct Line {
  double at0, slope;
  [[nodiscard]] double operator()(double x) const { return at0 + slope * x; }
};

// A published "cross back" over the survey's cross-shoulder at the same bust, cm; and a published
// armhole depth over the survey's, by the bust: women's sizes S to XL, men's S to XL.
constexpr double kTableOverShoulder = 2.2;
constexpr Line kTableOverDepthWoman{-2.02, 0.03}, kTableOverDepthMan{3, 0};

// Regressions of the 1988 survey (tests/data), cm. Children: the women's, an extrapolation, and so
// marked as an estimate. Elbow and wrist from the upper arm, neck base from the bust.
constexpr Line kElbowWoman{11.08, 0.438}, kElbowMan{12.55, 0.454};
constexpr Line kWristWoman{10.6, 0.156}, kWristMan{11.4, 0.182};
constexpr Line kNeckWoman{20.43, 0.1567}, kNeckMan{21.47, 0.1959};
constexpr Line kBackWaistMan{33.09, 0.0815};

constexpr double kFallShare =
    0.435;                         // sine of a body's shoulder slope of 25.8 degrees (same survey)
constexpr double kTipShare = 0.54; // tip to underarm, of the scye depth (women of the same)

// The smallest bodies that the survey's regressions speak for: bust of women, cm. What is smaller
// is taken for such a body scaled down.
constexpr double kSmallestBust = 73;

// Scye girth from bust, upper arm, scye depth and, for men, cross-shoulder: the same survey.
double scyeGirth(Figure figure, double bust, double arm, double depth, double shoulder) {
  if (figure == Figure::Man)
    return 11.24 - 0.03 * shoulder + 0.124 * bust + 0.546 * arm + 0.185 * (depth - 0.5);
  return 8.67 + 0.111 * bust + 0.511 * arm + 0.189 * (depth - 0.5);
}

// The women's regression with the tip-to-underarm length known.
double scyeGirthFromTip(double bust, double arm, double shoulder, double tip) {
  return 4.44 + 0.059 * bust + 0.50 * arm + 0.08 * shoulder + 0.98 * tip;
}

class Filler {
public:
  Filler(Figure figure, FillFrom from, const Body& known, double napeOverTip,
         const Moments* population)
      : figure_(figure), from_(from), known_(known), napeOverTip_(napeOverTip),
        moments_(population) {}

  LikelyBody run() {
    const TableSize table = sizeAtBust(figure_, known_.at(Field::Bust));
    out_.tableSize = table.name;
    if (moments_) survey();
    const bool sized = !moments_ || from_ == FillFrom::Size;
    printed(table, sized);
    byRule(sized);
    out_.depthHolds = easeInDepth(sized);
    girth();
    return std::move(out_);
  }

private:
  [[nodiscard]] bool man() const { return figure_ == Figure::Man; }
  [[nodiscard]] double at(Field f) const {
    const auto known = known_.find(f);
    return known != known_.end() ? known->second : out_.measures.at(f).value;
  }
  void put(Field f, double value, Origin origin) {
    out_.measures[f].value = value;
    out_.measures[f].origin = origin;
  }

  void survey() {
    const Conditional population(*moments_, knownMeasures(known_));
    for (const auto& [field, e] : estimates(known_, *moments_)) {
      const double lower = field == Field::BackWaistLength ? dressmakersWaist(figure_) : 0;
      out_.measures[field] = {e.value + lower, Origin::Estimate,
                              Likely{e.low + lower, e.high + lower}};
    }
    out_.shoulderFall = std::exp(population.at(Measure::ShoulderFall).mean);
    out_.beyondSurvey = scye::beyondSurvey(known_, *moments_);
    double furthest = 0;
    for (const KnownMeasure& r : knownMeasures(known_)) {
      const int m = int(r.measure);
      furthest = std::max(furthest, std::abs(r.log - moments_->mean[m]) /
                                        std::sqrt(moments_->covariance(m, m)));
    }
    out_.reach = std::clamp((kFarBeyond - furthest) / (kFarBeyond - kReach), 0.0, 1.0);
  }

  // What a published size prints; where the survey fills in, only as far as it does not reach.
  void printed(const TableSize& table, bool sized) {
    const double shoulder = sized ? 0 : kTableOverShoulder;
    const std::pair<Field, double> values[] = {
        {Field::Waist, table.waist},
        {Field::Hip, table.hip},
        {Field::CrossShoulder, table.crossBack - shoulder},
        {Field::CrossBack, moments_ ? at(Field::CrossBack) : table.crossBack},
        {Field::ArmholeDepth, table.armholeDepth + napeOverTip_ - (sized ? 0 : tableOverDepth())},
        {Field::UpperArm, table.upperArm},
        {Field::SleeveToUnderarm, table.armToUnderarm},
        {Field::BackWaistLength, table.backLength},
    };
    for (const auto& [field, value] : values) {
      if (known_.contains(field) || (man() && field == Field::BackWaistLength)) continue;
      if (sized)
        put(field, value, Origin::Table);
      else if (out_.reach < 1)
        put(field, out_.reach * at(field) + (1 - out_.reach) * value,
            out_.reach > 0 ? Origin::Estimate : Origin::Table);
    }
  }

  [[nodiscard]] double tableOverDepth() const {
    return (man() ? kTableOverDepthMan : kTableOverDepthWoman)(at(Field::Bust));
  }

  // A child that is as large as the survey's smaller women has no deeper armhole than they.
  [[nodiscard]] double easeInDepth(bool sized) const {
    if (known_.contains(Field::ArmholeDepth) || !sized) return 0;
    if (moments_) return std::max(0.0, tableOverDepth());
    const Body bust{{Field::Bust, std::max(kSmallestBust, at(Field::Bust))}};
    const double woman = estimates(bust, Figure::Woman).at(Field::ArmholeDepth).value;
    return std::max(0.0, at(Field::ArmholeDepth) - woman);
  }

  void byRule(bool sized) {
    const double bust = at(Field::Bust), arm = at(Field::UpperArm);
    const auto rule = [&](Field f, double value) {
      if (!known_.contains(f) && (sized || !out_.measures.contains(f)))
        put(f, value, Origin::Estimate);
    };
    // A small arm has a small elbow and wrist: below the survey's range both scale with the arm.
    const double scale = std::min(1.0, arm / 22), least = std::max(arm, 22.0);
    rule(Field::Elbow, scale * (man() ? kElbowMan : kElbowWoman)(least));
    rule(Field::Wrist, scale * (man() ? kWristMan : kWristWoman)(least));
    rule(Field::NeckBase, (man() ? kNeckMan : kNeckWoman)(bust));
    if (man()) rule(Field::BackWaistLength, kBackWaistMan(bust));
    rule(Field::SleeveToShoulder,
         at(Field::SleeveToUnderarm) + 0.65 * (at(Field::ArmholeDepth) - napeOverTip_));
    if (moments_) return;
    const double across = std::max(
        2.0, 0.5 * (at(Field::CrossShoulder) - bodyNeckShare(figure_) * at(Field::NeckBase)));
    rule(Field::ShoulderLength, across / std::sqrt(1 - kFallShare * kFallShare));
    rule(Field::TipToUnderarm, kTipShare * at(Field::ArmholeDepth));
    out_.shoulderFall = kFallShare * at(Field::ShoulderLength);
  }

  void girth() {
    if (known_.contains(Field::ScyeGirth)) return;
    const double bust = at(Field::Bust), arm = at(Field::UpperArm),
                 shoulder = at(Field::CrossShoulder);
    const auto tip = known_.find(Field::TipToUnderarm);
    const bool tipGirth = !moments_ && tip != known_.end();
    const double scale = std::min(1.0, bust / kSmallestBust);
    const double line =
        scale * (tipGirth ? scyeGirthFromTip(bust / scale, arm / scale, shoulder / scale,
                                             tip->second / scale)
                          : scyeGirth(figure_, bust / scale, arm / scale,
                                      at(Field::ArmholeDepth) / scale, shoulder / scale));
    const double survey = moments_ ? at(Field::ScyeGirth) : 0;
    put(Field::ScyeGirth, out_.reach * survey + (1 - out_.reach) * line, Origin::Estimate);
  }

  Figure figure_;
  FillFrom from_;
  const Body& known_;
  double napeOverTip_;
  const Moments* moments_;
  LikelyBody out_;
};

} // namespace

LikelyBody likelyBody(Figure figure, FillFrom from, const Body& known, double napeOverTip,
                      const Moments* population) {
  return Filler(figure, from, known, napeOverTip, population).run();
}

double shoulderRun(double length, double fall) {
  return std::sqrt(std::max(0.0, length * length - fall * fall));
}

double bodyNeckShare(Figure figure) {
  return figure == Figure::Man ? 0.31 : 0.30;
}

} // namespace scye
