#include "model/sizes.h"

#include <algorithm>

namespace scye {

namespace {

// How much lower on the body than on the garment the nape lies over the shoulder tip.
double napeOverTip(const Sizes& s) {
  return s[Field::ShoulderDrop] - s[Field::BackNeckDrop];
}

// What was asked for, which negative ease may bring below nothing.
double asked(const Sizes& s, Field m) {
  const bool garment = s.fromGarment(m), body = !garment;
  const double value = s[m] / flatShare(m, garment ? Source::Garment : Source::Body);
  if (m == Field::ArmholeDepth)
    return value - (body ? napeOverTip(s) : 0) + s[Field::EaseArmholeDepth];
  if (const auto ease = easeOf(m)) return value + s[*ease];
  // Depth ease lowers the underarm line; it is taken off below so that hem and wrist stay in place,
  // but not off a garment's length, which was taken to that garment's own underarm.
  if (m == Field::HemToUnderarm || m == Field::SleeveToUnderarm)
    return garment && !s.fromGarment(Field::ArmholeDepth) ? value
                                                          : value - s[Field::EaseArmholeDepth];
  if (m == Field::ShoulderLength && body) return s.shoulderSeam;
  return value;
}

} // namespace

double Sizes::finished(Field m) const {
  const double wanted = std::max(asked(*this, m), 0.0);
  // Over the armhole a piece does not get wider again: see the finding "cross.wider".
  const double most =
      m == Field::CrossBack || m == Field::CrossFront ? asked(*this, Field::CrossShoulder) : 0;
  return most > 0 ? std::min(wanted, most) : wanted;
}

double Sizes::body(Field m) const {
  if (!fromGarment(m)) return (*this)[m];
  const double whole = (*this)[m] / flatShare(m, Source::Garment);
  const auto ease = easeOf(m);
  const double inside = whole - (ease ? usualEase[std::size_t(*ease)] : 0) +
                        (m == Field::ArmholeDepth ? napeOverTip(*this) : 0);
  return std::max(inside, 0.0);
}

double asTaken(const Sizes& sizes, Field m, Source where) {
  return where == Source::Body ? sizes.body(m) : flatShare(m, where) * sizes.finished(m);
}

Design withFinished(const Design& design, const Sizes& sizes, Field m, double value) {
  Design next = design;
  const double more = value - asked(sizes, m);
  if (const auto ease = easeOf(m)) return next.set(*ease, sizes[*ease] + more);
  // The seam is the garment's: a body's shoulder is longer and steeper.
  if (m == Field::ShoulderLength) return next.set(m, value, Source::Garment);
  const Source where = sizes.fromGarment(m) ? Source::Garment : Source::Body;
  return next.set(m, sizes[m] + flatShare(m, where) * more, where);
}

Design withSource(const Design& design, const Sizes& sizes, Field m, Source source) {
  const bool stands = design.has(m) && !check(m, *design.given(m), source);
  return retaken(design, m, stands ? *design.given(m) : asTaken(sizes, m, source), source);
}

Field workedField(WorkedOut unknown) {
  switch (unknown) {
  case WorkedOut::UpperArmEase:
    return Field::EaseUpperArm;
  case WorkedOut::ArmholeDepth:
    return Field::ArmholeDepth;
  case WorkedOut::CrownWidth:
    return Field::CrownWidth;
  case WorkedOut::CapEase:
    return Field::CapEase;
  case WorkedOut::CapHeight:
    break;
  }
  return Field::CapHeight;
}

} // namespace scye
