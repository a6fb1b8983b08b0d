// Where in a line of the directions its rows end and its stitch count begins, for setting it in
// type.
#pragma once

#include "directions/directions.h"

#include <QString>

namespace scye {

struct LineMarks {
  QString text;        // its count is not to be broken from its word: no-break spaces in it
  qsizetype head = 0;  // "Rows 18 and 19:", "Armhole"; 0: none
  qsizetype count = 0; // where "(114 sts)." begins; the end of the text where there is none
};
[[nodiscard]] LineMarks marksOf(const Phrases& phrases, const DirectionLine& line);

} // namespace scye
