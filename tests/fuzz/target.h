// One fuzz target: a function of a text that says what is wrong with how the text was read, or
// nothing. Built twice: by clang as a libFuzzer target (-DSCYEWRIGHT_FUZZ=ON), and by any compiler
// as a test that reads the corpus (replay.cpp).
#pragma once

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <string>
#include <string_view>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

#define SCYE_FUZZ_TARGET(wrong)                                                                    \
  extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {              \
    const std::string_view text(reinterpret_cast<const char*>(data), size);                        \
    if (const std::optional<std::string> problem = wrong(text)) {                                  \
      std::fprintf(stderr, "%s\n", problem->c_str());                                              \
      std::abort();                                                                                \
    }                                                                                              \
    return 0;                                                                                      \
  }
