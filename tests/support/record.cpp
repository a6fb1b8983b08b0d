#include "support/record.h"

#include <gtest/gtest.h>

#include <iostream>
#include <sstream>

namespace scye::test {

void record(const std::string& name, double value) {
  std::ostringstream text;
  text << value; // six digits, with an exponent where it is small
  testing::Test::RecordProperty(name, text.str());
  std::cout << name << ' ' << text.str() << '\n';
}

} // namespace scye::test
