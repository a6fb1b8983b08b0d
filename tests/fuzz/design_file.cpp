// libFuzzer target for the reader of design files. Built with -DSCYEWRIGHT_FUZZ=ON by clang; run:
//   build/tests/fuzz/fuzz_design_file -max_total_time=60 /tmp/found tests/fuzz/corpus
//   resources/demos
#include "fuzz/design_text.h"

#include <cstdio>
#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  if (const auto wrong = scye::test::wrongReading(text)) {
    std::fprintf(stderr, "%s\n", wrong->c_str());
    std::abort();
  }
  return 0;
}
