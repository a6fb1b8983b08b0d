// One redraft, as it happens on every step of a slider, the bust moving so that nothing stays the
// same: the plain draft, the whole chain, and the chain with all remedies of a sleeve far too wide.
#include "garment/derived.h"

#include <benchmark/benchmark.h>

#include <cmath>

namespace scye {
namespace {

// `gauge`: stitches in 10 cm.
Design sliding(Garment garment, double gauge, std::int64_t step) {
  Design design;
  design.choose(Choice::Garment, garment);
  design.set(Field::Bust, 92 + 0.1 * double(step % 100)).set(Field::UpperArm, 29);
  design.set(Field::SwatchStitches, gauge).set(Field::SwatchRows, std::round(1.36 * gauge));
  return design;
}

template <class Work>
void along(const char* name, Garment garment, double gauge, const Work& work) {
  benchmark::RegisterBenchmark(name, [=](benchmark::State& state) {
    std::int64_t step = 0;
    for (auto _ : state)
      work(sliding(garment, gauge, ++step));
  })->Unit(benchmark::kMicrosecond);
}

void draft(const Design& design) {
  benchmark::DoNotOptimize(draftGarment(design));
}
void whole(const Design& design) {
  benchmark::DoNotOptimize(derive(design));
}
void remedies(const Design& design) {
  Design wide = design;
  wide.set(Field::EaseUpperArm, 22);
  Derived derived = derive(wide);
  deriveRemedies(wide, derived);
  benchmark::DoNotOptimize(derived);
}

[[maybe_unused]] const bool kRegistered = [] {
  along("redraftPullover22/draft", Garment::Pullover, 22, draft);
  along("redraftPullover22/whole", Garment::Pullover, 22, whole);
  along("redraftPullover22/remedies", Garment::Pullover, 22, remedies);
  along("redraftJacket22/draft", Garment::Jacket, 22, draft);
  along("redraftJacket22/whole", Garment::Jacket, 22, whole);
  along("redraftJacket22/remedies", Garment::Jacket, 22, remedies);
  along("redraftPullover36/draft", Garment::Pullover, 36, draft);
  along("redraftPullover36/whole", Garment::Pullover, 36, whole);
  along("redraftPullover36/remedies", Garment::Pullover, 36, remedies);
  return true;
}();

} // namespace
} // namespace scye
