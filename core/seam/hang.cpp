#include "seam/hang.h"

#include <algorithm>
#include <array>

namespace scye {

Hang hangOf(double share) {
  constexpr std::array kFrom{0.5, 0.6, 0.7, 0.8};
  return Hang(std::upper_bound(kFrom.begin(), kFrom.end(), share) - kFrom.begin());
}

SleeveHang sleeveHang(const GarmentDraft& draft) {
  const double depth = draft.bodice.back.depth;
  const double share = depth > 0 ? draft.cap.height / depth : 0;
  return {share, hangOf(share)};
}

std::string_view hangKey(Hang hang) {
  constexpr std::string_view kKeys[] = {"standsOut", "easy", "usual", "close", "straight"};
  return kKeys[std::size_t(hang)];
}

} // namespace scye
