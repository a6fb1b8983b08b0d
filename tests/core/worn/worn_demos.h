// The designs of the library, for tests of how they are worn.
#pragma once

#include "garment/derived.h"

#include <string>
#include <vector>

namespace scye::test {

[[nodiscard]] Design demoDesign(const std::string& name); // "jacket"; a bad file fails the test
[[nodiscard]] std::vector<std::string> demoDesigns();     // their names, sorted

} // namespace scye::test
