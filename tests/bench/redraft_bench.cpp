// One redraft, as it happens on every step of a slider: from the design to outlines and findings,
// the bust moving so that nothing stays the same.
#include "garment/remedies.h"
#include "seam/garment_draft.h"

#include <benchmark/benchmark.h>

namespace scye {
namespace {

Design sliding(Garment garment, CapLean lean, std::int64_t step) {
  Design design;
  design.choose(Choice::Garment, garment).choose(Choice::CapLean, lean);
  design.set(Field::Bust, 92 + 0.1 * double(step % 100));
  design.set(Field::UpperArm, 29).set(Field::SwatchStitches, 22).set(Field::SwatchRows, 30);
  return design;
}

void redraft(benchmark::State& state, Garment garment, CapLean lean) {
  std::int64_t step = 0;
  for (auto _ : state)
    benchmark::DoNotOptimize(draftGarment(sliding(garment, lean, ++step)));
}
BENCHMARK_CAPTURE(redraft, pullover, Garment::Pullover, CapLean::Upright)
    ->Name("redraftPullover")
    ->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(redraft, jacket, Garment::Jacket, CapLean::Upright)
    ->Name("redraftJacket")
    ->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(redraft, leaning, Garment::Jacket, CapLean::Leaning)
    ->Name("redraftJacketLeaningCap")
    ->Unit(benchmark::kMicrosecond);

// A design with something to put right: the remedies are tried out one by one.
void remedies(benchmark::State& state) {
  Design design = sliding(Garment::Pullover, CapLean::Upright, 0);
  design.set(Field::EaseUpperArm, 22);
  const auto evaluate = [](const Design& d) { return draftGarment(d).findings; };
  for (auto _ : state) {
    const GarmentDraft draft = draftGarment(design);
    Findings findings = draft.findings;
    addRemedies(design, draft.sizes, evaluate, findings);
    benchmark::DoNotOptimize(findings);
  }
}
BENCHMARK(remedies)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace scye
