// The search behind doubt.h: which slips, together, explain a set of measurements best.
#pragma once

#include "body/doubt.h"

#include <optional>

namespace scye {

inline constexpr double kOut = 3; // conditional standard deviations

// A measurement as given: what the knitter says it is.
struct Taken {
  Field field;
  Measure measure;
  double cm;
};

// A slip on one measurement, or on several for a whole set: what the value really was.
struct Assumed {
  Slip slip;
  std::vector<std::size_t> at;   // places in the list of measurements
  std::vector<double> corrected; // cm, one for each place; empty when only an estimate can tell
};

class SlipSearch {
public:
  SlipSearch(const Body& given, const Moments& moments, LengthUnit typed);

  // Empty when nothing is odd.
  [[nodiscard]] std::vector<Assumed> explain() const;
  [[nodiscard]] const std::vector<Taken>& taken() const { return taken_; }
  [[nodiscard]] const Moments& moments() const { return moments_; }
  // What is known once the slips are put right; `without` leaves out one measurement.
  [[nodiscard]] KnownMeasures corrected(const std::vector<Assumed>& slips,
                                        std::optional<std::size_t> without = std::nullopt) const;

private:
  struct Oddity {
    bool out; // a measurement lies more than three deviations out
    bool far; // the set as a whole does not belong to the population
  };
  [[nodiscard]] Oddity oddity(const std::vector<Assumed>& slips) const;
  [[nodiscard]] double
  score(const std::vector<Assumed>& slips) const; // log density + log prior odds
  [[nodiscard]] std::vector<Assumed> extended(const std::vector<Assumed>& base,
                                              const std::vector<Assumed>& choices) const;
  [[nodiscard]] std::vector<Assumed> singleSlips() const;
  [[nodiscard]] std::vector<Assumed> setSlips() const;

  Moments moments_; // the survey's, and the tape's error
  LengthUnit typed_;
  std::vector<Taken> taken_;
};

} // namespace scye
