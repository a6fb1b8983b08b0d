#include "seam/hang.h"

#include "draft/complete.h"
#include "model/enum_keys.h"

#include <algorithm>
#include <array>

namespace scye {

Hang hangOf(double share) {
  constexpr std::array kFrom{0.5, 0.6, 0.7, 0.8};
  return Hang(std::upper_bound(kFrom.begin(), kFrom.end(), share) - kFrom.begin());
}

SleeveHang sleeveHang(const GarmentDraft& draft) {
  const CapMatch& m = draft.cap;
  SleeveHang out;
  double height = m.height;
  if (const double drawn = drawnInAtCrown(draft.sizes.style, m.ease()); drawn > 0) {
    CapShape halves[] = {m.back, m.front};
    for (CapShape& half : halves)
      half.crownHalf = std::max(0.0, half.crownHalf - 0.25 * drawn);
    const RootSummary smooth = solveCapHeight(halves, m.armhole() + kSmoothEase);
    if (smooth.ok()) height = smooth.x, out.undrawn = true;
  }
  const double depth = draft.bodice.back.depth;
  out.share = depth > 0 ? height / depth : 0;
  out.hang = hangOf(out.share);
  return out;
}

std::string_view hangKey(Hang hang) {
  static constexpr EnumKeys<Hang, Hang::Straight> kKeys{{
      {Hang::StandsOut, "standsOut"},
      {Hang::Easy, "easy"},
      {Hang::Usual, "usual"},
      {Hang::Close, "close"},
      {Hang::Straight, "straight"},
  }};
  return kKeys[hang];
}

std::string hangText(const SleeveHang& hang, const Phrases& phrases) {
  return phrases.say(hang.undrawn ? "hang.line.undrawn" : "hang.line",
                     {numberParam("share", hang.share),
                      phraseParam("hang", "hang." + std::string(hangKey(hang.hang)))});
}

} // namespace scye
