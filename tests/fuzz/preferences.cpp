// The reader of the program's own settings.
#include "fuzz/preferences_text.h"
#include "fuzz/target.h"

SCYE_FUZZ_TARGET(scye::test::wrongPreferences)
