#include "body/survey_table.h"

namespace scye {
namespace {

Moments unfolded(const SurveyTable& table) {
  Moments out;
  out.subjects = table.subjects;
  const double* entry = table.lower;
  for (int i = 0; i < kMeasureCount; ++i) {
    out.mean[i] = table.mean[i];
    for (int j = 0; j <= i; ++j)
      out.covariance(i, j) = out.covariance(j, i) = *entry++;
  }
  return out;
}

} // namespace

const Moments* surveyMoments(Figure figure) {
  static const Moments women = unfolded(kSurveyWomen), men = unfolded(kSurveyMen);
  switch (figure) {
  case Figure::Woman:
    return &women;
  case Figure::Man:
    return &men;
  case Figure::Child:
  case Figure::Baby:
    break;
  }
  return nullptr;
}

} // namespace scye
