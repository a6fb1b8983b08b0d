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
//   CrossShoulder     derived: biacromial breadth, a caliper's straight line between the shoulder
//                     points, + 1 cm for a tape laid straight across below the nape (judgement;
//                     over the nape it would be + 3).
//   BackWaistLength   nearly: cervicale to natural waist, the narrowest and so a high one. What is
//                     filled in lies kDressmakersWaist lower, see below.
//   ArmholeDepth      the same on the body: scye depth, from the cervicale to the scye level
//   TipToUnderarm     derived: acromion height - axilla height
//   SleeveToUnderarm  derived: sleeve outseam - (acromion height - axilla height), no offset
//   ScyeGirth         the same: over the acromion, through the armpit
//   ShoulderFall      derived: lateral neck height - acromion height. No field of ours: it tells
//                     how far a body's shoulder runs across (a garment's shoulder is flatter).
// Not in the survey: cross-front, hem to underarm, neck width, head, hand.
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
  TipToUnderarm,
  ShoulderFall,
};
inline constexpr int kMeasureCount = int(Measure::ShoulderFall) + 1;

inline constexpr double kStraightAcross = 1; // cm, a tape below the nape over biacromial breadth

// cm that the waist of dressmakers' tables lies below the survey's natural waist: they give women
// about 40-41 at a bust of 90, men about 44 at 100 (from memory), and the size tables more still.
[[nodiscard]] double dressmakersWaist(Figure figure);

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
