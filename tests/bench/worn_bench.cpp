// The garment worn: processor time of what the page waits for. "Settled" is what the page takes for
// settled (worn/dressing.h).
#include "worn/body_surface.h"
#include "worn/raster.h"

#include <benchmark/benchmark.h>

namespace scye {
namespace {

Derived jacket(double easeBust) {
  Design design;
  design.choose(Choice::Garment, Garment::Jacket);
  design.set(Field::Bust, 94).set(Field::EaseBust, easeBust);
  design.set(Field::SwatchStitches, 22).set(Field::SwatchRows, 30);
  return derive(design);
}

void firstDrape(benchmark::State& state) {
  const Derived derived = jacket(8);
  for (auto _ : state)
    benchmark::DoNotOptimize(wornBy(derived, 0));
}
BENCHMARK(firstDrape)->Name("wornFirstDrape")->Unit(benchmark::kMillisecond);

void moreEase(benchmark::State& state) {
  const auto worn = wornBy(jacket(8), 0);
  const auto pattern = wornPattern(jacket(10));
  for (auto _ : state) {
    const auto shaped = std::make_shared<const SewnGarment>(*reshaped(*worn->garment, *pattern));
    Drape drape(shaped);
    DrapeState now = worn->state;
    now.before = now.x, now.momentum = 1;
    benchmark::DoNotOptimize(settled(drape, now, worn->body));
  }
}
BENCHMARK(moreEase)->Name("wornTwoCmMoreEase")->Unit(benchmark::kMillisecond);

// What lies between moving the ease and the first new picture.
void firstFrame(benchmark::State& state) {
  const auto worn = wornBy(jacket(8), 0);
  const Derived more = jacket(10);
  const Surface trunk = trunkSurface(worn->body);
  for (auto _ : state) {
    const auto pattern = wornPattern(more);
    const auto shaped = std::make_shared<const SewnGarment>(*reshaped(*worn->garment, *pattern));
    Drape drape(shaped);
    DrapeState now = drape.step(worn->state, worn->body, {});
    const WornScene scene = sceneOf({shaped, worn->body, now}, trunk);
    benchmark::DoNotOptimize(drawn(scene, viewOf(NamedView::Front, worn->body, scene.extent), {}));
  }
}
BENCHMARK(firstFrame)->Name("wornFirstFrame")->Unit(benchmark::kMillisecond);

// A frame while the arm is lifted: a step of the arm, of the cloth, and a picture.
void armFrame(benchmark::State& state) {
  const auto worn = wornBy(jacket(8), 0);
  const Surface trunk = trunkSurface(worn->body);
  Drape drape(worn->garment);
  Worn now = *worn;
  double arm = now.body.arm();
  for (auto _ : state) {
    arm = arm < 80 ? arm + 3 : now.body.hanging();
    const BodyForm next = now.body.posed(arm);
    carry(*now.garment, now.state, now.body, next);
    now.body = next;
    now.state = drape.step(now.state, now.body, {});
    const WornScene scene = sceneOf(now, trunk);
    benchmark::DoNotOptimize(drawn(scene, viewOf(NamedView::Front, now.body, scene.extent), {}));
  }
}
BENCHMARK(armFrame)->Name("wornArmFrame")->Unit(benchmark::kMillisecond);

// From hanging to lifted at once, until it has settled; while the slider is drawn most of the way
// is behind it.
void armSettles(benchmark::State& state) {
  const auto worn = wornBy(jacket(8), 0);
  Drape drape(worn->garment);
  for (auto _ : state) {
    BodyForm body = worn->body;
    benchmark::DoNotOptimize(withArm(drape, worn->state, body, double(state.range(0))));
  }
}
BENCHMARK(armSettles)
    ->Name("wornArmSettles")
    ->Arg(30)
    ->Arg(60)
    ->Arg(90)
    ->Unit(benchmark::kMillisecond);

// A picture of 900 x 700 while it is turned, beside only filling as many pixels with a colour.
void turning(benchmark::State& state) {
  const auto worn = wornBy(jacket(8), 0);
  const WornScene scene = sceneOf(*worn, trunkSurface(worn->body));
  View view = viewOf(NamedView::Front, worn->body, scene.extent);
  for (auto _ : state) {
    view.turn += 3;
    benchmark::DoNotOptimize(drawn(scene, view, {}));
  }
}
BENCHMARK(turning)->Name("wornPicture/drawn")->Unit(benchmark::kMillisecond);

void filling(benchmark::State& state) {
  std::vector<Vec3f> pixels(900 * 700);
  for (auto _ : state) {
    std::fill(pixels.begin(), pixels.end(), Vec3f(0.5f, 0.5f, 0.5f));
    benchmark::DoNotOptimize(pixels.data());
  }
}
BENCHMARK(filling)->Name("wornPicture/filled")->Unit(benchmark::kMillisecond);

} // namespace
} // namespace scye
