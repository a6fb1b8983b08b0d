// The form as a surface: its trunk by surface nets (Gibson, MICCAI 1998) on the sampled field, its
// arms as rings round their bones.
#pragma once

#include "worn/body_form.h"
#include "worn/surface.h"

namespace scye {

[[nodiscard]] Surface trunkSurface(const BodyForm& body); // both halves; cost: about 15 ms
[[nodiscard]] Surface armSurface(const BodyForm& body);   // both arms as they are posed; 2 ms

} // namespace scye
