// Doubts about measurements: a given one that lies more than three conditional standard deviations
// from what the others lead one to expect is questioned, and the slips that hands make are tried on
// it: half a girth, the other unit, digits swapped, the upper arm taken at the elbow, the armhole
// depth taken round the armhole or plumb from the shoulder tip; two slips at once; a whole set in
// the other unit, or of half girths. How: the explanation (none, one, two or more slips) under
// which the survey's density of the measurements times the slips' prior odds is greatest. So the
// culprit is named rather than the measurements that look odd beside it. The deviations allow for a
// tape in an untrained hand (1 to 3 %). Women and men only; a garment's measurements hold ease and
// are not doubted. Rates on subjects left out of the fit: tests/reference/body_doubts.cpp prints
// and checks them. Cost: some microseconds when nothing is odd; about a millisecond when two slips
// have to be searched for.
#pragma once

#include "body/estimate.h"
#include "model/finding.h"

namespace scye {

enum class Slip : std::uint8_t {
  Half,      // half the girth: taken flat, or from seam to seam
  OtherUnit, // inches typed as centimetres, or the other way about
  Digits,    // two neighbouring digits swapped
  AtElbow,   // the upper arm's girth taken at the elbow
  ScyeGirth, // the armhole's girth given as its depth
  FromTip,   // the tip-to-underarm length given as the armhole's depth
  AllOtherUnit,
  AllHalf, // every girth: taken flat on a garment
  Unusual, // no slip explains it
};

struct Doubt {
  Slip slip;
  Field field;       // for a whole set, its first
  double given;      // cm
  double deviations; // how far out, in conditional standard deviations given the others, corrected
  double low, high;  // where 90 of 100 such bodies lie, cm
  std::vector<Remedy::Change> changes; // what a click corrects; empty when unusual
};

// `typed` is the unit that the values were typed in, since slips are made in it.
[[nodiscard]] std::vector<Doubt> doubted(const Body& given, const Moments& moments,
                                         LengthUnit typed = LengthUnit::Centimetre);

// The same as findings: code "doubt.<slip>", shown at the field, with a remedy that corrects it;
// where there are several, each has a
// further remedy that corrects them all. Girths that look like half girths were measured on a
// garment, or are to be doubled.
[[nodiscard]] Findings doubts(const Design& design, LengthUnit typed = LengthUnit::Centimetre);

[[nodiscard]] std::string_view doubtCode(Slip slip, LengthUnit typed);

} // namespace scye
