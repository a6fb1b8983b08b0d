#include "body/doubt_search.h"

#include "model/units.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>
#include <numbers>

namespace scye {
namespace {

// A set is odd when its distance is passed as seldom as a normal value passes this, 1 in 100,000.
constexpr double kFar = 4.26;

// Prior odds against each slip, natural logarithm: judgement, not measured. One in 150 for the
// common ones; swapped digits are rarer, and every value allows several; the inexplicable is
// rarest.
double against(Slip slip) {
  switch (slip) {
  case Slip::Half:
  case Slip::OtherUnit:
  case Slip::AtElbow:
  case Slip::ScyeGirth:
    return 5;
  case Slip::FromTip:
  case Slip::AllOtherUnit:
  case Slip::AllHalf:
    return 6;
  case Slip::Digits:
    return 8.5;
  case Slip::Unusual:
    break;
  }
  return 9;
}

constexpr double kLogFlat = -std::numbers::ln2; // density of any value at all, over e^2 of range

// Standard deviation of ln(cm) between a tape in an untrained hand and the survey's trained
// measurers: judgement. More where a measure of ours is not quite the survey's (see survey.h).
double tapeError(Measure m) {
  switch (m) {
  case Measure::CrossShoulder:
  case Measure::ArmholeDepth:
  case Measure::SleeveToUnderarm:
    return 0.03;
  case Measure::TipToUnderarm:
  case Measure::BackWaistLength: // the natural waist, or the dressmakers'
    return 0.06;
  default:
    return 0.01;
  }
}

// Halfway from the survey's natural waist to the dressmakers': either may be meant. Of ln(cm).
constexpr double kWaistsBetween = 0.045;

// Between two readings of one girth, the second by mistake: not quite the same place.
constexpr double kTwiceTaken = 0.03;

// What was really taken, where the reading is of another measure.
std::optional<Measure> measureMeant(Slip slip) {
  switch (slip) {
  case Slip::AtElbow:
    return Measure::Elbow;
  case Slip::ScyeGirth:
    return Measure::ScyeGirth;
  case Slip::FromTip:
    return Measure::TipToUnderarm;
  default:
    return std::nullopt;
  }
}

bool stands(Field f, double cm) {
  return !check(f, cm).has_value();
}

double rounded(double cm, double step) {
  return std::round(cm / step) * step;
}

// The value with each pair of neighbouring digits swapped, as it reads in the unit it was typed in.
std::vector<double> swaps(double cm, LengthUnit typed) {
  const double unit = typed == LengthUnit::Inch ? kCmPerInch : 1;
  const std::string text = numberText(cm / unit, 2);
  std::vector<double> out;
  for (std::size_t i = 0; i + 1 < text.size(); ++i) {
    const std::size_t j = text[i + 1] == '.' ? i + 2 : i + 1;
    if (j >= text.size() || text[i] == '.' || text[i] == text[j] || text[j] == '0') continue;
    std::string other = text;
    std::swap(other[i], other[j]);
    double value = 0;
    std::from_chars(other.data(), other.data() + other.size(), value);
    out.push_back(value * unit);
  }
  return out;
}

} // namespace

SlipSearch::SlipSearch(const Body& given, const Moments& moments, LengthUnit typed)
    : moments_(moments), typed_(typed) {
  for (int m = 0; m < kMeasureCount; ++m)
    moments_.covariance(m, m) += std::pow(tapeError(Measure(m)), 2);
  moments_.mean[int(Measure::BackWaistLength)] += kWaistsBetween;
  for (const auto& [field, cm] : given)
    if (const auto m = measureOf(field); m && cm > 0) taken_.push_back({field, *m, cm});
}

KnownMeasures SlipSearch::corrected(const std::vector<Assumed>& slips,
                                    std::optional<std::size_t> without) const {
  struct State {
    std::optional<Measure> measure;
    double cm;
  };
  std::vector<State> states;
  for (const Taken& t : taken_)
    states.push_back({t.measure, t.cm});
  for (const Assumed& slip : slips)
    for (std::size_t k = 0; k < slip.at.size(); ++k) {
      State& state = states[slip.at[k]];
      if (slip.slip == Slip::Unusual)
        state.measure.reset();
      else if (const auto other = measureMeant(slip.slip))
        state.measure = *other;
      else
        state.cm = slip.corrected[k];
    }
  if (without) states[*without].measure.reset();
  KnownMeasures out;
  const auto known = [&](Measure m) {
    return std::any_of(out.begin(), out.end(),
                       [m](const KnownMeasure& r) { return r.measure == m; });
  };
  for (std::size_t i = 0; i < states.size(); ++i)
    if (states[i].measure == taken_[i].measure)
      out.push_back({taken_[i].measure, std::log(states[i].cm)});
  // A reading that turns out to be of another measure counts where that has none of its own.
  for (const State& s : states)
    if (s.measure && !known(*s.measure)) out.push_back({*s.measure, std::log(s.cm)});
  return out;
}

double SlipSearch::score(const std::vector<Assumed>& slips) const {
  double sum = Conditional(moments_, corrected(slips)).logDensity();
  for (const Assumed& slip : slips) {
    sum -= against(slip.slip);
    if (slip.slip == Slip::Unusual) sum += kLogFlat;
    const auto other = measureMeant(slip.slip);
    if (!other) continue;
    // Where the measure that was taken has a reading of its own, the two must agree.
    for (const KnownMeasure& r : corrected(slips, slip.at[0]))
      if (r.measure == *other) {
        const double apart = (std::log(taken_[slip.at[0]].cm) - r.log) / kTwiceTaken;
        sum -= 0.5 * apart * apart + std::log(kTwiceTaken * std::sqrt(2 * std::numbers::pi));
      }
  }
  return sum;
}

SlipSearch::Oddity SlipSearch::oddity(const std::vector<Assumed>& slips) const {
  const KnownMeasures readings = corrected(slips);
  const Conditional population(moments_, readings);
  const std::vector<double> deviations = population.deviations();
  const bool out = std::any_of(deviations.begin(), deviations.end(),
                               [](double z) { return std::abs(z) > kOut; });
  return {out, population.distance() > chiSquaredAt(int(readings.size()), kFar)};
}

std::vector<Assumed> SlipSearch::singleSlips() const {
  std::vector<Assumed> out;
  const double factor = typed_ == LengthUnit::Inch ? 1 / kCmPerInch : kCmPerInch;
  for (std::size_t i = 0; i < taken_.size(); ++i) {
    const auto& [field, measure, cm] = taken_[i];
    const auto offer = [&, f = field](Slip slip, double value) {
      if (stands(f, value)) out.push_back({slip, {i}, {value}});
    };
    if (info(field).kind == FieldKind::Girth) offer(Slip::Half, 2 * cm);
    offer(Slip::OtherUnit, rounded(factor * cm, 0.1));
    for (double swapped : swaps(cm, typed_))
      offer(Slip::Digits, swapped);
    if (measure == Measure::UpperArm) out.push_back({Slip::AtElbow, {i}, {}});
    if (measure == Measure::ArmholeDepth)
      for (const Slip slip : {Slip::ScyeGirth, Slip::FromTip})
        out.push_back({slip, {i}, {}});
    out.push_back({Slip::Unusual, {i}, {}});
  }
  return out;
}

std::vector<Assumed> SlipSearch::setSlips() const {
  Assumed unit{Slip::AllOtherUnit, {}, {}}, half{Slip::AllHalf, {}, {}};
  const double factor = typed_ == LengthUnit::Inch ? 1 / kCmPerInch : kCmPerInch;
  const auto add = [&](Assumed& slip, std::size_t i, double value) {
    slip.at.push_back(i);
    slip.corrected.push_back(
        std::clamp(value, info(taken_[i].field).low, info(taken_[i].field).high));
  };
  for (std::size_t i = 0; i < taken_.size(); ++i) {
    add(unit, i, rounded(factor * taken_[i].cm, 0.1));
    if (info(taken_[i].field).kind == FieldKind::Girth) add(half, i, 2 * taken_[i].cm);
  }
  std::vector<Assumed> out;
  for (Assumed& slip : std::array{unit, half})
    if (slip.at.size() > 1) out.push_back(std::move(slip));
  return out;
}

// The best way to add one of the choices to a base.
std::vector<Assumed> SlipSearch::extended(const std::vector<Assumed>& base,
                                          const std::vector<Assumed>& choices) const {
  std::vector<Assumed> best;
  double bestScore = -std::numeric_limits<double>::infinity();
  for (const Assumed& choice : choices) {
    const bool used = std::any_of(base.begin(), base.end(), [&](const Assumed& slip) {
      return std::find(slip.at.begin(), slip.at.end(), choice.at[0]) != slip.at.end();
    });
    if (used) continue;
    std::vector<Assumed> slips = base;
    slips.push_back(choice);
    if (const double s = score(slips); s > bestScore) bestScore = s, best = std::move(slips);
  }
  return best;
}

std::vector<Assumed> SlipSearch::explain() const {
  if (taken_.empty()) return {};
  const Oddity whole = oddity({});
  if (!whole.out && !whole.far) return {};
  const std::vector<Assumed> singles = singleSlips();
  std::vector<Assumed> choices = singles;
  for (Assumed& slip : setSlips())
    choices.push_back(std::move(slip));

  std::vector<Assumed> best = extended({}, choices);
  // Odd as a whole, but no single measurement stands out: perhaps just an unusual body.
  if (!whole.out && score(best) <= score({})) return {};
  const auto odd = [&](const std::vector<Assumed>& slips) {
    const Oddity left = oddity(slips);
    return left.out || left.far;
  };
  if (!odd(best) || taken_.size() < 2) return best;
  for (std::size_t i = 0; i < singles.size(); ++i) {
    const std::vector<Assumed> later(singles.begin() + i + 1, singles.end());
    auto pair = extended({singles[i]}, later);
    if (!pair.empty() && score(pair) > score(best)) best = std::move(pair);
  }
  // Three and more are looked for one at a time: by now the two worst are out of the way.
  while (odd(best)) {
    auto more = extended(best, singles);
    if (more.empty() || (!oddity(best).out && score(more) <= score(best))) break;
    best = std::move(more);
  }
  return best;
}

} // namespace scye
