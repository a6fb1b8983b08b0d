// A figure that a test measured: printed, and recorded with the test's result.
#pragma once

#include <string>

namespace scye::test {

void record(const std::string& name, double value);

} // namespace scye::test
