// What cloth lies against.
#pragma once

#include "worn/space.h"

#include <cstdint>

namespace scye {

// Which part of the garment a point belongs to: where trunk and arm face one another the bodice
// lies on the trunk's side and the sleeve on the arm's; their seam belongs to both.
enum class Layer : std::uint8_t { Bodice, Sleeve, Seam };

struct Touch {
  double room = 0; // cm until it touches; negative: so deep inside, the cloth's own gap included
  Vec3 normal = Vec3::UnitY(); // unit, outward
  bool between = false;        // two that face one another, from which it is kept apart
};

class Obstacle {
public:
  virtual ~Obstacle() = default;
  // `gap`: how far the middle of the cloth is to keep from the surface.
  [[nodiscard]] virtual Touch touch(const Vec3& p, Layer layer, double gap) const = 0;
  // The same of the body itself, for a point of no thickness: nothing of the garment may be inside.
  [[nodiscard]] virtual Touch solid(const Vec3& p) const { return touch(p, Layer::Bodice, 0); }
};

} // namespace scye
