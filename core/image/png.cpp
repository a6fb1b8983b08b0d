#include "image/png.h"

#include <boost/archive/iterators/base64_from_binary.hpp>
#include <boost/archive/iterators/transform_width.hpp>

#include <cstddef>
#include <png.h>

namespace scye {

std::string pngOf(const Image& image) {
  const std::size_t pixels = std::size_t(image.width) * std::size_t(image.height);
  const bool clear = !image.opacity.empty();
  if (pixels == 0 || image.rgb.size() != 3 * pixels || (clear && image.opacity.size() != pixels))
    return {};
  std::vector<std::uint8_t> four;
  if (clear) {
    four.reserve(4 * pixels);
    for (std::size_t i = 0; i < pixels; ++i) {
      const auto at = image.rgb.begin() + std::ptrdiff_t(3 * i);
      four.insert(four.end(), at, at + 3);
      four.push_back(image.opacity[i]);
    }
  }
  png_image head{};
  head.version = PNG_IMAGE_VERSION;
  head.format = clear ? PNG_FORMAT_RGBA : PNG_FORMAT_RGB;
  head.width = png_uint_32(image.width), head.height = png_uint_32(image.height);
  const std::uint8_t* bytes = clear ? four.data() : image.rgb.data();
  std::string file(PNG_IMAGE_PNG_SIZE_MAX(head), '\0');
  png_alloc_size_t size = file.size();
  if (!png_image_write_to_memory(&head, file.data(), &size, 0, bytes, 0, nullptr)) return {};
  file.resize(size);
  return file;
}

std::string pngAddress(const Image& image) {
  using namespace boost::archive::iterators;
  using Sixes = base64_from_binary<transform_width<std::string::const_iterator, 6, 8>>;
  std::string bytes = pngOf(image);
  const std::size_t padding = (3 - bytes.size() % 3) % 3;
  bytes.append(padding, '\0'); // whole groups
  std::string text(Sixes(bytes.cbegin()), Sixes(bytes.cend()));
  text.replace(text.size() - padding, padding, padding, '=');
  return "data:image/png;base64," + text;
}

} // namespace scye
