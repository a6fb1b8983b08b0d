#include "knit/rib.h"

namespace scye {
namespace {

// Between the ends lie purl columns with knit ones between them: one purl column more than whole
// repeats. Other stitches repeat as they are.
Stitches between(const RibStitch& rib) {
  return Stitches(rib.columns() ? rib.purl : 0);
}

} // namespace

RibStitch ribStitch(RibKind kind, int ownMultiple, std::string name) {
  switch (kind) {
  case RibKind::TwoTwo:
    break;
  case RibKind::OneOne:
    return {kind, 1, 1, 2, {}};
  case RibKind::ThreeOne:
    return {kind, 3, 1, 4, {}};
  case RibKind::Seed:
    return {kind, 1, 1, 2, {}};
  case RibKind::Garter:
  case RibKind::Plain:
    return {kind, 1, 0, 1, {}};
  case RibKind::Own:
    return {kind, 0, 0, ownMultiple, std::move(name)};
  }
  return {};
}

RibStitch ribOf(const Sizes& sizes, const Design& design) {
  return ribStitch(sizes.style.rib, int(sizes[Field::RibMultiple]), design.ribName);
}

RibEnds ribEnds(const RibStitch& rib, RibSides sides, Stitches selvedge) {
  const bool own = rib.kind == RibKind::Own;
  if (!rib.columns() && !own) return {};
  const Stitches whole(own ? 0 : rib.knit), smaller = whole / 2, larger = whole - smaller;
  RibEnds ends{selvedge + larger, selvedge + smaller}; // whole at a free edge
  if (sides == RibSides::LeftFree) ends.end = whole;
  if (sides == RibSides::RightFree) ends.start = whole;
  return ends;
}

Stitches ribCastOn(const RibStitch& rib, const RibEnds& ends, Stitches stitches) {
  const Stitches none, fixed = ends.start + ends.end + between(rib);
  const Stitches least = fixed > none ? fixed : Stitches(rib.multiple);
  if (stitches < least) return none;
  const Stitches over((stitches - fixed) % rib.multiple), fits = stitches - over;
  constexpr int kShort = 4; // a repeat that no edge is too narrow for
  const bool tooFew = rib.multiple > kShort && 10 * over > stitches;
  return fits < least || tooFew ? none : fits;
}

RibEnds fittedEnds(const RibStitch& rib, RibSides sides, Stitches selvedge, Stitches stitches) {
  RibEnds ends = ribEnds(rib, sides, selvedge);
  if (rib.multiple == 1 || rib.kind == RibKind::Seed) return ends;
  const Stitches over = stitches - ends.start - ends.end - between(rib);
  const Stitches more(over < Stitches(0) ? 0 : over % rib.multiple);
  if (sides == RibSides::LeftFree)
    ends.start += more;
  else if (sides == RibSides::RightFree)
    ends.end += more;
  else
    ends.start += more - more / 2, ends.end += more / 2;
  return ends;
}

bool canWriteOut(const RibStitch& rib, const RibEnds& ends, Stitches stitches) {
  if (rib.kind == RibKind::Seed) return stitches >= Stitches(2);
  if (!rib.columns()) return false;
  const Stitches over = stitches - ends.start - ends.end - between(rib);
  return over >= Stitches(0) && over % rib.multiple == 0;
}

bool showsPurl(const RibStitch& rib, const RibEnds& ends, Stitches stitches, Stitches fromRight,
               bool rightSide) {
  if (rib.kind == RibKind::Seed) return (fromRight % 2 == 0) != rightSide;
  const Stitches within = fromRight - ends.start;
  return within >= Stitches(0) && fromRight < stitches - ends.end &&
         within % rib.multiple < rib.purl;
}

} // namespace scye
