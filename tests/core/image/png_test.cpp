// What is written is read back by the reference library, libpng; the address by RFC 4648's
// alphabet.
#include "image/png.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <png.h>
#include <string>
#include <vector>

namespace scye::test {
namespace {

std::vector<std::uint8_t> readBack(const std::string& file, int channels, int& width, int& height) {
  png_image head{};
  head.version = PNG_IMAGE_VERSION;
  EXPECT_NE(png_image_begin_read_from_memory(&head, file.data(), file.size()), 0) << head.message;
  EXPECT_EQ(head.format, png_uint_32(channels == 4 ? PNG_FORMAT_RGBA : PNG_FORMAT_RGB));
  width = int(head.width), height = int(head.height);
  std::vector<std::uint8_t> bytes(PNG_IMAGE_SIZE(head));
  EXPECT_NE(png_image_finish_read(&head, nullptr, bytes.data(), 0, nullptr), 0) << head.message;
  return bytes;
}

Image ramp(int width, int height) {
  Image image{width, height, {}, {}};
  for (int i = 0; i < 3 * width * height; ++i)
    image.rgb.push_back(std::uint8_t(7 * i));
  return image;
}

TEST(Png, HoldsEveryPixel) {
  Image image = ramp(5, 3);
  int width = 0, height = 0;
  EXPECT_EQ(readBack(pngOf(image), 3, width, height), image.rgb);
  EXPECT_EQ(width, 5);
  EXPECT_EQ(height, 3);
  for (int i = 0; i < 15; ++i)
    image.opacity.push_back(std::uint8_t(17 * i));
  const std::vector<std::uint8_t> clear = readBack(pngOf(image), 4, width, height);
  ASSERT_EQ(clear.size(), 60u);
  for (std::size_t i = 0; i < 15; ++i) {
    EXPECT_EQ(clear[4 * i], image.rgb[3 * i]);
    EXPECT_EQ(clear[4 * i + 2], image.rgb[3 * i + 2]);
    EXPECT_EQ(clear[4 * i + 3], image.opacity[i]);
  }
}

TEST(Png, IsNotMadeOfNothing) {
  EXPECT_TRUE(pngOf({}).empty());
  Image torn = ramp(4, 4);
  torn.rgb.pop_back();
  EXPECT_TRUE(pngOf(torn).empty());
  torn = ramp(4, 4);
  torn.opacity.resize(3);
  EXPECT_TRUE(pngOf(torn).empty());
}

TEST(Png, IsAnAddressToo) {
  const std::string alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  for (const int width : {1, 2, 3, 4, 5, 40}) { // files of every remainder
    const Image image = ramp(width, 2);
    const std::string head = "data:image/png;base64,", address = pngAddress(image);
    ASSERT_EQ(address.substr(0, head.size()), head);
    std::string bytes;
    unsigned held = 0;
    int bits = 0;
    for (const char c : address.substr(head.size())) {
      if (c == '=') break;
      ASSERT_NE(alphabet.find(c), alphabet.npos);
      held = held << 6 | unsigned(alphabet.find(c)), bits += 6;
      if (bits >= 8) bytes += char(held >> (bits -= 8) & 255);
    }
    EXPECT_EQ(address.substr(head.size()).size() % 4, 0u);
    EXPECT_EQ(bytes, pngOf(image)) << width;
  }
}

} // namespace
} // namespace scye::test
