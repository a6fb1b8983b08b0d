// The population behind estimates and doubts: the 1988 anthropometric survey of U.S. Army personnel
// (Gordon et al., Natick technical report TR-89/044, 1989; public domain), as the mean and
// covariance of the natural logarithms of our measures in cm, for women and for men. Logarithms,
// because girths are skewed to the large side, and because the commonest slips (half a girth,
// inches) are then mere shifts. Soldiers: few large sizes, no children, no old people.
//
// How the survey's measures stand for ours:
//   Bust, Waist, Hip  the same: chest, natural waist and buttock circumference
//   UpperArm          the same: arm circumference at the axilla
//   Elbow, Wrist      the same
//   NeckBase          the same: neck circumference at the base
//   ShoulderLength    the same: neck to acromion
//   SleeveToShoulder  the same: sleeve outseam, acromion to wrist
//   CrossBack         the same: interscye at mid-scye, since ours lies between the armhole lines
//                     halfway down. (The other interscye is taken lower.) The arms hanging, the
//                     tape follows the back, so it exceeds the biacromial breadth.
//   CrossShoulder     nearly: biacromial breadth, a caliper's straight line between the shoulder
//                     points. A tape over the back runs longer; published tables print 2 to 6 cm
//                     more (women XS to XL, same bust). No offset, for want of a source.
//   BackWaistLength   nearly: cervicale to natural waist, the narrowest and so a high one;
//                     published tables print some 7 cm more for women. No offset.
//   ArmholeDepth      derived: scye depth + back neck drop - shoulder drop, with the drops of a
//                     knitted garment (2 and 2.5 cm, common practice), because the knitter's depth
//                     hangs from the garment's shoulder tip, not from the acromion.
//   SleeveToUnderarm  derived: sleeve outseam - (acromion height - axilla height), no offset
//   ScyeGirth         the same: over the acromion, through the armpit. No field of ours; known
//                     here to recognise an armhole depth that was measured round.
// Not in the survey: cross-front, hem to underarm, neck width, head, hand. Its shoulder drop (neck
// side to acromion, 6 cm) is not the garment's and is left out.
#pragma once

#include "model/field.h"

#include <Eigen/Core>

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace scye {

enum class Measure : std::uint8_t {
  Bust,
  Waist,
  Hip,
  CrossShoulder,
  CrossBack,
  ArmholeDepth,
  UpperArm,
  Elbow,
  Wrist,
  BackWaistLength,
  SleeveToUnderarm,
  SleeveToShoulder,
  ShoulderLength,
  NeckBase,
  ScyeGirth,
};
inline constexpr int kMeasureCount = int(Measure::ScyeGirth) + 1;

inline constexpr double kSurveyBackNeckDrop = 2;   // cm, common practice
inline constexpr double kSurveyShoulderDrop = 2.5; // cm, common practice

[[nodiscard]] std::optional<Measure> measureOf(Field f);
[[nodiscard]] std::optional<Field> fieldOf(Measure m);

struct Moments {
  Eigen::Matrix<double, kMeasureCount, 1> mean;                   // of ln(cm)
  Eigen::Matrix<double, kMeasureCount, kMeasureCount> covariance; // of the same
  int subjects = 0;
};

// The table built into the program: what `survey_moments` yields from the survey's files. Women's
// or men's; nothing for children, whom nobody measured.
[[nodiscard]] const Moments* surveyMoments(Figure figure);

// One person's measures, cm, in the order of Measure.
using Subject = std::array<double, kMeasureCount>;

// Reads the survey's file: a header naming its columns, then a line a subject, millimetres. Nothing
// when a column is missing or a figure cannot be read.
[[nodiscard]] std::optional<std::vector<Subject>> readSurvey(std::string_view csv);

// Sample mean and unbiased covariance; at least two subjects with positive measures.
[[nodiscard]] Moments momentsOf(const std::vector<Subject>& subjects);

} // namespace scye
