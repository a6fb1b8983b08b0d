// The form in which survey_moments_data.cpp, written by the program survey_moments, holds the
// moments.
#pragma once

#include "body/survey.h"

namespace scye {

struct SurveyTable {
  int subjects;
  double mean[kMeasureCount];                            // of ln(cm), in the order of Measure
  double lower[kMeasureCount * (kMeasureCount + 1) / 2]; // covariance, lower triangle by rows
};

extern const SurveyTable kSurveyWomen, kSurveyMen;

} // namespace scye
