// What the words of a redraft cost, their plurals, numbers and lists by ICU: the whole chain alone,
// then with all that the window tells of it, in English and in the made-up language with a decimal
// comma and three plural forms; and the directions. A number, and a phrase that counts, alone.
#include "directions/directions.h"
#include "garment/derived.h"
#include "garment/verdict.h"
#include "schematic/schematic.h"
#include "support/trial_language.h"

#include <benchmark/benchmark.h>

namespace scye {
namespace {

Derived redraft(std::int64_t step) {
  Design design;
  design.set(Field::Bust, 92 + 0.1 * double(step % 100)).set(Field::UpperArm, 29);
  design.set(Field::SwatchStitches, 22).set(Field::SwatchRows, 30);
  return derive(design);
}

void tell(const Derived& derived, const Phrases& phrases) {
  const LengthUnit unit = LengthUnit::Centimetre;
  benchmark::DoNotOptimize(fitVerdict(derived, phrases, unit));
  benchmark::DoNotOptimize(pieceSchematic(derived.draft, phrases, {}));
  benchmark::DoNotOptimize(fitComparison(derived.draft, phrases, {}));
  for (const Finding& finding : derived.findings)
    benchmark::DoNotOptimize(phrases.say("finding." + finding.code, finding.params, unit));
}

template <class Work>
void job(const char* name, const Work& work) {
  benchmark::RegisterBenchmark(name, [=](benchmark::State& state) {
    std::int64_t step = 0;
    for (auto _ : state)
      work(++step);
  })->Unit(benchmark::kMicrosecond);
}

// The pictures are drawn in any language; only their words differ.
void pictures(const Derived& derived) {
  static const Phrases wordless;
  tell(derived, wordless);
}

[[maybe_unused]] const bool kRegistered = [] {
  const auto redrafted = [](auto then) { return [=](std::int64_t step) { then(redraft(step)); }; };
  job("words/redraftWithoutWords", redrafted(pictures));
  job("words/toldInEnglish", redrafted([](const Derived& d) { tell(d, builtinPhrases()); }));
  job("words/toldInTrialLanguage",
      redrafted([](const Derived& d) { tell(d, test::trialPhrases()); }));
  const auto directions = [](const Phrases& phrases) {
    return [&phrases](const Derived& d) {
      benchmark::DoNotOptimize(directionsText(d.directions, {phrases}));
    };
  };
  job("directions/redraft", redrafted([](const Derived& d) { benchmark::DoNotOptimize(d); }));
  job("directions/toldInEnglish", redrafted(directions(builtinPhrases())));
  job("directions/toldInTrialLanguage", redrafted(directions(test::trialPhrases())));
  job("number/inFiles",
      [](std::int64_t step) { benchmark::DoNotOptimize(numberText(0.01 * double(step % 10000))); });
  job("number/inTrialLanguage", [](std::int64_t step) {
    benchmark::DoNotOptimize(test::trialPhrases().number(0.01 * double(step % 10000)));
  });
  const auto count = [](const Phrases& phrases) {
    return [&phrases](std::int64_t step) {
      benchmark::DoNotOptimize(phrases.rules().plural(double(step % 100)));
    };
  };
  job("plural/inEnglish", count(builtinPhrases()));
  job("plural/inTrialLanguage", count(test::trialPhrases()));
  return true;
}();

} // namespace
} // namespace scye
