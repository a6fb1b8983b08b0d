// The measuring guide as display lists: for each measurement a picture of where the tape goes, on
// the body or on a garment laid flat; one picture with them all; and a sheet to print and fill in.
// Whose words: the phrases "guide.<field>.body", ".garment", ".alone" and ".spoils" stand beside
// the pictures. Centimetres of the figure at its own size; the sheet's of the paper.
#pragma once

#include "model/phrases.h"
#include "schematic/guide_tape.h"

namespace scye {

// What can be measured there, in the order of the fields; the numbers of the overview and the sheet
// count along this list, from 1.
[[nodiscard]] std::vector<Field> measuredOn(Source where);

// Precondition: canTakeOn(measurement, where). Groups "figure" and "tape"; the tape's strokes are
// Role::Lit, the first of them its way, and Ghost where it is out of sight.
[[nodiscard]] Picture measuringPicture(Field measurement, Source where, Figure figure,
                                       const Phrases& phrases, double textHeight);

// Front and back with every tape and its number, and a list of the numbers. Groups "front", "back",
// "list"; numbers and names are hot spots of their fields.
[[nodiscard]] Picture measuringOverview(Source where, Figure figure, const Phrases& phrases,
                                        double textHeight);

} // namespace scye
