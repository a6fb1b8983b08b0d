// One value of a design as a person writes it on a command line: NAME=VALUE.
//   bust=94   bust=37in   ease.bust=8cm   bust=47@garment   garment=jacket   scoop.back=0.5
// NAME is the key of a field or of a choice. Lengths are cm unless they end in "in". A measurement
// keeps the place where it was taken unless @body or @garment says another.
#pragma once

#include "model/design.h"
#include "model/phrases.h"

#include <string>
#include <string_view>

namespace scye {

// Changes the design; or leaves it as it is and returns why, in one line.
[[nodiscard]] std::optional<std::string> applySetting(Design& design, std::string_view setting,
                                                      const Phrases& phrases);

} // namespace scye
