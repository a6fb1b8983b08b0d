// Places on the drafted pieces that can be taken hold of, and which value each moves. Geometry
// only: who draws them and who writes the values is elsewhere.
#pragma once

#include "draft/piece.h"
#include "seam/garment_draft.h"

#include <optional>
#include <string_view>
#include <vector>

namespace scye {

enum class HandleSnap : std::uint8_t { Free, WholeStitches, WholeRows };

// One way a handle can go: a centimetre along `way` changes the value by `gain`.
struct HandleAxis {
  Field field = Field::Bust;
  bool finished = false;   // the finished size of a measurement is what changes; writes its ease
  Vec2 way = Vec2::Zero(); // unit, level or upright, in the piece's coordinates
  double gain = 1;         // of the value (cm, or a share) to the centimetre
  HandleSnap snap = HandleSnap::Free;
};

struct Handle {
  std::string_view key;   // the phrase "handle.<key>"
  Vec2 at = Vec2::Zero(); // in the piece's coordinates
  std::optional<HandleAxis> level, upright;
};

// Of one piece, from the bottom up. What is worked out, or does not shape this design, has none.
[[nodiscard]] std::vector<Handle> pieceHandles(const GarmentDraft& draft, PieceId piece);

[[nodiscard]] double handleValue(const GarmentDraft& draft, const HandleAxis& axis);
// The design with that value; nothing where it is outside its range.
[[nodiscard]] std::optional<Design> withHandleValue(const Design& design, const GarmentDraft& draft,
                                                    const HandleAxis& axis, double value);
// The nearest value that makes whole stitches or rows at this gauge: of a width, as many on either
// side of the middle.
[[nodiscard]] double snapped(const GarmentDraft& draft, const HandleAxis& axis, double value);

} // namespace scye
