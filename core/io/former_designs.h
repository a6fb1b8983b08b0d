// Designs of files of former versions as designs of today. In those of version 1 the armhole depth
// of a body hung from the garment's shoulder tip, a value measured on a garment took no ease, and
// the starting values were others: what the garment was then is set, so that it stays that garment.
#pragma once

#include "model/design.h"

namespace scye {

// `fillFromSaid`: whether the file said what fills in measurements; then that was the published
// size. A design without any measurement is nobody's garment yet and starts as one of today.
[[nodiscard]] Design fromVersion1(const Design& before, bool fillFromSaid);

// Up to version 3 a cap whose fullness nobody had set was drawn fuller, up to version 5 fuller
// above and a little leaner below; up to version 4 an armhole that nobody had scooped was scooped
// deeper. That is set, so that it stays that garment.
[[nodiscard]] Design withCapOfVersion3(Design design);
[[nodiscard]] Design withCapOfVersion5(Design design); // of versions 4 and 5
[[nodiscard]] Design withArmholeOfVersion4(Design design);

} // namespace scye
