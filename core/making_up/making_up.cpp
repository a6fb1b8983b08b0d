#include "making_up/making_up.h"

namespace scye {

MakingUp makingUp(const GarmentDraft& draft, const KnitGarment& knit) {
  if (!knit.gaugeUsable) return {};
  return {pickUps(draft, knit), seamMarks(draft, knit)};
}

} // namespace scye
