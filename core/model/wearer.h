// A wearer's measurements, kept for other designs. They are a design with nothing in it but a
// name, a figure, the measurements taken on the body and the day they were kept
// (Design::measuredOn); so they are stored as any design is.
#pragma once

#include "model/design.h"

#include <vector>

namespace scye {

[[nodiscard]] Design wearerOf(const Design& design, const std::string& isoDate);

// The design with the wearer's name, figure and measurements; measurements that the wearer has not
// are cleared unless they were taken on a garment.
[[nodiscard]] Design forWearer(const Design& design, const Design& wearer);

// Body measurements in which the design and what is kept of its wearer differ now.
[[nodiscard]] std::vector<Field> changedSince(const Design& design, const Design& wearer);

} // namespace scye
