// Which edges of a piece a value shapes, so that they can be lit while it changes.
#pragma once

#include "draft/piece.h"
#include "model/field.h"

namespace scye {

[[nodiscard]] bool shapes(Field field, PieceId piece, EdgeKind edge);

} // namespace scye
