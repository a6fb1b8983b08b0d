#include "body/advice.h"

#include "body/doubt.h"
#include "body/gauge.h"
#include "body/yarn_classes.h"

namespace scye {

Findings adviceOn(const Design& design, const Sizes& sizes, LengthUnit typed) {
  Findings out = doubts(design, typed);
  // How sure the gauge is stands beside the swatch; only swatches that contradict each other are
  // found fault with.
  for (Finding& f : swatchFindings(pooledAcross(design), sizes.finished(Field::Bust)))
    if (f.severity != Severity::Note) out.push_back(std::move(f));
  if (const auto named = namedYarnClass(design.option(Choice::YarnClass));
      named && design.has(Field::SwatchStitches))
    if (auto finding = yarnDoubt(*named, 1 / sizes.stitch.width))
      out.push_back(std::move(*finding));
  return out;
}

} // namespace scye
