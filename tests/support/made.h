// A design taken through draft and knitting, for tests of what comes after.
#pragma once

#include "knit/knit_garment.h"

namespace scye::test {

struct Made {
  GarmentDraft draft;
  KnitGarment knit;
};

inline Made made(const Design& design) {
  Made m;
  m.draft = draftGarment(design);
  m.knit = knitGarment(m.draft);
  return m;
}

} // namespace scye::test
