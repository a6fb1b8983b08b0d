// Published yarn classes and ease: Craft Yarn Council, Standards and Guidelines, yarn weight system
// and garment fit. Guidelines, not rules: a gauge off its class is pointed out, never refused.
#pragma once

#include "model/finding.h"

#include <optional>
#include <span>

namespace scye {

struct YarnClass {
  int number;                    // 0 lace to 7 jumbo
  std::string_view key;          // the phrase "yarn.<key>"
  int lowStitches, highStitches; // in 4 inches of stockinette
  double lowNeedle, highNeedle;  // mm; high 0: no limit
  int lowYards, highYards;       // to the pound; high 0: no limit; both 0: not printed
};

[[nodiscard]] std::span<const YarnClass> yarnClasses();

// By the stitches in 4 inches (10.16 cm), to the nearest whole; nothing finer than lace.
[[nodiscard]] const YarnClass* yarnClassByGauge(double stitchesPerCm);
// By the yarn's length on its label; nothing when it is not a length.
[[nodiscard]] const YarnClass* yarnClassByRun(double metresPer100g);

// "yarn.loose" / "yarn.tight" when a yarn of the named class is knitted looser or tighter than its
// class: a note when the gauge belongs to the class beside it, a warning when further off.
[[nodiscard]] std::optional<Finding> yarnDoubt(int namedClass, double stitchesPerCm);

// Finished minus body at the bust.
enum class Fit : std::uint8_t { VeryClose, Close, Standard, Loose, Oversized };

struct EaseRange {
  std::optional<double> low, high;        // cm; none: no limit
  [[nodiscard]] double suggested() const; // the middle, or the one limit
};

[[nodiscard]] EaseRange easeFor(Fit fit);
// For a fabric thicker or thinner than medium yarn's: what its thickness takes from the inside is
// added.
[[nodiscard]] EaseRange easeFor(Fit fit, double stitchWidth);
// Which fit an ease makes; between two published ranges, the nearer.
[[nodiscard]] Fit fitOf(double ease);

// How much smaller a garment is inside than measured at mid-fabric, cm of girth: pi times its
// thickness. Thickness: two yarns, each a quarter of a stitch wide (Peirce's plain-knit model of
// 1947, from memory).
[[nodiscard]] double girthTakenByThickness(double stitchWidth);

[[nodiscard]] std::string_view fitKey(Fit fit); // the phrase "easeFit.<key>"

} // namespace scye
