// Does the sleeve fit? The answer in one sentence, for the head of every view.
#pragma once

#include "garment/derived.h"
#include "model/phrases.h"

namespace scye {

// As knitted, by the row tables (cm; the wearer's armholes, back and front together).
struct KnittedFit {
  double armholeLeft = 0, armholeRight = 0, capLeft = 0, capRight = 0;
  double mismatch = 0; // cap - armhole - ease wanted, of the side where it is larger
  std::string sentence;
};

// "It fits" or what to do, in one sentence, and the three numbers; where a cap is knitted also
// its own; the sentence then tells the knitted height and ease, and beside them the drafted ones
// where they are more than a row or 2 mm apart. It fits when the draft does and, where it is
// knitted, nothing about the knitting forbids it.
struct FitVerdict {
  bool fits = false;
  std::string sentence;
  double armhole = 0, cap = 0, ease = 0; // cm, drafted, front and back together
  std::optional<KnittedFit> knitted;     // absent where there is no knitted cap
};
[[nodiscard]] FitVerdict fitVerdict(const Derived& derived, const Phrases& phrases,
                                    LengthUnit unit);

// cm: as knitted, or as drafted where no cap is knitted; the height that FitVerdict::sentence
// tells.
[[nodiscard]] double toldCapHeight(const Derived& derived);

} // namespace scye
