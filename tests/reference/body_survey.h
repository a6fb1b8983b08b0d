// The survey split for trials: fitted on one half, tried on the other, both ways round.
#pragma once

#include "body/estimate.h"

#include <fstream>
#include <map>
#include <sstream>
#include <string>

namespace scye::trial {

struct Fold {
  Moments fitted;               // on every second subject
  std::vector<Subject> leftOut; // the others
};

inline std::vector<Subject> surveySubjects(Figure figure) {
  const std::string name = figure == Figure::Woman ? "women" : "men";
  std::ifstream file(SCYE_TEST_DATA "/ansur1988-" + name + ".csv", std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return readSurvey(text.str()).value_or(std::vector<Subject>{});
}

inline const std::vector<Fold>& folds(Figure figure) {
  static std::map<Figure, std::vector<Fold>> kept;
  auto& out = kept[figure];
  if (!out.empty()) return out;
  std::vector<Subject> halves[2];
  const std::vector<Subject> all = surveySubjects(figure);
  for (std::size_t i = 0; i < all.size(); ++i)
    halves[i % 2].push_back(all[i]);
  for (int k : {0, 1})
    out.push_back({momentsOf(halves[k]), halves[1 - k]});
  return out;
}

inline std::vector<Field> surveyFields() {
  std::vector<Field> out;
  for (int m = 0; m < kMeasureCount; ++m)
    if (const auto f = fieldOf(Measure(m))) out.push_back(*f);
  return out;
}

inline double measured(const Subject& subject, Field f) {
  return subject[std::size_t(*measureOf(f))];
}

inline Body bodyOf(const Subject& subject, const std::vector<Field>& fields) {
  Body out;
  for (Field f : fields)
    out[f] = measured(subject, f);
  return out;
}

} // namespace scye::trial
