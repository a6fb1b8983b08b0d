// A piece whose gauge is certainly not the swatch's, told early: what it does to the garment and
// the ways out. Certainly: the 90 % ranges of the two, by their reading errors (body/swatch.h), lie
// apart. It is looked at once a piece is 10 cm long; a shorter one still finds its tension.
#pragma once

#include "progress/present.h"

namespace scye {

inline constexpr double kWatchedFrom = 10; // cm worked

[[nodiscard]] bool isLongEnough(const PieceWork& piece, const GarmentDraft& draft);

struct GaugeWarning {
  PieceId piece = PieceId::Back;
  bool across = true;                  // stitches; else rows
  double perTen = 0, swatchPerTen = 0; // stitches or rows in 10 cm, blocked
  double share = 0;                    // how much larger (+) or smaller everything comes out
  // What becomes of the garment if the piece goes on as it is planned, cm.
  Field where = Field::Bust;
  double wanted = 0, comesTo = 0;
  // The ways out. Other needles: larger ones where the fabric is too tight. Other stitch counts
  // from here: whether what lies ahead can be led to the wanted sizes.
  bool largerNeedles = false;
  bool canRecount = false;
};

[[nodiscard]] std::vector<GaugeWarning> gaugeWarnings(const GarmentDraft& draft,
                                                      const KnitGarment& design, const Work& work);

// Other stitch counts from here: the piece goes on to the sizes that are wanted in its own fabric.
// Nothing where it has no room for that, or where a piece that is sewn to it row by row has come
// past its underarm already.
[[nodiscard]] std::optional<Work> recounted(const GarmentDraft& draft, const KnitGarment& design,
                                            const Work& work, PieceId piece);

} // namespace scye
