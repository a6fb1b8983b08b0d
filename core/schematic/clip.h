// A part of a picture, cut out along a box. For drawings whose parts are kept or cut along straight
// lines; a curve is kept where it lies inside and left out where it does not. cm.
#pragma once

#include "schematic/picture.h"

namespace scye {

// Strokes of which nothing lies inside the box or on its edge are left out; labels stay as they
// are.
void clipTo(Group& group, const Box& box);

} // namespace scye
