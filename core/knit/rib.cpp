#include "knit/rib.h"

namespace scye {
namespace {

// Between the ends lie purl columns with knit ones between them: one purl column more than whole
// repeats. Other stitches repeat as they are.
int between(const RibStitch& rib) {
  return rib.columns() ? rib.purl : 0;
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

RibEnds ribEnds(const RibStitch& rib, RibSides sides, int selvedge) {
  const bool own = rib.kind == RibKind::Own;
  if (!rib.columns() && !own) return {};
  const int larger = own ? 0 : (rib.knit + 1) / 2, smaller = own ? 0 : rib.knit / 2;
  const int whole = own ? 0 : rib.knit; // at a free edge
  RibEnds ends{selvedge + larger, selvedge + smaller};
  if (sides == RibSides::LeftFree) ends.end = whole;
  if (sides == RibSides::RightFree) ends.start = whole;
  return ends;
}

int ribCastOn(const RibStitch& rib, const RibEnds& ends, int stitches) {
  const int fixed = ends.start + ends.end + between(rib);
  const int least = fixed > 0 ? fixed : rib.multiple;
  if (stitches < least) return 0;
  const int fits = stitches - (stitches - fixed) % rib.multiple;
  constexpr int kShort = 4; // a repeat that no edge is too narrow for
  const bool tooFew = rib.multiple > kShort && 10 * (stitches - fits) > stitches;
  return fits < least || tooFew ? 0 : fits;
}

RibEnds fittedEnds(const RibStitch& rib, RibSides sides, int selvedge, int stitches) {
  RibEnds ends = ribEnds(rib, sides, selvedge);
  if (rib.multiple == 1 || rib.kind == RibKind::Seed) return ends;
  const int over = stitches - ends.start - ends.end - between(rib);
  const int more = over < 0 ? 0 : over % rib.multiple;
  if (sides == RibSides::LeftFree)
    ends.start += more;
  else if (sides == RibSides::RightFree)
    ends.end += more;
  else
    ends.start += more - more / 2, ends.end += more / 2;
  return ends;
}

bool canWriteOut(const RibStitch& rib, const RibEnds& ends, int stitches) {
  if (rib.kind == RibKind::Seed) return stitches >= 2;
  if (!rib.columns()) return false;
  const int over = stitches - ends.start - ends.end - rib.purl;
  return over >= 0 && over % rib.multiple == 0;
}

bool showsPurl(const RibStitch& rib, const RibEnds& ends, int stitches, int fromRight,
               bool rightSide) {
  if (rib.kind == RibKind::Seed) return (fromRight % 2 == 0) != rightSide;
  const int within = fromRight - ends.start;
  return within >= 0 && fromRight < stitches - ends.end && within % rib.multiple < rib.purl;
}

} // namespace scye
