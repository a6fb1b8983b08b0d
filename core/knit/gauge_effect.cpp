#include "knit/gauge_effect.h"

#include <cmath>

namespace scye {
namespace {

double capMinusArmhole(const KnitGarment& k, const StitchSize& size) {
  const Stitches selvedge = k.lattice.selvedge;
  const EdgeLength over = edgeLength(k.right.capRight, EdgeSide::Right, size, selvedge) +
                          edgeLength(k.right.capLeft, EdgeSide::Left, size, selvedge) -
                          edgeLength(k.backArmhole.schedule, EdgeSide::Right, size) -
                          edgeLength(k.frontArmhole.schedule, EdgeSide::Left, size);
  return over.mean();
}

} // namespace

std::optional<GaugeEffect> gaugeEffect(const GarmentDraft& draft, const KnitGarment& knit,
                                       const GaugeReport& gauge) {
  if (!gauge.across) return std::nullopt;
  GaugeEffect out;
  const StitchSize size = draft.sizes.stitch;
  const UncertainSize stitch = gauge.across->size;
  const double bust = draft.sizes.finished(Field::Bust);
  out.bust = gauge.across->over(bust / stitch.value).reach();
  out.swatchForBust = swatchLengthFor(bust, stitch.value);
  const double alongShare = gauge.along ? gauge.along->size.reach() / gauge.along->size.value : 0;
  out.hemToUnderarm = alongShare * (draft.bodice.at.underarm - draft.bodice.at.fold);
  out.sleeveLength = alongShare * draft.sleeve.length;
  if (knit.capKnitted) {
    // Width and height err independently; the match is nearly linear in each.
    const double now = capMinusArmhole(knit, size);
    const double wider = capMinusArmhole(knit, {size.width + stitch.reach(), size.height}) - now;
    const double taller = capMinusArmhole(knit, {size.width, size.height * (1 + alongShare)}) - now;
    out.match = std::hypot(wider, taller);
  }
  return out;
}

} // namespace scye
