#include "model/wearer.h"

namespace scye {
namespace {

bool onBody(const Design& design, Field f) {
  return isMeasurement(f) && design.has(f) && design.source(f) == Source::Body;
}

} // namespace

Design wearerOf(const Design& design, const std::string& isoDate) {
  Design out;
  out.wearer = design.wearer;
  out.measuredOn = isoDate;
  out.choose(Choice::Figure, design.option(Choice::Figure));
  for (int i = 0; i < kFieldCount; ++i)
    if (const Field f = Field(i); onBody(design, f)) out.set(f, *design.given(f));
  return out;
}

Design forWearer(const Design& design, const Design& wearer) {
  Design out = design;
  out.wearer = wearer.wearer;
  out.measuredOn = wearer.measuredOn;
  out.choose(Choice::Figure, wearer.option(Choice::Figure));
  for (int i = 0; i < kFieldCount; ++i) {
    const Field f = Field(i);
    if (onBody(wearer, f))
      out.set(f, *wearer.given(f));
    else if (onBody(design, f))
      out.clear(f);
  }
  return out;
}

std::vector<Field> changedSince(const Design& design, const Design& wearer) {
  std::vector<Field> out;
  for (int i = 0; i < kFieldCount; ++i) {
    const Field f = Field(i);
    if (onBody(design, f) != onBody(wearer, f) ||
        (onBody(design, f) && *design.given(f) != *wearer.given(f)))
      if (!(design.has(f) && design.source(f) == Source::Garment)) out.push_back(f);
  }
  return out;
}

} // namespace scye
