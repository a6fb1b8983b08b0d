// A picture of pixels, wherever it comes from and goes to.
#pragma once

#include <cstdint>
#include <vector>

namespace scye {

struct Image {
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb;     // rows from the top, three bytes a pixel
  std::vector<std::uint8_t> opacity; // a byte a pixel; none where all is opaque
  bool operator==(const Image&) const = default;
};

} // namespace scye
