// Draws the garment worn into an RGB buffer, on the processor alone. Shading is worked out at the
// corners of the triangles and the stitches at each pixel; with more samples to a pixel edges come
// out smooth. The same scene, view and size give the same picture from the same binary.
#pragma once

#include "image/image.h"
#include "worn/scene.h"

namespace scye {

struct Palette { // 0 to 1 each
  Vec3f ground{0.965f, 0.96f, 0.95f}, form{0.80f, 0.76f, 0.71f}, yarn{0.33f, 0.45f, 0.60f};
  float deeper = 0.05f; // share by which the ground is darker at the foot
  Vec3f line{0.10f, 0.13f, 0.20f}, thread{0.80f, 0.47f, 0.02f}, button{0.36f, 0.25f, 0.17f};
};
[[nodiscard]] Palette lightPalette();
[[nodiscard]] Palette darkPalette();

// The scale of "where it pulls", share 0 (less) to 1 (more): from pale to dark along one line of
// growing darkness, told apart by every kind of colour vision.
[[nodiscard]] Vec3f pullColour(float share);

struct Drawing {
  int width = 900, height = 700;
  int samples = 1; // to a pixel, each way
  Palette palette;
};

// A number of a notch, where it is seen.
struct SeenNumber {
  int number = 1;
  float x = 0, y = 0; // pixels
};

// Cost at 900 x 700: about 12 ms with one sample, 50 ms with 2 x 2.
[[nodiscard]] Image drawn(const WornScene& scene, const View& view, const Drawing& drawing,
                          std::vector<SeenNumber>* numbers = nullptr);

} // namespace scye
