// Units of the core. Lengths are plain doubles in centimetres; inches exist only where a person
// reads or types. Stitches and rows are whole numbers with types of their own, so that one is never
// taken for the other. A row of a piece is named by how many rows have been worked when it is done:
// 0 is the cast-on, 1 the first right-side row; so `Rows` is its type too.
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
  constexpr Count& operator++() {
    ++n_;
    return *this;
  }
  constexpr Count operator-() const { return Count(-n_); }
  friend constexpr Count operator+(Count a, Count b) { return Count(a.n_ + b.n_); }
  friend constexpr Count operator-(Count a, Count b) { return Count(a.n_ - b.n_); }
  friend constexpr Count operator*(Count a, int k) { return Count(a.n_ * k); }
  friend constexpr Count operator*(int k, Count a) { return Count(a.n_ * k); }
  friend constexpr Count operator/(Count a, int k) { return Count(a.n_ / k); } // toward zero
  friend constexpr int operator%(Count a, int k) { return a.n_ % k; }
  friend constexpr Count abs(Count a) { return Count(a.n_ < 0 ? -a.n_ : a.n_); }

private:
  int n_ = 0;
};

using Stitches = Count<struct StitchKind>;
using Rows = Count<struct RowKind>;

[[nodiscard]] constexpr bool isRightSide(Rows row) {
  return row % 2 != 0;
}

// The size of one stitch of the washed fabric.
struct StitchSize {
  double width = 0;  // cm
  double height = 0; // cm, of one row
  [[nodiscard]] constexpr double across(Stitches n) const { return n.value() * width; }
  [[nodiscard]] constexpr double up(Rows n) const { return n.value() * height; }
  bool operator==(const StitchSize&) const = default;
};

} // namespace scye
