// Pixels as a file: PNG (ISO/IEC 15948), written by libpng.
#pragma once

#include "image/image.h"

#include <string>

namespace scye {

// The file's bytes; none where it could not be made.
[[nodiscard]] std::string pngOf(const Image& image);

// The same within a text, as an address of its own (RFC 2397): "data:image/png;base64,...".
[[nodiscard]] std::string pngAddress(const Image& image);

} // namespace scye
