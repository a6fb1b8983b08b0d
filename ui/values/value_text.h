// Values as they are read and typed. Lengths are cm inside; the unit is only a matter of display
// and entry, and either unit can be typed at any time: "41.5", "16 1/4", "41,5 cm", "16 in", "415
// mm". A share is read and shown in per cent.
#pragma once

#include "model/field.h"
#include "model/phrases.h"

#include <QString>

namespace scye {

struct ValueStyle {
  LengthUnit unit = LengthUnit::Centimetre;
  bool showUnit = true;
  bool showSign = false; // ease: "+8"
  bool fixed = false;    // always with a tenth, where figures are compared
  bool operator==(const ValueStyle&) const = default;
};

// Centimetres to a tenth, inches to the nearest quarter (eighth where that is what was typed).
[[nodiscard]] QString valueText(const Phrases& phrases, FieldKind kind, double value,
                                const ValueStyle& style);

// What the language puts before and behind a number, by a phrase of unit.*: a space does not break.
struct UnitWords {
  QString before, after;
};
[[nodiscard]] UnitWords unitWords(const Phrases& phrases, std::string_view phrase);
[[nodiscard]] QString withUnit(const Phrases& phrases, std::string_view phrase,
                               const QString& number);
// A sentence of the core, with figures and their units kept together: "24 1/4 in" is never broken.
[[nodiscard]] QString unbroken(const Phrases& phrases, const std::string& sentence);
// Nothing when the text is not a value of that kind.
[[nodiscard]] std::optional<double> readValue(const Phrases& phrases, FieldKind kind,
                                              const QString& text, LengthUnit unit);

// The grain in which arrow keys and sliders change a value: 0.5 cm or 1/4 in, and finer for
// sliders.
[[nodiscard]] double keyStep(FieldKind kind, LengthUnit unit);
[[nodiscard]] double sliderStep(FieldKind kind, LengthUnit unit);
[[nodiscard]] double ontoGrid(double value, double step);

} // namespace scye
