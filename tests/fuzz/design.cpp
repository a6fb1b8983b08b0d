// The reader of design files.
#include "fuzz/design_text.h"
#include "fuzz/target.h"

SCYE_FUZZ_TARGET(scye::test::wrongReading)
