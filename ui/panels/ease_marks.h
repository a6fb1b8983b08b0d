// The marks beside an ease slider: at the bust the published fits, elsewhere what would be filled
// in, no ease, and where warnings begin.
#pragma once

#include "panels/panel_context.h"

#include "body/yarn_classes.h"

#include <QList>

namespace scye {

struct EaseMark {
  double value = 0; // cm
  QString name;
};

[[nodiscard]] QList<EaseMark> easeMarks(const Phrases& phrases, const Design& design,
                                        const Sizes& sizes, Field ease);

// The published suggestion for a fabric of that stitch width, on a grain that stays within the fit.
[[nodiscard]] double suggestedEase(Fit fit, double stitchWidth);
// A garment that fits holds its bust ease already: what is set is the change to it.
[[nodiscard]] double easeHeld(const Sizes& sizes);
inline constexpr Fit kFits[] = {Fit::VeryClose, Fit::Close, Fit::Standard, Fit::Loose,
                                Fit::Oversized};

} // namespace scye
