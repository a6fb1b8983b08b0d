// Why a value was refused, in words: "Bust: at most 220 cm".
#pragma once

#include "model/design.h"
#include "model/phrases.h"

#include <string>

namespace scye {

[[nodiscard]] std::string refusalText(Field field, Refusal refusal, const Phrases& phrases,
                                      LengthUnit unit = LengthUnit::Centimetre);

} // namespace scye
