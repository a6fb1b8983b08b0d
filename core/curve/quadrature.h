// Adaptive Gauss-Legendre quadrature of smooth functions on an interval.
// Nodes and weights of the 16-point rule: zeros of the Legendre polynomial P16 by Newton's
// iteration from Chebyshev's estimate, w = 2 / ((1 - x^2) P16'(x)^2) (DLMF 3.5(v)), computed once,
// to rounding.
#pragma once

#include <array>
#include <cmath>

namespace scye {

struct GaussRule {
  static constexpr int kPoints = 16;
  std::array<double, kPoints> node;   // on [-1, 1]
  std::array<double, kPoints> weight; // sum 2
};
[[nodiscard]] const GaussRule& gauss16();

// The plain 16-point rule: exact for polynomials up to degree 31.
template <class F>
[[nodiscard]] double gaussOnce(const F& f, double a, double b) {
  const GaussRule& rule = gauss16();
  const double half = 0.5 * (b - a), mid = 0.5 * (a + b);
  double sum = 0;
  for (int i = 0; i < GaussRule::kPoints; ++i)
    sum += rule.weight[i] * f(mid + half * rule.node[i]);
  return half * sum;
}

// Integral of f over [a, b]: intervals are halved until whole and halves agree within `relative` of
// the first estimate's size, at most `depth` halvings. The value returned is that of the halves,
// whose error is far below the difference tested.
template <class F>
[[nodiscard]] double integrate(const F& f, double a, double b, double relative, int depth = 40) {
  const auto refine = [&](const auto& self, double lo, double hi, double whole, double allowed,
                          int left) -> double {
    const double mid = 0.5 * (lo + hi);
    const double l = gaussOnce(f, lo, mid), r = gaussOnce(f, mid, hi);
    if (left == 0 || std::abs(l + r - whole) <= allowed) return l + r;
    return self(self, lo, mid, l, allowed, left - 1) + self(self, mid, hi, r, allowed, left - 1);
  };
  const double whole = gaussOnce(f, a, b);
  return refine(refine, a, b, whole, relative * std::abs(whole), depth);
}

} // namespace scye
