// How numbers stand in our files: whole ones without a decimal point, all others with the fewest
// digits that read back to the same double.
#pragma once

#include <cmath>
#include <nlohmann/json.hpp>

namespace scye {

[[nodiscard]] inline nlohmann::ordered_json jsonNumber(double value) {
  constexpr double kLargestWhole = 9007199254740992.0; // 2^53
  if (value == std::floor(value) && std::abs(value) < kLargestWhole) return std::int64_t(value);
  return value;
}

} // namespace scye
