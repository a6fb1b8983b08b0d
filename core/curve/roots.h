// Root finding on a bracket. The solvers take a function and an interval on whose ends it has
// opposite signs, never leave it, and say why they stopped. Nothing throws.
#pragma once

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace scye {

struct RootOptions {
  double xTolerance = 1e-11; // absolute, on the last step
  int maxIterations = 100;
};

enum class RootStatus {
  Converged,
  NoSignChange, // the ends have the same sign: no root is claimed
  Exhausted,    // iterations used up; x is the best so far, low/high still bracket
};

struct RootSummary {
  double x = 0, residual = 0;
  double low = 0, high = 0; // final bracket
  int iterations = 0;
  RootStatus status = RootStatus::NoSignChange;
  [[nodiscard]] bool ok() const { return status == RootStatus::Converged; }
};

// Newton's iteration kept inside the bracket: where a step would leave it, or shrinks the residual
// too little, the bracket is halved instead. `f` returns {value, derivative}. Quadratic near a
// simple root; never slower than bisection by more than a factor of two. Starts from the end
// `high`.
template <class F>
[[nodiscard]] RootSummary bracketedNewton(const F& f, double low, double high,
                                          const RootOptions& options = {}) {
  RootSummary out{.x = high, .low = low, .high = high};
  const double fLow = f(low).first;
  auto [value, slope] = f(high);
  out.residual = value;
  if (value == 0 || fLow == 0) {
    if (value != 0) out.x = low, out.residual = 0;
    out.low = out.high = out.x;
    out.status = RootStatus::Converged;
    return out;
  }
  if ((fLow > 0) == (value > 0) || !std::isfinite(value) || !std::isfinite(fLow)) return out;
  const bool rising = value > 0;
  double before = std::abs(value);
  for (int i = 1; i <= options.maxIterations; ++i) {
    double next = out.x - value / slope;
    const bool newton = std::isfinite(next) && next > out.low && next < out.high;
    if (!newton) next = 0.5 * (out.low + out.high);
    const double step = std::abs(next - out.x);
    out.x = next;
    std::tie(value, slope) = f(next);
    out.residual = value;
    out.iterations = i;
    if (value == 0 || step <= options.xTolerance || out.high - out.low <= options.xTolerance) {
      out.status = RootStatus::Converged;
      return out;
    }
    ((value > 0) == rising ? out.high : out.low) = next;
    if (newton && std::abs(value) > 0.5 * before) { // Newton creeps: halve once
      const double mid = 0.5 * (out.low + out.high);
      const auto [v, d] = f(mid);
      ((v > 0) == rising ? out.high : out.low) = mid;
      if (std::abs(v) < std::abs(value)) out.x = mid, value = v, slope = d, out.residual = v;
    }
    before = std::abs(value);
  }
  out.status = RootStatus::Exhausted;
  return out;
}

// Inverse quadratic interpolation where three points promise it, bisection elsewhere (Chandrupatla,
// Advances in Engineering Software 28, 1997; from memory): needs no derivative, superlinear near a
// simple root, never much slower than bisection. Converged: the final bracket is at most xTolerance
// wide.
template <class F>
[[nodiscard]] RootSummary bracketedSecant(const F& f, double low, double high,
                                          const RootOptions& options = {}) {
  RootSummary out{.x = low, .low = low, .high = high};
  double a = low, b = high, fa = f(a), fb = f(b);
  out.residual = fa;
  if (fa == 0 || fb == 0) {
    out.x = fa == 0 ? a : b, out.residual = 0, out.low = out.high = out.x;
    out.status = RootStatus::Converged;
    return out;
  }
  if ((fa > 0) == (fb > 0) || !std::isfinite(fa) || !std::isfinite(fb)) return out;
  double share = 0.5; // of the way from a, the latest point, to b on the other side
  for (int i = 1; i <= options.maxIterations; ++i) {
    const double x = a + share * (b - a), fx = f(x);
    double c = a, fc = fa; // the point left behind
    if ((fx > 0) != (fa > 0)) c = b, fc = fb, b = a, fb = fa;
    a = x, fa = fx;
    const bool latest = std::abs(fa) < std::abs(fb);
    out.x = latest ? a : b, out.residual = latest ? fa : fb, out.iterations = i;
    out.low = std::min(a, b), out.high = std::max(a, b);
    const double width = out.high - out.low;
    if (out.residual == 0 || width <= options.xTolerance) {
      out.status = RootStatus::Converged;
      return out;
    }
    const double xi = (a - b) / (c - b), phi = (fa - fb) / (fc - fb);
    const bool interpolates = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
    share = interpolates ? fa / (fb - fa) * fc / (fb - fc) +
                               (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
                         : 0.5;
    const double least =
        std::min(0.5, 0.5 * options.xTolerance / width); // draws the far end in too
    share = std::clamp(share, least, 1 - least);
  }
  out.status = RootStatus::Exhausted;
  return out;
}

} // namespace scye
