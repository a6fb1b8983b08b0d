#include "worn/worn_picture.h"

#include "worn/body_surface.h"

namespace scye {

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
  return drawn(scene, view, drawing);
}

} // namespace scye
