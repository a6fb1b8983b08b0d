// Directions and charts on paper. Works without a window.
#pragma once

#include "export/export.h"

namespace scye {

// A piece begins a page.
[[nodiscard]] std::optional<QString> printDirections(const Directions& directions,
                                                     const Wording& wording, QPrinter& printer,
                                                     const GoOn& goOn = {});
[[nodiscard]] std::optional<QString> printChart(const OutputJob& job, QPrinter& printer);

} // namespace scye
