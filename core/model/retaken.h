// A measurement told as taken elsewhere than before.
#pragma once

#include "model/design.h"

namespace scye {

// An ease that was set beside it meant another thing where it was taken before, and goes.
[[nodiscard]] Design retaken(const Design& design, Field measurement, double value, Source where);

} // namespace scye
