// The cap height of many random garments, by our bracketed Newton iteration with the analytic
// derivative and by two general root finders, GSL's Brent and Boost.Math's TOMS 748, on the same
// bracket and the same function (it always yields the derivative too, which costs them a little
// they do not use), all to 1e-11 cm.
#include "seam/garment_draft.h"
#include "support/random_designs.h"

#include <benchmark/benchmark.h>
#include <boost/math/tools/toms748_solve.hpp>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>

#include <array>
#include <memory>

namespace scye {
namespace {

constexpr double kTolerance = 1e-11; // cm

struct CapProblem {
  std::array<CapShape, 2> halves;
  double target = 0;
  [[nodiscard]] double excess(double height) const {
    return capEdge(halves[0], height).first + capEdge(halves[1], height).first - target;
  }
  [[nodiscard]] double high() const {
    return 0.5 * (target - halves[0].underarm - halves[0].crownHalf - halves[1].underarm -
                  halves[1].crownHalf);
  }
};

const std::vector<CapProblem>& problems() {
  static const std::vector<CapProblem> all = [] {
    std::vector<CapProblem> out;
    test::RandomDesigns random(7);
    while (out.size() < 64) {
      const GarmentDraft g = draftGarment(random.plausible());
      if (g.cap.unknown == WorkedOut::CapHeight && g.cap.found && g.cap.lean == 0)
        out.push_back({{g.cap.back, g.cap.front}, g.cap.armhole() + g.cap.easeWanted});
    }
    return out;
  }();
  return all;
}

template <class Solve>
void overAllProblems(benchmark::State& state, const Solve& solve) {
  for (auto _ : state)
    for (const CapProblem& p : problems())
      benchmark::DoNotOptimize(solve(p));
  state.SetItemsProcessed(state.iterations() * std::int64_t(problems().size()));
}

double byNewton(const CapProblem& p) {
  return solveCapHeight(p.halves, p.target).x;
}

double byGslBrent(const CapProblem& p) {
  static const std::unique_ptr<gsl_root_fsolver, decltype(&gsl_root_fsolver_free)> solver(
      gsl_root_fsolver_alloc(gsl_root_fsolver_brent), gsl_root_fsolver_free);
  gsl_function f{[](double height, void* self) {
                   return static_cast<const CapProblem*>(self)->excess(height);
                 },
                 const_cast<CapProblem*>(&p)};
  gsl_root_fsolver_set(solver.get(), &f, 0, p.high());
  for (int i = 0; i < 100; ++i) {
    gsl_root_fsolver_iterate(solver.get());
    if (gsl_root_test_interval(gsl_root_fsolver_x_lower(solver.get()),
                               gsl_root_fsolver_x_upper(solver.get()), kTolerance,
                               0) == GSL_SUCCESS)
      break;
  }
  return gsl_root_fsolver_root(solver.get());
}

double byBoostToms748(const CapProblem& p) {
  std::uintmax_t iterations = 100;
  const auto [low, high] = boost::math::tools::toms748_solve(
      [&](double height) { return p.excess(height); }, 0.0, p.high(),
      [](double a, double b) { return b - a <= kTolerance; }, iterations);
  return 0.5 * (low + high);
}

[[maybe_unused]] const bool kRegistered = [] {
  const auto add = [](const char* name, double (*solve)(const CapProblem&)) {
    benchmark::RegisterBenchmark(name, [solve](benchmark::State& state) {
      overAllProblems(state, solve);
    })->Unit(benchmark::kMicrosecond);
  };
  add("match64caps/newton", byNewton);
  add("match64caps/gslBrent", byGslBrent);
  add("match64caps/boostToms748", byBoostToms748);
  return true;
}();

} // namespace
} // namespace scye
