// Units of the core. Lengths are plain doubles in centimetres; inches exist only where a person
// reads or types. Stitches and rows are whole numbers with types of their own, so that one is never
// taken for the other.
#pragma once

#include <compare>

namespace scye {

inline constexpr double kCmPerInch = 2.54; // exact by definition

// A whole number of one kind of thing. Arithmetic stays within the kind.
template <class Kind>
class Count {
public:
  constexpr Count() = default;
  constexpr explicit Count(int n) : n_(n) {}
  [[nodiscard]] constexpr int value() const { return n_; }

  constexpr auto operator<=>(const Count&) const = default;
  constexpr Count& operator+=(Count o) {
    n_ += o.n_;
    return *this;
  }
  constexpr Count& operator-=(Count o) {
    n_ -= o.n_;
    return *this;
  }
  constexpr Count operator-() const { return Count(-n_); }
  friend constexpr Count operator+(Count a, Count b) { return Count(a.n_ + b.n_); }
  friend constexpr Count operator-(Count a, Count b) { return Count(a.n_ - b.n_); }
  friend constexpr Count operator*(Count a, int k) { return Count(a.n_ * k); }
  friend constexpr Count operator*(int k, Count a) { return Count(a.n_ * k); }

private:
  int n_ = 0;
};

using Stitches = Count<struct StitchKind>;
using Rows = Count<struct RowKind>;

// The size of one stitch of the washed fabric.
struct StitchSize {
  double width = 0;  // cm
  double height = 0; // cm, of one row
  bool operator==(const StitchSize&) const = default;
};

} // namespace scye
