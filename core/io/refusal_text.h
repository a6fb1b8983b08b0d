// Why a value was refused, in words: "Bust: at most 220 cm".
#pragma once

#include "model/design.h"
#include "model/phrases.h"

#include <string>

namespace scye {

[[nodiscard]] std::string refusalText(Field field, Refusal refusal, const Phrases& phrases,
                                      LengthUnit unit = LengthUnit::Centimetre,
                                      Source where = Source::Body);

// The same for a word that is none of a choice's options; it lists them.
[[nodiscard]] std::string noOptionText(Choice choice, std::string option, const Phrases& phrases);

} // namespace scye
