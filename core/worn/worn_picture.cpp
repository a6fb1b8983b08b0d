#include "worn/worn_picture.h"

#include "worn/body_surface.h"

#include <algorithm>

namespace scye {
namespace {

// What is the same on white and on black is opaque.
Image cutOut(const WornScene& scene, const View& view, Drawing drawing) {
  drawing.palette.deeper = 0;
  const auto on = [&](float grey) {
    drawing.palette.ground.setConstant(grey);
    return drawn(scene, view, drawing);
  };
  const Image white = on(1);
  Image out = on(0);
  out.opacity.reserve(out.rgb.size() / 3);
  for (std::size_t i = 0; i < out.rgb.size(); i += 3) {
    int through = 0;
    for (std::size_t c = i; c < i + 3; ++c)
      through = std::max(through, white.rgb[c] - out.rgb[c]);
    const int opaque = 255 - std::max(0, through);
    out.opacity.push_back(std::uint8_t(opaque));
    for (std::size_t c = i; opaque > 0 && c < i + 3; ++c)
      out.rgb[c] = std::uint8_t(std::min(255, (255 * out.rgb[c] + opaque / 2) / opaque));
  }
  return out;
}

} // namespace

WornPictureOptions shownAlone(int width, int height) {
  WornPictureOptions options;
  options.arm = 20;
  options.turned.zoom = 1.1;
  options.cutOut = true;
  options.width = width, options.height = height;
  return options;
}

std::optional<Image> wornPicture(const Derived& derived, const WornPictureOptions& options) {
  const auto worn = wornBy(derived, options.arm);
  if (!worn) return std::nullopt;
  SceneOptions what;
  what.pulls = options.pulls;
  WornScene scene = sceneOf(*worn, trunkSurface(worn->body), what);
  lightUp(scene);
  Drawing drawing;
  drawing.width = options.width, drawing.height = options.height;
  drawing.samples = 2;
  View view = viewOf(options.view, worn->body, scene.extent);
  view.turn += options.turned.turn, view.lift += options.turned.lift;
  view.zoom *= options.turned.zoom;
  return options.cutOut ? cutOut(scene, view, drawing) : drawn(scene, view, drawing);
}

} // namespace scye
