// Where a chart is parted: in bands of rows as high as one another, and each band in parts as wide
// as one another, as near as whole cells allow; no joint lies in a stretch that is left out. What
// has no cells is in no part. For schematic/chart_tiles.cpp.
#pragma once

#include "schematic/chart_drawing.h"

#include <functional>
#include <optional>

namespace scye {

inline constexpr int kSharedCells = 1; // of each neighbour, on its side of a joint

// How wide the numbers beside a part are that shows these, cm.
using BesideCells = std::function<double(const Span& columns, const Span& rows)>;

// As few parts as do where none is to be larger than `most`, numbers beside it included; by bands
// from the bottom, from the left in each. Nothing where not even a cell fits.
[[nodiscard]] std::optional<std::vector<ChartWindow>>
fewestWindows(const Chart& chart, const Vec2& most, const BesideCells& besideCells);

[[nodiscard]] double lengthOf(const Span& s, const ChartAxis& axis); // cm
// The runs of items that are filled.
[[nodiscard]] std::vector<Span> runsIn(const std::vector<char>& filled);

} // namespace scye
